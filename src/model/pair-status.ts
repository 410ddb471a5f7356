import { z } from 'zod';

/** Where a pair stands on the site's board, by its latest visit. */
export const PAIR_STANDINGS = [
  'not-started',
  'aligning',
  'aligned',
  'proven',
  'signed',
  'needs-attention',
] as const;
export const PairStanding = z.enum(PAIR_STANDINGS);
export type PairStanding = z.infer<typeof PairStanding>;
