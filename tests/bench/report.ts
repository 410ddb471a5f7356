import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { checkedLog } from '../../server/record/files.ts';
import { ReportThread } from '../../server/report/thread.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';
import { playDemoSite } from '../../src/simulator/demo-site.ts';

/**
 * The time that the PDF of a large site takes (`npm run bench:report -- 12`: of one with so many pairs), with the
 * reading and checking of its logs in a SQLite file, on all threads; and how long the server can do nothing else during
 * it. The visits are those of the demo site, sealed again with other names.
 */
const PAIRS = Number(process.argv[2] ?? 500);

const [opened, ...rest] = playDemoSite(Date.UTC(2026, 2, 3, 8)).site;
const { visits } = playDemoSite(Date.UTC(2026, 2, 3, 8));
const plans = rest.flatMap(({ fact }) => (fact.type === 'pair-planned' ? [fact.pair] : []));
if (!opened) throw new Error('the demo has no site');

/** Another log with the same facts at the same times. */
function logOf(job: JobId, drafts: readonly Pick<Entry, 'at' | 'actor' | 'fact'>[]): Entry[] {
  let head = emptyHead(job);
  return drafts.map(({ at, actor, fact }) => {
    // A signature is for its own log.
    const entry = seal(head, { actor, fact: fact.type === 'signed' ? { ...fact, head } : fact }, at);
    head = headAfter(entry);
    return entry;
  });
}

const folder = mkdtempSync(join(tmpdir(), 'ladderline-bench-report-'));
const store = openDataFolder(folder);
let entries = 0;
const site: Pick<Entry, 'at' | 'actor' | 'fact'>[] = [opened];
for (let i = 0; i < PAIRS; i++) {
  const plan = plans[i % plans.length];
  const visit = visits[i % visits.length];
  if (!plan || !visit) throw new Error('the demo has no pairs');
  const id = `P${i + 1}`;
  const job = `bench-report-${i + 1}`;
  const log = logOf(job, visit.entries);
  entries += log.length;
  await store.append(job, log);
  const { at, actor } = opened;
  site.push({ at, actor, fact: { type: 'pair-planned', pair: { ...plan, id, name: `Pair ${id}` } } });
  site.push({ at, actor, fact: { type: 'job-begun', pair: id, job } });
}
const SITE: JobId = 'bench-report-site';
await store.append(SITE, logOf(SITE, site));

const thread = new ReportThread();
/** As the server does it: the logs are read and checked here, and the report is made in the thread. */
const make = async (only?: readonly PairId[]): Promise<Buffer> =>
  thread.make(
    {
      site: await checkedLog(store, SITE),
      options: { zone: 'UTC', at: opened.at, ...(only && { only }) },
    },
    600_000,
    { readLog: (job) => checkedLog(store, job), pictureOf: async () => undefined },
  );
// The thread is begun and its program loaded.
await make(['P1']);

const delays = monitorEventLoopDelay({ resolution: 5 });
delays.enable();
const began = performance.now();
const busy = process.cpuUsage();
const file = await make();
const wall = (performance.now() - began) / 1000;
const { user, system } = process.cpuUsage(busy);
delays.disable();
await thread.close();
await store.close();
rmSync(folder, { recursive: true });

console.table([
  {
    pairs: PAIRS,
    entries,
    'seconds, wall': Number(wall.toFixed(1)),
    'seconds, processor': Number(((user + system) / 1e6).toFixed(1)),
    'longest stall, ms': Math.round(delays.max / 1e6),
    'stall, 99 % below, ms': Math.round(delays.percentile(99) / 1e6),
    MB: Number((file.length / 1e6).toFixed(1)),
  },
]);
console.log(
  `${cpus().length} cores, load average ${loadavg()
    .map((load) => load.toFixed(1))
    .join(', ')}.`,
);
