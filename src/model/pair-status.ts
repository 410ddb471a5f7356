import * as z from 'zod/mini';

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

/** Which pairs are read first: trouble, then what is not finished. */
export const TROUBLE_FIRST: readonly PairStatus[] = [
  'needs-attention',
  'isolated',
  'aligning',
  'aligned',
  'not-started',
  'signed-not-proven',
  'proven',
  'signed',
];
