import type { PairOutcome } from '../../src/findings/outcome.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { PairId, PairPlan } from '../../src/model/pair-plan.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import type { Visit } from '../../src/visit/visit.ts';

/** A pair's outcome, with the whole record of every visit. */
export interface PairVisits extends PairOutcome {
  readonly visits: readonly (Visit & { readonly job: JobId; readonly signed: boolean })[];
}

/** The visits to one pair, each with its log, without logs that open no job. */
export function pairVisits(
  pair: PairId,
  pathLength: number | undefined,
  logs: readonly { readonly job: JobId; readonly entries: readonly Entry[] }[],
  plan?: PairPlan,
): PairVisits {
  const visits = logs.flatMap(({ job, entries }) => {
    const visit = new VisitRecord({ entries }).visit;
    return visit ? [{ ...visit, job, signed: visit.end.signed !== undefined }] : [];
  });
  // Nothing is planned anew, if no plan is given.
  const now = plan ?? visits.at(-1)?.commission.setup.plan ?? { id: pair, name: pair };
  return { pair, plan: now, pathLength: pathLength ?? visits.at(-1)?.commission.setup.pathLength, visits };
}
