import { z } from 'zod';

/** The status of a pair on the site's board, from its latest visit. */
export const PAIR_STATUSES = [
  'not-started',
  'aligning',
  /** Work goes on, and no alarm would reach anybody. */
  'isolated',
  'aligned',
  'proven',
  'signed',
  'signed-not-proven',
  'needs-attention',
] as const;
export const PairStatus = z.enum(PAIR_STATUSES);
export type PairStatus = z.infer<typeof PairStatus>;
