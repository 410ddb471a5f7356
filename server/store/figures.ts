import type { Head, JobId } from '../../src/model/ids.ts';
import type { Figures } from '../../src/protocol/figures.ts';
import type { PairFigures } from '../../src/record/pair-figures.ts';

/** What is known of a site, as of one head of its log. */
export interface SiteFigures {
  readonly head: Head;
  readonly name: string;
  readonly pairs: readonly PairFigures[];
}

/** Where the figures over all sites are kept. They are derived, and made again from the logs where they are lost. */
export interface FigureStore {
  /** At most so many sites that have changed since they were counted; no other process gets the same ones meanwhile. */
  claim(most: number): Promise<JobId[]>;
  /** In place of what was kept of the site, unless that came from a later head. */
  keep(figures: SiteFigures): Promise<void>;
  over(now: number): Promise<Figures>;
}
