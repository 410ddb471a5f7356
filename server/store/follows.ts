import type { Entry } from '../../src/model/entry.ts';
import type { Head } from '../../src/model/ids.ts';

/** Whether entries chain on a head by their numbers and links. Their own hashes are their maker's word. */
export function follows(
  entries: readonly Pick<Entry, 'job' | 'seq' | 'prev' | 'hash'>[],
  head: Head,
): boolean {
  let { count, hash } = head;
  for (const entry of entries) {
    if (entry.job !== head.job || entry.seq !== count || entry.prev !== hash) return false;
    count += 1;
    hash = entry.hash;
  }
  return true;
}
