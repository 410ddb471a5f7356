import { PAIR_STATUSES, type PairStatus } from '../../src/model/pair-status.ts';
import { planWarnings } from '../../src/phrases/plan-warnings.ts';
import type { PairRow, SiteView } from '../../src/protocol/site.ts';

/** Which pairs of the board to show. */
export interface Wanted {
  /** All these words must be in its id, name or zone, or in what is next. */
  words: string;
  status: PairStatus | 'all';
}

export function matching<T extends { readonly row: PairRow }>(
  rows: readonly T[],
  { words, status }: Wanted,
): T[] {
  const all = words.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter(({ row }) => {
    if (status !== 'all' && row.status !== status) return false;
    const { id, name, zone } = row.plan;
    const text = `${id} ${name} ${zone ? `zone ${zone}` : ''} ${row.next}`.toLowerCase();
    return all.every((word) => text.includes(word));
  });
}

/** A pair with what the plan check warns of. */
export interface WarnedRow {
  readonly row: PairRow;
  readonly warnings: readonly string[];
}

export const withWarnings = (
  rows: readonly PairRow[],
  { code, units }: Pick<SiteView, 'code' | 'units'>,
): WarnedRow[] => rows.map((row) => ({ row, warnings: planWarnings(row.plan, code, units) }));

/**
 * Trouble: it needs attention, its newest visit has a serious finding, or its outputs are isolated; then what the plan
 * check warns of.
 */
const rank = ({ row: { status, findings }, warnings }: WarnedRow): number => {
  if (status === 'needs-attention') return 0;
  if (findings.serious > 0) return 1;
  if (status === 'isolated') return 2;
  return warnings.length > 0 ? 3 : 4;
};

/** Pairs in trouble first; otherwise in the order of the site. */
export const troubleFirst = (rows: readonly WarnedRow[]): WarnedRow[] =>
  rows.toSorted((a, b) => rank(a) - rank(b));

/** How many pairs have each status, of those whose record was read. */
export function totals(rows: readonly PairRow[]): Record<PairStatus, number> {
  const none = Object.fromEntries(PAIR_STATUSES.map((status) => [status, 0]));
  const counts = none as Record<PairStatus, number>;
  for (const { status } of rows) if (status) counts[status] += 1;
  return counts;
}
