import type { SiteFinding } from '../model/finding.ts';
import type { PairOutcome } from './outcome.ts';
import { planChanged } from './plan-changed.ts';
import { signalLimit } from './signal-limit.ts';
import { undone } from './undone.ts';
import { weakNeighbour } from './weak-neighbour.ts';
import { weakerSince } from './weaker-since.ts';

/** Findings that only show when the visits of a site are compared. */
export const reviewSite = (pairs: readonly PairOutcome[]): SiteFinding[] => [
  ...weakNeighbour(pairs),
  ...weakerSince(pairs),
  ...signalLimit(pairs),
  ...undone(pairs),
  ...planChanged(pairs),
];
