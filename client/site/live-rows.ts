import type { PairRow } from '../../src/protocol/site.ts';

/** The pairs that belong to the site now. */
export const liveRows = (rows: readonly PairRow[]): PairRow[] => rows.filter(({ dropped }) => !dropped);
