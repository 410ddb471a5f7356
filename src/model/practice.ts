import * as z from 'zod/mini';
import { Axis, Eighths } from './turns.ts';

/** What can be planted in a practice job. */
export const Trouble = z.enum([
  /** The receiver gets more light than its meter can show. */
  'flooded',
  /** Once, a screw goes the other way than the hand meant. */
  'wrong-way',
  /** The emitter first points at a wall that throws the light to the receiver. */
  'reflection',
  /** The mount shakes, and the meter never stands still. */
  'vibration',
  /** Once, a number said at the panel is heard as another. */
  'misheard',
]);
export type Trouble = z.infer<typeof Trouble>;

/** Makes a job one of practice, with a simulated pair: its log is no record of anything. */
export const Practice = z.object({
  /** All that is random about the pair and its troubles follows from it. */
  seed: z.int().check(z.minimum(0), z.maximum(0x7fffffff)),
  troubles: z.array(Trouble).check(z.maxLength(Trouble.options.length)),
  /** Each step is explained, on a pair without trouble. */
  guided: z.optional(z.literal(true)),
});
export type Practice = z.infer<typeof Practice>;

/** The log of practice on one phone. No job of a server has this name: theirs are random. */
export const PRACTICE_JOB = 'practice-only';

/** What hands did at the simulated pair, whatever was said about it. */
export const HandAct = z.discriminatedUnion('did', [
  /** Turned a screw. */
  z.object({ did: z.literal('turn'), axis: Axis, eighths: Eighths }),
  /** Set the gain: so many dB below full. */
  z.object({ did: z.literal('gain'), db: z.number().check(z.minimum(0), z.maximum(60)) }),
  /** Held a card into the direct line, or took it out. */
  z.object({ did: z.literal('card'), inPath: z.boolean() }),
  /** Aimed the emitter at the receiver by eye. */
  z.object({ did: z.literal('aim') }),
]);
export type HandAct = z.infer<typeof HandAct>;

export const PracticeAct = z.discriminatedUnion('did', [
  ...HandAct.def.options,
  /** The next words were changed before anything else heard them; they really were these. */
  z.object({ did: z.literal('misheard'), meant: z.string().check(z.maxLength(2000)) }),
]);
export type PracticeAct = z.infer<typeof PracticeAct>;

/** What one run of a practice job came to. */
export interface Run {
  readonly accepted: boolean;
  /** Turns and readings that were reported, taken back or not. */
  readonly turns: number;
  readonly readings: number;
  /** From the first order to the acceptance, or to the last entry, ms. */
  readonly took: number;
  /** What people said, typed or pressed. */
  readonly words: number;
  /** Numbers that the meter did not show, and those of them that were put right. */
  readonly wrong: number;
  readonly putRight: number;
  /** Below the best place there is, dB. */
  readonly short: number;
  readonly missed: readonly Miss[];
  /** What was planted, and what became of it. */
  readonly planted: readonly { readonly trouble: Trouble; readonly fate: Fate }[];
}

export type Fate = 'met' | 'missed' | 'not-met-yet';

/** What went wrong and nobody put right. */
export type Miss =
  | 'overridden'
  /** A number was said while the meter was beyond its end. */
  | 'flooded-number'
  | 'wrong-number-stood'
  /** The screws are not where the log says. */
  | 'wrong-turn-stood'
  /** "Blocked" was said without a card in the beam. */
  | 'said-blocked'
  | 'said-clear'
  | 'said-aimed'
  /** The accepted light comes from a wall. */
  | 'on-reflection'
  | 'off-peak';
