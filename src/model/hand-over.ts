import * as z from 'zod/mini';
import { Seq } from './ids.ts';
import { AlarmThreshold, PairPlan } from './pair-plan.ts';
import { StepResult, TestStep } from './steps.ts';

const shortText = z.string().check(z.trim(), z.minLength(1), z.maxLength(80));
const text = z.string().check(z.trim(), z.minLength(3), z.maxLength(500));

/** "2026-11-26": a day of the calendar, without a time or a zone. */
export const CalendarDate = z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/), z.refine(isDay));

/** No 30 February: written back from what it was read as, it is the same. */
function isDay(text: string): boolean {
  const at = Date.parse(`${text}T00:00:00Z`);
  return Number.isFinite(at) && new Date(at).toISOString().startsWith(text);
}

const { alarmDelay, faultDelay, emitterHeight, receiverHeight } = PairPlan.shape;

/** How a pair was left, as far as somebody wrote it down. Heights in metres, delays in seconds. */
export const AsLeft = z.object({
  /** What the meter showed, in its unit. */
  signal: z.optional(z.number().check(z.minimum(-1e6), z.maximum(1e6))),
  gain: z.optional(shortText),
  threshold: z.optional(AlarmThreshold),
  alarmDelay,
  faultDelay,
  emitterSerial: z.optional(shortText),
  receiverSerial: z.optional(shortText),
  firmware: z.optional(shortText),
  emitterPosition: z.optional(shortText),
  receiverPosition: z.optional(shortText),
  emitterHeight,
  receiverHeight,
  /** What the beam is fixed on, and what it points at. */
  pointsAt: z.optional(shortText),
});
export type AsLeft = z.infer<typeof AsLeft>;
export type AsLeftField = keyof AsLeft;
export const AS_LEFT_FIELDS = Object.keys(AsLeft.shape) as [AsLeftField, ...AsLeftField[]];

/** Whether the sun can reach the receiver. */
export const Sun = z.enum(['none', 'near', 'on-receiver']);
export type Sun = z.infer<typeof Sun>;

export const BuildingState = z.enum([
  'enclosed',
  'open',
  'heated',
  'unheated',
  'dusty',
  'doors-open',
  'in-use',
]);
export type BuildingState = z.infer<typeof BuildingState>;

/** Facts about the state in which a pair is handed over. */
export const handOverFacts = [
  /** Each value replaces the one that was written before it, and only that. */
  z.object({ type: z.literal('as-left'), values: AsLeft }),
  /** What it was like during the work. A later one replaces an earlier one whole. */
  z.object({
    type: z.literal('conditions'),
    sun: z.optional(Sun),
    weather: z.optional(shortText),
    building: z.optional(z.array(BuildingState).check(z.maxLength(BuildingState.options.length))),
  }),
  /** What was done otherwise than planned or required, and who agreed to it. */
  z.object({ type: z.literal('variation'), what: text, agreedWith: shortText }),
  /** What is to be done next, and by when. A later one replaces an earlier one. */
  z.object({ type: z.literal('next-due'), what: text, on: CalendarDate }),
  /**
   * What an entry wrote holds no longer: a variation, or one value as it was left, which is then not known. The entry
   * stays in the log, struck through.
   */
  z.object({
    type: z.literal('struck-out'),
    entry: Seq,
    field: z.optional(z.enum(AS_LEFT_FIELDS)),
    why: text,
  }),
  /** A step of the visit's list was answered; `cause` names it. A later answer replaces an earlier one. */
  z.object({
    type: z.literal('step'),
    cause: TestStep.shape.cause,
    result: StepResult,
    note: z.optional(text),
  }),
] as const;

export const HandOverFact = z.discriminatedUnion('type', handOverFacts);
export type HandOverFact = z.infer<typeof HandOverFact>;
