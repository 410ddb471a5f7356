import type { SiteFinding } from '../model/finding.ts';
import { planSince } from '../plan/changes.ts';
import type { PairOutcome } from './outcome.ts';

/** The plan of a pair was changed after its latest visit began: what was proven is not what is planned. */
export function planChanged(pairs: readonly PairOutcome[]): SiteFinding[] {
  return pairs.flatMap(({ pair, plan, visits }): SiteFinding[] => {
    const last = visits.at(-1);
    const plans = last && planSince(last.commission.setup, plan);
    if (!plans) return [];
    const { job, signed } = last;
    return [
      {
        id: 'plan-changed',
        severity: signed ? 'serious' : 'question',
        pair,
        // The entry that opened the visit holds its plan.
        entries: [{ job, seq: 0 }],
        figures: { signed: signed ? 1 : 0 },
        plans,
      },
    ];
  });
}
