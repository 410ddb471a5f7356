import type { Seq } from '../model/ids.ts';
import { lastOf } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import type { Commission } from './commission.ts';
import { readingAfter } from './progress.ts';

/** The last reading of a visit, and what it counts as. */
export interface FinalReading {
  readonly seq: Seq;
  readonly reading: Reading;
  readonly as: 'after-tests' | 'accepted' | 'last-read';
}

/** If the alignment was touched after acceptance: the last reading, which proves nothing. */
export function finalReading(commission: Commission): FinalReading | undefined {
  const after = readingAfter(commission);
  if (after) return { seq: after.seq, reading: after.reading, as: 'after-tests' };
  const { accepted } = commission.search;
  if (accepted) return { seq: accepted.seq, reading: accepted.reading, as: 'accepted' };
  const last = lastOf(commission.counted, 'reading');
  return last && { seq: last.seq, reading: last.reading, as: 'last-read' };
}
