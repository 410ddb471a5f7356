import * as z from 'zod/mini';
import { FilterGrade } from '../model/checklists.ts';
import { Reading } from '../model/reading.ts';
import { CannotWhy, PanelIndication, PathState, Trend } from '../model/reports.ts';
import { Axis } from '../model/turns.ts';

/**
 * Which way a person says a screw was turned. "back" and "on" are relative to the last turn of that adjuster;
 * the four aim words ("left" ...) do not tell which way the screw turned, and "in" and "out" only who knows which way
 * its thread is cut: the crew is asked.
 */
export const Way = z.enum([
  'clockwise',
  'anticlockwise',
  'back',
  'on',
  'left',
  'right',
  'up',
  'down',
  'in',
  'out',
]);
export type Way = z.infer<typeof Way>;

/** What one phrase of a crew member means. Everything a phone can say or a button can send is one of these. */
export const Intent = z.discriminatedUnion('kind', [
  /** "one forty two", "no signal", "saturated". */
  z.object({ kind: z.literal('reading'), reading: Reading }),
  /** "fifty or so": near what the meter shows, and no reading yet. */
  z.object({ kind: z.literal('rough'), value: z.number() }),
  /** "wrong, one twenty four", "not fifty, fifteen": `not` is the value taken back, where it was said. */
  z.object({ kind: z.literal('correct'), reading: Reading, not: z.optional(Reading) }),
  z.object({ kind: z.literal('trend'), trend: Trend }),
  /** "done": the turn asked for was made. */
  z.object({ kind: z.literal('done') }),
  /** "quarter turn back on the vertical": magnitude in eighths, always positive. */
  z.object({
    kind: z.literal('moved'),
    axis: z.optional(Axis),
    eighths: z.optional(z.int().check(z.positive())),
    way: z.optional(Way),
  }),
  /** "gain down", "gain is now forty", "full gain". */
  z.object({
    kind: z.literal('gain'),
    change: z.enum(['lowered', 'raised', 'set', 'full']),
    to: z.optional(z.number()),
  }),
  /**
   * `by`: "half covered", "filter on"; "partly covered" does not say with what. `filter`: the grade that was said,
   * percent: "sixty filter on".
   */
  z.object({
    kind: z.literal('path'),
    state: PathState,
    by: z.optional(z.enum(['half', 'filter'])),
    filter: z.optional(FilterGrade),
  }),
  /** What the fire panel itself shows. */
  z.object({ kind: z.literal('panel'), shows: PanelIndication }),
  /** "told the control room": who knows that the alarm is out of service. */
  z.object({ kind: z.literal('told'), who: z.string() }),
  /** "swap adjuster", "switch to vertical". */
  z.object({ kind: z.literal('swap'), axis: z.optional(Axis) }),
  z.object({ kind: z.literal('undo') }),
  z.object({ kind: z.literal('yes') }),
  z.object({ kind: z.literal('no') }),
  /** "say again". */
  z.object({ kind: z.literal('repeat') }),
  /** "stand by": the speaker needs time; there is no advice until "go on". */
  z.object({ kind: z.literal('wait') }),
  z.object({ kind: z.literal('resume') }),
  z.object({ kind: z.literal('cannot'), why: CannotWhy }),
  z.object({ kind: z.literal('wrong-way') }),
  /** "I turned the wrong one": the other adjuster was turned. */
  z.object({ kind: z.literal('wrong-screw') }),
  /** "I didn't turn it": neither what is asked for now, nor what was reported as turned. */
  z.object({ kind: z.literal('not-turned') }),
  /** "lost count", "went too far": something was turned, and nobody knows yet how far. */
  z.object({ kind: z.literal('miscounted') }),
  /** "someone knocked it": it no longer points where the count of the turns says. */
  z.object({ kind: z.literal('knocked') }),
  /** "not sure", "skip that": no answer to what is asked. */
  z.object({ kind: z.literal('unsure') }),
  /** "why?": the reason for the present instruction. */
  z.object({ kind: z.literal('why') }),
  /** "what's the reading?" from the ladder. */
  z.object({ kind: z.literal('ask-reading') }),
  z.object({ kind: z.literal('accept') }),
  z.object({ kind: z.literal('stop') }),
  z.object({ kind: z.literal('start') }),
  /** "note, bracket is loose": kept for the record, changes nothing. */
  z.object({ kind: z.literal('remark'), text: z.string() }),
]);
export type Intent = z.infer<typeof Intent>;

/** What the parser understood. It never guesses: two possible meanings become a question. */
export type Understanding =
  | { kind: 'understood'; intents: Intent[] }
  /** Two or more readings of the same words; ask which. */
  | { kind: 'ambiguous'; options: Intent[][] }
  /** Not a sentence of the grammar; `unknown` lists the words that were not understood. */
  | { kind: 'unclear'; unknown: string[] };
