import * as z from 'zod/mini';

/** How the meter's number follows the received power. */
export const MeterLaw = z.enum(['linear', 'logarithmic', 'unknown']);
export type MeterLaw = z.infer<typeof MeterLaw>;

/**
 * How the gain can be set: turned freely, in numbered steps, by the detector itself, or not at all.
 */
export const GainKind = z.enum(['continuous', 'stepped', 'automatic', 'fixed']);
export type GainKind = z.infer<typeof GainKind>;

/** The meter at the panel. The user sets every field; `NEUTRAL_METERS` are starting points. */
export const MeterProfile = z
  .object({
    name: z.string().check(z.minLength(1), z.maxLength(60)),
    /** Unit as it is spoken and printed, e.g. "percent", "counts", "volts", "dB". */
    unit: z.string().check(z.maxLength(20)),
    /** Lowest and highest number the meter can show. */
    min: z.number(),
    max: z.number(),
    /** Smallest difference the meter shows. */
    resolution: z.number().check(z.positive()),
    law: MeterLaw,
    /** Decibels of received power for one unit; only on a logarithmic meter. */
    dbPerUnit: z.optional(z.number().check(z.positive())),
    /** At or above this the receiver is saturated and the number means nothing. */
    saturatedAt: z.number(),
    /** At or below this there is no usable signal. */
    lostAt: z.number(),
    /** The band in which an alignment may be accepted. */
    bandLow: z.number(),
    bandHigh: z.number(),
    /** Two readings that differ by no more than this agree, in meter units. */
    tolerance: z.number().check(z.positive()),
    /** After this long with the hands off, the reading counts as settled. Milliseconds. */
    settleMs: z.int().check(z.nonnegative()),
    /** The accepted reading must stay within tolerance for this long. Milliseconds. */
    holdMs: z.int().check(z.nonnegative()),
    gain: GainKind,
    /** Decibels that one step of the gain's setting adds; where the maker gives it. */
    gainDbPerStep: z.optional(z.number().check(z.positive())),
  })
  .check(
    z.superRefine((m, ctx) => {
      const rising: [string, number, string, number][] = [
        ['min', m.min, 'lostAt', m.lostAt],
        ['lostAt', m.lostAt, 'bandLow', m.bandLow],
        ['bandLow', m.bandLow, 'bandHigh', m.bandHigh],
        ['bandHigh', m.bandHigh, 'saturatedAt', m.saturatedAt],
        ['saturatedAt', m.saturatedAt, 'max', m.max],
      ];
      for (const [low, a, high, b] of rising) {
        const strict = low === 'bandLow' || low === 'lostAt';
        if (strict ? a >= b : a > b) {
          ctx.addIssue({
            code: 'custom',
            path: [high],
            message: `${high} (${b}) must lie above ${low} (${a})`,
          });
        }
      }
      if (m.law === 'logarithmic' && m.dbPerUnit === undefined) {
        ctx.addIssue({
          code: 'custom',
          path: ['dbPerUnit'],
          message: 'a logarithmic meter needs dbPerUnit: the decibels of one unit',
        });
      }
    }),
  );
export type MeterProfile = z.infer<typeof MeterProfile>;

/** The emitter's two adjusters. */
export const AdjusterProfile = z.object({
  name: z.string().check(z.minLength(1), z.maxLength(60)),
  /** Largest single turn that a hand makes well, in eighths. */
  maxStep: z.int().check(z.minimum(2), z.maximum(12)),
  /** Lost motion on reversal, in eighths of a turn (may be a fraction); 0 if not known. */
  backlash: z.number().check(z.minimum(0), z.maximum(8)),
  /** Angle of the emitter for one full turn, in degrees, where known. */
  degreesPerTurn: z.optional(z.number().check(z.positive())),
  /** How far from the start each adjuster can go, in eighths. */
  travel: z.int().check(z.minimum(8), z.maximum(800)),
});
export type AdjusterProfile = z.infer<typeof AdjusterProfile>;

/** Where the gain should put a peak: the middle of the band. Meter units. */
export const midBand = (m: MeterProfile): number => (m.bandLow + m.bandHigh) / 2;

const seconds = (s: number): number => s * 1000;

/**
 * Neutral meters. The bands are common practice, no source: the middle of each is about 55 % of the
 * saturated value on the linear scales. The maker's instructions come before any of them.
 */
export const NEUTRAL_METERS: readonly MeterProfile[] = [
  {
    name: 'Percent of full scale',
    unit: 'percent',
    min: 0,
    max: 100,
    resolution: 1,
    law: 'linear',
    saturatedAt: 99,
    lostAt: 2,
    bandLow: 40,
    bandHigh: 70,
    tolerance: 1,
    settleMs: seconds(4),
    holdMs: seconds(10),
    gain: 'continuous',
  },
  {
    name: '8-bit counts',
    unit: 'counts',
    min: 0,
    max: 255,
    resolution: 1,
    law: 'linear',
    saturatedAt: 250,
    lostAt: 5,
    bandLow: 100,
    bandHigh: 180,
    tolerance: 2,
    settleMs: seconds(4),
    holdMs: seconds(10),
    gain: 'continuous',
  },
  {
    name: 'Volts',
    unit: 'volts',
    min: 0,
    max: 5,
    resolution: 0.01,
    law: 'linear',
    saturatedAt: 4.9,
    lostAt: 0.1,
    bandLow: 2,
    bandHigh: 3.5,
    tolerance: 0.04,
    settleMs: seconds(4),
    holdMs: seconds(10),
    gain: 'continuous',
  },
  {
    name: 'Decibels',
    unit: 'dB',
    min: -60,
    max: 0,
    resolution: 0.1,
    law: 'logarithmic',
    dbPerUnit: 1,
    saturatedAt: -0.5,
    lostAt: -40,
    bandLow: -6,
    bandHigh: -3,
    tolerance: 0.2,
    settleMs: seconds(4),
    holdMs: seconds(10),
    gain: 'continuous',
  },
];

/**
 * A lamp or a tone: nothing on it is a number, so only its times and its gain count. Every meter has a scale; nobody reads this
 * one.
 */
export const INDICATOR: MeterProfile = {
  ...(NEUTRAL_METERS[0] as MeterProfile),
  name: 'Indicator without a number',
  unit: '',
  law: 'unknown',
};

/** Two hand-turned screws, the usual case. */
export const NEUTRAL_ADJUSTERS: AdjusterProfile = {
  name: 'Two hand-turned adjusters',
  maxStep: 12,
  backlash: 0,
  travel: 80,
};
