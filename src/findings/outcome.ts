import type { Acceptance } from '../engine/search.ts';
import type { JobId, Seq } from '../model/ids.ts';
import type { PairId } from '../model/pair-plan.ts';
import type { JobSetup } from '../model/setup.ts';

/** What a visit came to, as far as other visits are held against it. Every `Visit` tells it. */
export interface VisitOutcome {
  readonly job: JobId;
  readonly accepted: Pick<Acceptance, 'seq' | 'reading'> | undefined;
  /** Of what the crew reported, only the touches count here. */
  readonly commission: {
    readonly setup: Pick<JobSetup, 'meter'>;
    readonly counted: readonly { readonly type: string; readonly seq: Seq }[];
  };
}

/** A pair of the site with the outcome of every visit, oldest first. */
export interface PairOutcome {
  readonly pair: PairId;
  readonly pathLength: number | undefined;
  readonly visits: readonly VisitOutcome[];
}
