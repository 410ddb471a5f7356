import type { SiteFinding } from '../model/finding.ts';
import { isTouch } from '../model/placed.ts';
import type { PairOutcome } from './outcome.ts';

/** A later visit touched an accepted pair, and accepted nothing. */
export function undone(pairs: readonly PairOutcome[]): SiteFinding[] {
  return pairs.flatMap(({ pair, visits }) => {
    const last = visits.at(-1);
    const before = visits.slice(0, -1).findLast(({ accepted }) => accepted);
    const touches = last?.commission.counted.filter(isTouch) ?? [];
    if (!last || !before?.accepted || last.accepted || touches.length === 0) return [];
    const entries = [
      { job: before.job, seq: before.accepted.seq },
      ...touches.map(({ seq }) => ({ job: last.job, seq })),
    ];
    return [{ id: 'undone', severity: 'serious', pair, entries, figures: {} } as const];
  });
}
