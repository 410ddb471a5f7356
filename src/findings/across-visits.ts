import type { SiteFinding } from '../model/finding.ts';
import type { PairOutcome } from './outcome.ts';
import { undone } from './undone.ts';
import { weakNeighbour } from './weak-neighbour.ts';

/** What only shows when the visits of a site are held against each other. */
export const reviewSite = (pairs: readonly PairOutcome[]): SiteFinding[] => [
  ...weakNeighbour(pairs),
  ...undone(pairs),
];
