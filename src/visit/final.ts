import type { Seq } from '../model/ids.ts';
import { lastOf } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import type { Commission } from './commission.ts';
import { readingAfter } from './progress.ts';

/** The last reading of a visit, and what it counts as. */
export interface FinalReading {
  readonly seq: Seq;
  readonly at: number;
  readonly reading: Reading;
  readonly as: 'after-tests' | 'accepted' | 'last-read';
}

/** If the alignment was touched after acceptance: the last reading, which proves nothing. */
export function finalReading(commission: Commission): FinalReading | undefined {
  const after = readingAfter(commission);
  if (after) return { seq: after.seq, at: after.at, reading: after.reading, as: 'after-tests' };
  const accepted = lastOf(commission.counted, 'accept');
  if (accepted && accepted.seq === commission.search.accepted?.seq) {
    return { seq: accepted.seq, at: accepted.at, reading: accepted.reading, as: 'accepted' };
  }
  const last = lastOf(commission.counted, 'reading');
  return last && { seq: last.seq, at: last.at, reading: last.reading, as: 'last-read' };
}
