import type { Seq } from '../advice.ts';
import type { Entry } from './entry.ts';

/** The entries that no longer count, each with the entry that took it back. A taking-back can be taken back. */
export function retractions(entries: readonly Entry[]): Map<Seq, Seq> {
  const taken = new Map<Seq, Seq>();
  for (const { seq, fact } of entries.toReversed()) {
    if (fact.type === 'retract' && !taken.has(seq)) taken.set(fact.target, seq);
  }
  return taken;
}
