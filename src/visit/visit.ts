import type { Acceptance } from '../engine/search.ts';
import type { Entry } from '../model/entry.ts';
import type { Seq } from '../model/ids.ts';
import type { Commission } from './commission.ts';
import { finalReading } from './final.ts';
import { commissionOf } from './search.ts';
import type { JobState } from './state.ts';

/** A job's log and what follows from it: everything that a finding can use. */
export interface Visit {
  readonly entries: readonly Entry[];
  /** The state at the end. */
  readonly end: JobState;
  readonly commission: Commission;
  /** The acceptance that is valid at the end, if there is one. */
  readonly accepted: Acceptance | undefined;
  /** The number that the meter showed over the clear path at the end, where it proves something. */
  readonly left: { readonly seq: Seq; readonly at: number; readonly value: number } | undefined;
  /** When the next work is due, ms, where somebody wrote it down. */
  readonly due: number | undefined;
  /** Time of the last entry, ms. What was still waiting is judged as of then. */
  readonly until: number;
}

/** Undefined for a log that opens no job. `end`: the fold of these entries. */
export function readVisit(entries: readonly Entry[], end: JobState): Visit | undefined {
  const commission = commissionOf(end);
  const until = entries.at(-1)?.at;
  if (!commission || until === undefined) return undefined;
  const { nextDue } = end.handOver;
  return {
    entries,
    end,
    commission,
    accepted: commission.search.accepted,
    left: leftWith(commission),
    due: nextDue && Date.parse(`${nextDue.on}T00:00:00Z`),
    until,
  };
}

function leftWith(commission: Commission): Visit['left'] {
  const final = finalReading(commission);
  // What was only read last, after the alignment was touched, is the signal of no accepted position.
  if (final?.reading.kind !== 'value' || final.as === 'last-read') return undefined;
  return { seq: final.seq, at: final.at, value: final.reading.value };
}
