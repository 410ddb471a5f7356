import type { Acceptance } from '../engine/search.ts';
import type { JobId, Seq } from '../model/ids.ts';
import type { PairId, PairPlan } from '../model/pair-plan.ts';
import type { JobSetup } from '../model/setup.ts';

/** A reading that a visit left a pair with. `at`: ms. */
export interface LeftSignal {
  readonly seq: Seq;
  readonly at: number;
  readonly value: number;
}

/** The result of a visit, as far as it is compared with other visits. Every `Visit` has it. */
export interface VisitOutcome {
  readonly job: JobId;
  readonly accepted: Pick<Acceptance, 'seq' | 'reading'> | undefined;
  /** The signal over the clear path when the visit ended: undefined where nothing proves it. */
  readonly left?: LeftSignal | undefined;
  /** When the next work on the pair is due, ms, where somebody wrote it down. */
  readonly due?: number | undefined;
  /** Somebody has signed it. */
  readonly signed: boolean;
  /** Of the crew's reports only the touches count here. */
  readonly commission: {
    readonly setup: Pick<JobSetup, 'meter' | 'adjusters' | 'plan'>;
    readonly counted: readonly {
      readonly type: string;
      readonly seq: Seq;
      /** Of a gain change. */
      readonly change?: string | undefined;
      readonly to?: number | undefined;
    }[];
  };
}

/** A pair of the site with the outcome of every visit, oldest first. */
export interface PairOutcome {
  readonly pair: PairId;
  /** As it is planned now. */
  readonly plan: PairPlan;
  readonly pathLength: number | undefined;
  readonly visits: readonly VisitOutcome[];
}
