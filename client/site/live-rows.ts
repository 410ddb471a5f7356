import type { PairStatus } from '../../src/model/pair-status.ts';
import type { PairRow } from '../../src/protocol/site.ts';

/** The pairs that belong to the site now. */
export const liveRows = (rows: readonly PairRow[]): PairRow[] => rows.filter(({ dropped }) => !dropped);

/** It needs attention, its newest visit has a serious finding, or its outputs are isolated. */
export const isTroubled = ({ status, findings }: Pick<PairRow, 'status' | 'findings'>): boolean =>
  isTrouble(status) || findings.serious > 0;

const isTrouble = (status: PairStatus | undefined): boolean =>
  status === 'needs-attention' || status === 'isolated';

/** How many pairs of a site are troubled; undefined while the records of some are not read. */
export function troubledCount(rows: readonly PairRow[]): number | undefined {
  const live = liveRows(rows);
  return live.every(({ status }) => status) ? live.filter(isTroubled).length : undefined;
}

/** The visits to a pair: those in trouble first, otherwise the newest. */
export const troubledVisitsFirst = (visits: PairRow['visits']): PairRow['visits'] =>
  visits.toReversed().toSorted((a, b) => Number(isTrouble(b.status)) - Number(isTrouble(a.status)));
