import type { Acceptance } from '../engine/search.ts';
import type { Entry } from '../model/entry.ts';
import type { Commission } from './commission.ts';
import { commissionOf, type JobState } from './state.ts';

/** A job's log and what follows from it: everything that a finding can use. */
export interface Visit {
  readonly entries: readonly Entry[];
  /** The state at the end. */
  readonly end: JobState;
  readonly commission: Commission;
  /** The acceptance that is valid at the end, if there is one. */
  readonly accepted: Acceptance | undefined;
  /** Time of the last entry, ms. What was still waiting is judged as of then. */
  readonly until: number;
}

/** Undefined for a log that opens no job. `end`: the fold of these entries. */
export function readVisit(entries: readonly Entry[], end: JobState): Visit | undefined {
  const commission = commissionOf(end);
  const until = entries.at(-1)?.at;
  if (!commission || until === undefined) return undefined;
  return { entries, end, commission, accepted: commission.search.accepted, until };
}
