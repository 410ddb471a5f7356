import { createHash } from 'node:crypto';
import { emptyHead } from '../../src/log/chain.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Head } from '../../src/model/ids.ts';

/** An entry as it lies in the store: the hashed text, and what is kept beside it. */
export interface StoredEntry {
  seq: number;
  body: string;
  hash: string;
}

/** As `findFault` of the log, over the stored bytes themselves. */
export function auditRows(rows: Iterable<StoredEntry>, head: Head): ChainFault | undefined {
  let at = emptyHead(head.job);
  for (const row of rows) {
    const seq = at.count;
    if (row.seq !== seq) return { seq, fault: 'order' };
    if (createHash('sha256').update(row.body, 'utf8').digest('hex') !== row.hash)
      return { seq, fault: 'hash' };
    // The bytes are the ones that were hashed, so they parse.
    const body: { job: string; seq: number; prev: string } = JSON.parse(row.body);
    if (body.job !== head.job) return { seq, fault: 'job' };
    if (body.seq !== seq) return { seq, fault: 'order' };
    if (body.prev !== at.hash) return { seq, fault: 'prev' };
    at = { job: head.job, count: seq + 1, hash: row.hash };
  }
  if (at.count !== head.count || at.hash !== head.hash) return { seq: at.count, fault: 'head' };
  return undefined;
}
