import type { Cell } from '../formats/csv.ts';
import { isSame } from '../formats/same.ts';
import { MAX_PAIRS, type PairPlan } from '../model/pair-plan.ts';
import { cellOf, PAIR_COLUMNS, type PairColumn } from './pair-columns.ts';

/** One field of a plan, before and after. Undefined: nothing was, or is, planned. */
export interface FieldChange {
  readonly column: PairColumn;
  readonly from: Cell;
  readonly to: Cell;
}

/** What a row of a table would change on the site. */
export interface PairChange {
  readonly plan: PairPlan;
  readonly kind: 'new' | 'changed' | 'same' | 'back';
  readonly fields: readonly FieldChange[];
}

/** A pair as it stands on the site. */
interface OnSite {
  readonly plan: PairPlan;
  readonly dropped?: unknown;
}

/** What each pair of a table would change, in the order of the table. */
export function changesBy(pairs: readonly PairPlan[], onSite: readonly OnSite[]): PairChange[] {
  const known = new Map(onSite.map((row) => [row.plan.id, row]));
  return pairs.map((plan) => {
    const before = known.get(plan.id);
    const fields = fieldChanges(before?.plan, plan);
    if (!before) return { plan, kind: 'new', fields };
    if (before.dropped) return { plan, kind: 'back', fields };
    return { plan, kind: isSame(before.plan, plan) ? 'same' : 'changed', fields };
  });
}

export const fieldChanges = (before: PairPlan | undefined, after: PairPlan): FieldChange[] =>
  PAIR_COLUMNS.map((column) => ({
    column,
    from: before && cellOf(before, column),
    to: cellOf(after, column),
  }))
    .filter(({ column }) => column !== 'id')
    .filter(({ from, to }) => from !== to);

/** How many pairs the site would have, dropped ones too; undefined while that is within its limit. */
export function overLimit(pairs: readonly PairPlan[], onSite: readonly OnSite[]): number | undefined {
  const together = new Set([...onSite.map(({ plan }) => plan.id), ...pairs.map(({ id }) => id)]).size;
  return together > MAX_PAIRS ? together : undefined;
}
