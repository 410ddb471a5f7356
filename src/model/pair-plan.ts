import * as z from 'zod/mini';
import { FilterGrade } from './checklists.ts';
import { Name } from './name.ts';
import { AdjusterProfile, MeterProfile } from './profile.ts';

/** The most pairs of one site. */
export const MAX_PAIRS = 2_000;

/** The most test filters of a kit. */
export const MAX_FILTERS = 12;

/** Names a beam pair within its site, short enough to be read out: "B2", "hall-3.east". */
export const PairId = z.string().check(z.trim(), z.regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/));
export type PairId = z.infer<typeof PairId>;

const metres = z.number().check(z.positive(), z.maximum(300));
const height = z.number().check(z.minimum(0), z.maximum(100));
const seconds = z.number().check(z.minimum(0), z.maximum(600));

/** No detector alarms only beyond this loss. */
export const MOST_DB = 40;

/** The loss of light at which the detector alarms, as the maker or the setting states it. */
export const AlarmThreshold = z.discriminatedUnion('unit', [
  z.object({ unit: z.literal('dB'), value: z.number().check(z.gt(0), z.maximum(MOST_DB)) }),
  z.object({ unit: z.literal('percent'), value: FilterGrade }),
]);
export type AlarmThreshold = z.infer<typeof AlarmThreshold>;

/**
 * What is planned for one pair before the ladder goes up. A crew that does not know a figure leaves it out;
 * what needs it is not checked.
 */
export const PairPlan = z.object({
  id: PairId,
  name: Name,
  /** Zone or address the panel shows for it. */
  zone: z.optional(z.string().check(z.trim(), z.minLength(1), z.maxLength(60))),
  /** Emitter to receiver, metres. */
  pathLength: z.optional(z.number().check(z.minimum(1), z.maximum(300))),
  /** Above the floor, metres. */
  emitterHeight: z.optional(height),
  receiverHeight: z.optional(height),
  ceilingHeight: z.optional(height),
  /** To the nearest neighbouring beam, and to the nearest wall along the beam, metres. */
  spacing: z.optional(metres),
  wallDistance: z.optional(metres),
  meter: z.optional(MeterProfile),
  adjusters: z.optional(AdjusterProfile),
  alarmThreshold: z.optional(AlarmThreshold),
  /** Set delays from "covered" to what the panel shows, seconds. */
  alarmDelay: z.optional(seconds),
  faultDelay: z.optional(seconds),
  /** Light the test filter holds back, percent; without a filter the receiver is half covered. */
  filterPercent: z.optional(FilterGrade),
  /** Every test filter that the crew owns, percent; where there are any, `filterPercent` does not count. */
  filters: z.optional(z.array(FilterGrade).check(z.minLength(1), z.maxLength(MAX_FILTERS))),
  /** The path lengths the maker allows, metres. */
  rangeMin: z.optional(metres),
  rangeMax: z.optional(metres),
  /** Full angle of the emitter's beam between its half-power points, degrees. */
  beamAngle: z.optional(z.number().check(z.positive(), z.maximum(90))),
  /** The least signal over the clear path, in the unit of the meter, and the most that it may lose since the first visit, dB. */
  leastSignal: z.optional(z.number().check(z.minimum(-1e6), z.maximum(1e6))),
  mostLoss: z.optional(z.number().check(z.positive(), z.maximum(MOST_DB))),
});
export type PairPlan = z.infer<typeof PairPlan>;

/** Of each of these two figures the first must not be above the second. */
const RISING = [
  ['rangeMin', 'rangeMax'],
  ['emitterHeight', 'ceilingHeight'],
  ['receiverHeight', 'ceilingHeight'],
] as const;
export type Inverted = (typeof RISING)[number];

/** The figures of a plan that cannot both be right. Plans in logs already written may have some. */
export const invertedIn = (
  plan: {
    readonly [K in Inverted[number]]?: number | undefined;
  },
): readonly Inverted[] =>
  RISING.filter(([low, high]) => (plan[low] ?? 0) > (plan[high] ?? Number.POSITIVE_INFINITY));

/** How an id is compared: two that differ in case only would be taken for each other when they are read out. */
export const idKey = (id: PairId): string => id.toLowerCase();
