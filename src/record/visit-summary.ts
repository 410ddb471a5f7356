import * as z from 'zod/mini';
import { ENGINE_VERSION } from '../engine/version.ts';
import type { VisitOutcome } from '../findings/outcome.ts';
import { headAfter } from '../log/chain.ts';
import { enclosedIn } from '../log/enclosure.ts';
import { Hash, Head, Seq } from '../model/ids.ts';
import { PairPlan } from '../model/pair-plan.ts';
import { PairStatus } from '../model/pair-status.ts';
import { isTouch } from '../model/placed.ts';
import { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import { Reading } from '../model/reading.ts';
import { nextText } from '../phrases/board.ts';
import { finalText } from '../phrases/readings.ts';
import { JobFinding, PairRow } from '../protocol/site.ts';
import { ladderTime } from './ladder-time.ts';
import type { VisitRecord } from './visit-record.ts';

/** Raised when the same log gives another summary, so that no old summary is used. */
const MADE = 9;

/**
 * The result of a visit, for the board and for comparing the visits of a site, so that the log need not be
 * read again. Valid only while the log ends at `head` and the rules are the same.
 */
export const VisitSummary = z.object({
  head: Head,
  engine: z.literal(ENGINE_VERSION),
  made: z.literal(MADE),
  status: PairStatus,
  ...z.pick(PairRow, { next: true, final: true, signed: true }).shape,
  pathLength: z.optional(z.number()),
  /** What the visit was made with. */
  plan: z.optional(PairPlan),
  meter: MeterProfile,
  adjusters: AdjusterProfile,
  /** The valid acceptance. */
  accepted: z.optional(z.object({ seq: Seq, reading: Reading })),
  /** What the meter showed over the clear path at the end, and when the next work is due, ms. */
  left: z.optional(z.object({ seq: Seq, at: z.number(), value: z.number() })),
  due: z.optional(z.number()),
  /** How long somebody stood at the emitter, ms. */
  ladder: z.optional(z.number()),
  /** Turns, gain changes and aims that count. */
  touches: z.array(
    z.object({ seq: Seq, type: z.string(), change: z.optional(z.string()), to: z.optional(z.number()) }),
  ),
  findings: z.array(JobFinding),
  /** What must lie beside the log. */
  enclosed: z.array(z.tuple([Seq, Hash])),
});
export type VisitSummary = z.infer<typeof VisitSummary>;

/** Undefined for a log that opens no job. */
export function summaryOf({
  entries,
  visit,
  state,
  status,
  final,
  findings,
}: VisitRecord): VisitSummary | undefined {
  const last = entries.at(-1);
  if (!visit || !last) return undefined;
  const { accepted, left, due } = visit;
  const {
    counted,
    setup: { meter, adjusters, plan, pathLength },
  } = visit.commission;
  const { signed } = state;
  const ladder = ladderTime(entries, accepted?.seq);
  return {
    head: headAfter(last),
    engine: ENGINE_VERSION,
    made: MADE,
    status,
    next: nextText(status, state.instruction),
    ...(final && { final: finalText(final, meter) }),
    ...(signed && { signed: { name: signed.name, role: signed.role, at: signed.at } }),
    ...(pathLength !== undefined && { pathLength }),
    ...(plan && { plan }),
    meter,
    adjusters,
    ...(accepted && { accepted: { seq: accepted.seq, reading: accepted.reading } }),
    ...(left && { left }),
    ...(due !== undefined && { due }),
    ...(ladder !== undefined && { ladder }),
    touches: counted.filter(isTouch).map((fact) => ({
      seq: fact.seq,
      type: fact.type,
      ...(fact.type === 'gain' && { change: fact.change, ...(fact.to !== undefined && { to: fact.to }) }),
    })),
    findings: findings.map(({ entries: seqs, about, ...rest }) => ({
      ...rest,
      entries: [...seqs],
      about: [...about],
    })),
    enclosed: [...enclosedIn(entries)],
  };
}

/** A summary in the form that the rules of a whole site use. */
export const outcomeOf = ({
  head,
  accepted,
  left,
  due,
  signed,
  plan,
  meter,
  adjusters,
  touches,
}: VisitSummary): VisitOutcome => ({
  job: head.job,
  accepted,
  left,
  due,
  signed: signed !== undefined,
  commission: { setup: { meter, adjusters, ...(plan && { plan }) }, counted: touches },
});
