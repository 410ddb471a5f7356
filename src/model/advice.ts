import * as z from 'zod/mini';
import { Checklist, ChecklistItem, UsedCover } from './checklists.ts';
import { Seq } from './ids.ts';
import { PanelIndication } from './reports.ts';
import { Axis, Eighths } from './turns.ts';

/** Who is to act on an instruction. Both always see it; on the ladder an order to read the meter is not said aloud. */
export const Addressee = z.enum(['panel', 'emitter', 'both']);
export type Addressee = z.infer<typeof Addressee>;

/** One possible answer to a question, with what it would mean for the log. */
export const Question = z.discriminatedUnion('kind', [
  /** "Fifteen or fifty?" about the reading of entry `about`. */
  z.object({
    kind: z.literal('which-value'),
    about: Seq,
    options: z.array(z.number()).check(z.minLength(1)),
  }),
  /** "Did you turn the vertical one?" about the move of entry `about`. */
  z.object({
    kind: z.literal('which-move'),
    about: Seq,
    options: z.array(z.object({ axis: Axis, eighths: Eighths })).check(z.minLength(1)),
    /** How many turns ago, if it is not the last one, which is one turn ago. */
    ago: z.optional(z.int().check(z.minimum(2))),
  }),
  /** "Is the path clear?", "Has the gain been touched?" */
  z.object({
    kind: z.literal('is-it-so'),
    about: Seq,
    what: z.enum(['path-clear', 'gain-untouched', 'reading']),
  }),
]);
export type Question = z.infer<typeof Question>;

/** The next thing to do. Positive eighths are clockwise. */
export const Action = z.discriminatedUnion('kind', [
  /** Turn one adjuster. `reversal`: against the last turn of that adjuster. */
  z.object({ kind: z.literal('turn'), axis: Axis, eighths: Eighths, reversal: z.boolean() }),
  /** Set the gain until the reading is about `toward` (meter units); without it: full gain. */
  z.object({
    kind: z.literal('gain'),
    change: z.enum(['lower', 'raise', 'full']),
    toward: z.optional(z.number()),
  }),
  /** Say what the meter shows; `as`: what the light does against the look before, and no number. */
  z.object({ kind: z.literal('read'), as: z.optional(z.literal('trend')) }),
  /** Hands off until `until` (same clock as the entries, ms). */
  z.object({
    kind: z.literal('hold'),
    reason: z.enum(['settling', 'wandering', 'proving-steady', 'waiting']),
    until: z.number(),
  }),
  /** Aim the emitter by eye, within 15 cm of the receiver. */
  z.object({ kind: z.literal('re-aim') }),
  /** Darken the direct line, some metres from either end / free it, for the blocking check. */
  z.object({ kind: z.literal('block') }),
  z.object({ kind: z.literal('unblock') }),
  z.object({ kind: z.literal('ask'), question: Question }),
  /** The search found nothing, or the reading keeps changing: things to check, most likely first. */
  z.object({ kind: z.literal('check'), causes: z.array(z.string()).check(z.minLength(1)) }),
  /** All evidence is there: say "accept". */
  z.object({ kind: z.literal('offer-accept') }),
  /** Ask for one item of a checklist; answered by yes, no, or who was told. */
  z.object({ kind: z.literal('confirm-item'), list: Checklist, item: ChecklistItem }),
  /** Cover the receiver for a proving test, slowly in part or all of it at once; and uncover it. */
  z.extend(UsedCover, { kind: z.literal('cover') }),
  z.object({ kind: z.literal('uncover') }),
  /** Say when the fire panel shows `expect`. The test fails at `until` (ms, the entries' clock), if there is one. */
  z.object({ kind: z.literal('watch-panel'), expect: PanelIndication, until: z.optional(z.number()) }),
  /** A person has to settle the issue of that entry before the pair can be signed. */
  z.object({ kind: z.literal('settle-issue'), issue: Seq }),
  /** All is proven and back in service: the record can be signed. */
  z.object({ kind: z.literal('offer-sign') }),
  /** Nothing more to do on this pair. */
  z.object({ kind: z.literal('finished') }),
]);
export type Action = z.infer<typeof Action>;

/** An action with what it rests on. */
export const Advice = z.object({
  to: Addressee,
  action: Action,
  /** The rule of the procedure that led to it, see docs/procedure.md. */
  rule: z.string(),
  /** Log entries it rests on, oldest first. */
  because: z.array(Seq),
  /** The figures it rests on, by name; the words for them are in `src/phrases/`. */
  figures: z.record(z.string(), z.number()),
});
export type Advice = z.infer<typeof Advice>;
