import { isSame } from '../../src/formats/same.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import type { PairRow } from '../../src/protocol/site.ts';

/** What a row of the table would change. */
export type Change = 'new' | 'changed' | 'same' | 'back';

/** By the pair's id. */
export function changesBy(
  pairs: readonly PairPlan[],
  rows: readonly Pick<PairRow, 'plan' | 'dropped'>[],
): ReadonlyMap<string, Change> {
  const known = new Map(rows.map((row) => [row.plan.id, row]));
  return new Map(
    pairs.map((plan): [string, Change] => {
      const row = known.get(plan.id);
      if (!row) return [plan.id, 'new'];
      if (row.dropped) return [plan.id, 'back'];
      return [plan.id, isSame(row.plan, plan) ? 'same' : 'changed'];
    }),
  );
}
