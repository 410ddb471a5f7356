import { PAIR_STATUSES, type PairStatus } from '../../src/model/pair-status.ts';
import type { PairRow } from '../../src/protocol/site.ts';

/** Which pairs of the board to show. */
export interface Wanted {
  /** All these words must be in its id, name or zone, or in what is next. */
  words: string;
  status: PairStatus | 'all';
}

export function matching(rows: readonly PairRow[], { words, status }: Wanted): PairRow[] {
  const all = words.toLowerCase().split(/\s+/).filter(Boolean);
  return rows.filter((row) => {
    if (status !== 'all' && row.status !== status) return false;
    const { id, name, zone } = row.plan;
    const text = `${id} ${name} ${zone ? `zone ${zone}` : ''} ${row.next}`.toLowerCase();
    return all.every((word) => text.includes(word));
  });
}

/** Trouble: it needs attention, its newest visit has a serious finding, or its outputs are isolated. */
const rank = ({ status, findings }: Pick<PairRow, 'status' | 'findings'>): number => {
  if (status === 'needs-attention') return 0;
  if (findings.serious > 0) return 1;
  return status === 'isolated' ? 2 : 3;
};

/** Pairs in trouble first; otherwise in the order of the site. */
export const troubleFirst = (rows: readonly PairRow[]): PairRow[] =>
  rows.toSorted((a, b) => rank(a) - rank(b));

/** How many pairs have each status, of those whose record was read. */
export function totals(rows: readonly PairRow[]): Record<PairStatus, number> {
  const none = Object.fromEntries(PAIR_STATUSES.map((status) => [status, 0]));
  const counts = none as Record<PairStatus, number>;
  for (const { status } of rows) if (status) counts[status] += 1;
  return counts;
}
