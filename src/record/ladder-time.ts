import type { Entry } from '../model/entry.ts';
import { LONG_GAP_MS } from '../model/finding.ts';
import type { Seq } from '../model/ids.ts';

/**
 * How long somebody stood at the emitter, ms: from its first word to its last one up to the acceptance, without silences that
 * are long enough for a break. Undefined where the emitter said nothing.
 */
export function ladderTime(
  entries: readonly Pick<Entry, 'seq' | 'at' | 'actor'>[],
  accepted: Seq | undefined,
): number | undefined {
  const until = accepted ?? Number.POSITIVE_INFINITY;
  const work = entries.filter(({ seq }) => seq <= until);
  const first = work.findIndex(({ actor }) => actor === 'emitter');
  const last = work.findLastIndex(({ actor }) => actor === 'emitter');
  if (first < 0) return undefined;
  const stood = work.slice(first, last + 1);
  return stood.slice(1).reduce((sum, { at }, i) => {
    const gap = at - (stood[i]?.at ?? at);
    // A clock that was set back counts for nothing.
    return gap > 0 && gap <= LONG_GAP_MS ? sum + gap : sum;
  }, 0);
}
