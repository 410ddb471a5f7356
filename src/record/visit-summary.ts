import { z } from 'zod';
import { ENGINE_VERSION } from '../engine/version.ts';
import type { VisitOutcome } from '../findings/outcome.ts';
import { reviewVisit } from '../findings/review.ts';
import { headAfter } from '../log/chain.ts';
import type { Entry } from '../model/entry.ts';
import { Head, Seq } from '../model/ids.ts';
import { PairStatus } from '../model/pair-status.ts';
import { isTouch } from '../model/placed.ts';
import { MeterProfile } from '../model/profile.ts';
import { Reading } from '../model/reading.ts';
import { nextText } from '../phrases/board.ts';
import { readingWithUnit } from '../phrases/readings.ts';
import { JobFinding, PairRow } from '../protocol/site.ts';
import { finalReading } from '../visit/final.ts';
import { readVisit } from '../visit/visit.ts';
import { statusOf } from './status.ts';

/** Raised when what is told of the same log changes, so that no summary of before is believed. */
const MADE = 2;

/**
 * What a visit comes to, for the board and for holding the visits of a site against each other: all that is
 * asked of a log when nobody reads it. Good only while the log ends at `head` and the rules are these.
 */
export const VisitSummary = z.object({
  head: Head,
  engine: z.literal(ENGINE_VERSION),
  made: z.literal(MADE),
  status: PairStatus,
  ...PairRow.pick({ next: true, final: true, signed: true }).shape,
  pathLength: z.number().optional(),
  meter: MeterProfile,
  /** The acceptance that stands. */
  accepted: z.object({ seq: Seq, reading: Reading }).optional(),
  /** Turns, gain changes and aims that count. */
  touches: z.array(z.object({ seq: Seq, type: z.string() })),
  findings: z.array(JobFinding),
});
export type VisitSummary = z.infer<typeof VisitSummary>;

/** As of the log's last entry, so that the same log always gives the same. Undefined for one that opens no job. */
export function summaryOf(entries: readonly Entry[]): VisitSummary | undefined {
  const visit = readVisit(entries);
  const last = entries.at(-1);
  if (!visit || !last) return undefined;
  const { end, commission, accepted, until } = visit;
  const {
    counted,
    setup: { meter, pathLength },
  } = commission;
  const status = statusOf(end, until);
  const final = finalReading(commission);
  const { signed } = end;
  return {
    head: headAfter(last),
    engine: ENGINE_VERSION,
    made: MADE,
    status,
    next: nextText(status, end.instruction),
    ...(final && final.as !== 'last-read' && { final: readingWithUnit(final.reading, meter) }),
    ...(signed && { signed: { name: signed.name, role: signed.role, at: signed.at } }),
    ...(pathLength !== undefined && { pathLength }),
    meter,
    ...(accepted && { accepted: { seq: accepted.seq, reading: accepted.reading } }),
    touches: counted.filter(isTouch).map(({ seq, type }) => ({ seq, type })),
    findings: reviewVisit(visit).map(({ entries: seqs, about, ...rest }) => ({
      ...rest,
      entries: [...seqs],
      about: [...about],
    })),
  };
}

/** An summary as the rules of a whole site look at it. */
export const outcomeOf = ({ head, accepted, meter, touches }: VisitSummary): VisitOutcome => ({
  job: head.job,
  accepted,
  commission: { setup: { meter }, counted: touches },
});
