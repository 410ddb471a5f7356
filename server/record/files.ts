import { setImmediate } from 'node:timers/promises';
import type { Context } from 'hono';
import type * as z from 'zod/mini';
import { type Beside, toArchive } from '../../src/log/archive.ts';
import { type Enclosure, enclosedIn, soundsIn } from '../../src/log/enclosure.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { isPractice } from '../../src/log/practice.ts';
import type { HeadProof } from '../../src/log/signed-head.ts';
import type { Entry, Log } from '../../src/model/entry.ts';
import type { Head, JobId, Seq } from '../../src/model/ids.ts';
import type { JobRecord } from '../../src/protocol/jobs.ts';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';
import { toCsv } from '../../src/record/csv-file.ts';
import { checkNamed } from '../store/check.ts';
import type { Store } from '../store/store.ts';

const READ_BATCH = 500;

/** A whole log. */
export async function wholeLog(store: Store, job: JobId): Promise<{ head: Head; entries: Entry[] }> {
  const head = await store.head(job);
  const entries: Entry[] = [];
  while (entries.length < head.count) {
    const batch = await store.read(job, entries.at(-1)?.seq ?? -1, READ_BATCH);
    if (batch.length === 0) break;
    entries.push(...batch);
    // Reading a long log takes a while, and phones are answered in between.
    await setImmediate();
  }
  // Entries added while we read are left out, so that the log ends where its head says.
  return { head, entries: entries.slice(0, head.count) };
}

/** The same of a log that something names, with the first fault in what is stored. */
export async function checkedLog(store: Store, job: JobId): Promise<CheckedLog> {
  const fault = await checkNamed(store, job);
  return { ...(await wholeLog(store, job)), fault };
}

/** A whole log with what lies beside it. What is lost is not in it: whoever checks the file learns it from that. */
export async function enclosedLog(
  store: Store,
  job: JobId,
): Promise<Log & { readonly beside: Beside<Enclosure> }> {
  for (;;) {
    const log = await wholeLog(store, job);
    const named = enclosedIn(log.entries);
    const photos = await enclosures(store, job, named.keys());
    // What is removed while we read would look lost.
    if (photos.size !== named.size && (await store.head(job)).count !== log.head.count) continue;
    return { ...log, beside: { photos, sounds: await enclosures(store, job, soundsIn(log.entries).keys()) } };
  }
}

/** Those that are there. */
async function enclosures(store: Store, job: JobId, seqs: Iterable<Seq>): Promise<Map<Seq, Enclosure>> {
  const there = new Map<Seq, Enclosure>();
  for (const seq of seqs) {
    const enclosure = await store.enclosure(job, seq);
    if (enclosure) there.set(seq, enclosure);
  }
  return there;
}

/** A form in which a whole log can be fetched. */
interface Form {
  /** With a token of the job, and with one of the site of the visit. */
  readonly ofJob: Route;
  readonly ofVisit: Route;
  /** Whether the present head is signed first. A page asks for its record again and again, and takes what is there. */
  readonly proof: 'proofOf' | 'provenOf';
  readonly give: (c: Context, store: Store, job: JobId, signed: HeadProof) => Promise<Response>;
}

/** Reads a log, and answers with it. */
const giving =
  <L extends Log>(
    readLog: (store: Store, job: JobId) => Promise<L>,
    answer: (c: Context, log: L, signed: HeadProof) => Response,
  ): Form['give'] =>
  async (c, store, job, signed) =>
    answer(c, await readLog(store, job), signed);

/** Whether a job is practice, as its first entry says: then there is nothing to keep. */
export const isPracticeJob = async (store: Store, job: JobId): Promise<boolean> =>
  isPractice(await store.read(job, -1, 1));

/** The forms in which a whole log can be fetched. */
export const RECORDS: readonly Form[] = [
  {
    ofJob: ROUTES.record,
    ofVisit: ROUTES.siteRecord,
    proof: 'provenOf',
    give: giving(wholeLog, (c, log, proof) => c.json({ ...log, proof } satisfies z.input<typeof JobRecord>)),
  },
  {
    ofJob: ROUTES.exportLines,
    ofVisit: ROUTES.siteExportLines,
    proof: 'proofOf',
    give: giving(wholeLog, (c, { head, entries }, proof) =>
      file(c, head, 'jsonl', 'application/jsonl', toJsonLines(entries, head, proof)),
    ),
  },
  {
    ofJob: ROUTES.exportCsv,
    ofVisit: ROUTES.siteExportCsv,
    proof: 'provenOf',
    give: giving(wholeLog, (c, { head, entries }) =>
      file(c, head, 'csv', 'text/csv; charset=utf-8', toCsv(entries, head)),
    ),
  },
  {
    ofJob: ROUTES.exportArchive,
    ofVisit: ROUTES.siteExportArchive,
    proof: 'proofOf',
    give: giving(enclosedLog, (c, { head, entries, beside }, proof) =>
      file(c, head, 'zip', 'application/zip', toArchive(toJsonLines(entries, head, proof), beside)),
    ),
  },
];

function file(c: Context, head: Head, ending: string, type: string, content: string | Uint8Array): Response {
  c.header('Content-Type', type);
  c.header('Content-Disposition', `attachment; filename="ladderline-${head.job}.${ending}"`);
  return c.body(typeof content === 'string' ? content : new Uint8Array(content));
}
