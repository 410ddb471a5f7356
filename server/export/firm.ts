import { toArchive } from '../../src/log/archive.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { HeadProof } from '../../src/log/signed-head.ts';
import type { JobId } from '../../src/model/ids.ts';
import { enclosedLog, isPracticeJob } from '../record/files.ts';
import type { AccountBook } from '../store/account-book.ts';
import { checkNamed } from '../store/check.ts';
import { allReads, allSignedHeads, allStamps } from '../store/pages.ts';
import type { Store } from '../store/store.ts';
import type { ExportFolder } from './folder.ts';
import { ACCOUNTS_FILE, HEADS_FILE, type Manifest, READS_FILE, STAMPS_FILE } from './manifest.ts';
import { shownAccounts } from './shown-accounts.ts';

export interface FirmExport {
  readonly store: Store;
  readonly book: AccountBook;
  /** As the database knows it. */
  readonly firm: string;
  /** What the server signed of a log; its present head is signed first. */
  readonly proofOf: (log: JobId) => Promise<HeadProof>;
  /** Now, ms. */
  readonly at: number;
}

type FirmManifest = Extract<Manifest, { of: 'firm' }>;

/**
 * All that a firm has: each record as its own export, with its pictures and sounds; signed heads, time stamps, accounts, and who read
 * what. Not in it: keys, for they open something. Rejects with `StoreFailure`.
 */
export async function exportFirm(from: FirmExport, to: ExportFolder): Promise<FirmManifest> {
  const { store, book, firm, proofOf, at } = from;
  const records: FirmManifest['records'] = [];
  const lost: JobId[] = [];
  let practice = 0;
  for (const log of await store.logs()) {
    if (await isPracticeJob(store, log)) {
      practice += 1;
      continue;
    }
    const damaged = (await checkNamed(store, log)) !== undefined;
    // First, because the log may grow meanwhile, and every signed head must be one of what is given.
    const proof = await proofOf(log);
    const { head, entries, beside } = await enclosedLog(store, log);
    if (head.count === 0) {
      lost.push(log);
      continue;
    }
    const lines = toJsonLines(entries, head, proof);
    const isAlone = beside.photos.size + beside.sounds.size === 0;
    const file = `records/${log}.${isAlone ? 'jsonl' : 'zip'}`;
    to.write(file, isAlone ? lines : toArchive(lines, beside));
    records.push({ file, head, ...(damaged && { damaged }) });
  }
  to.write(
    ACCOUNTS_FILE,
    `${JSON.stringify(
      shownAccounts(book, () => true),
      undefined,
      1,
    )}\n`,
  );
  const manifest: FirmManifest = {
    ...{ format: 'ladderline-own-data', version: 1, of: 'firm', firm, at, records },
    ...{ practice, lost },
    signedHeads: await to.writeLines(HEADS_FILE, allSignedHeads(store)),
    stamps: await to.writeLines(STAMPS_FILE, allStamps(store)),
    reads: await to.writeLines(READS_FILE, allReads(store)),
  };
  await to.finish(manifest);
  return manifest;
}
