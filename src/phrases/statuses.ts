import type { PairStatus } from '../model/pair-status.ts';

/** The status of a pair, as the board and the report show it. */
export const STATUS_WORDS: Record<PairStatus, string> = {
  'not-started': 'Not started',
  aligning: 'Aligning',
  isolated: 'Outputs isolated',
  aligned: 'Aligned, not proven',
  proven: 'Proven, not signed',
  signed: 'Signed',
  'signed-not-proven': 'Signed, not proven',
  'needs-attention': 'Needs attention',
};
