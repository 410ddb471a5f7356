import type { PairStatus } from '../model/pair-status.ts';

/** Where a pair stands, as the board and the report say it. */
export const STATUS_WORDS: Record<PairStatus, string> = {
  'not-started': 'Not started',
  aligning: 'Aligning',
  aligned: 'Aligned, not proven',
  proven: 'Proven, not signed',
  signed: 'Signed',
  'needs-attention': 'Needs attention',
};
