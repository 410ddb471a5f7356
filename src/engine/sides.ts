import type { Sample } from './sample.ts';

/** The lower readings on each side of a peak along one adjuster, if there are any. */
export interface Sides {
  readonly below: Sample | undefined;
  readonly above: Sample | undefined;
}
