import fc from 'fast-check';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { type AdjusterProfile, type MeterProfile, NEUTRAL_METERS } from '../../src/model/profile.ts';

const defined = <T extends object>(fields: T) =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** With two figures after the point, as people write them. */
const between = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);

/** Anything that a spreadsheet might take for a formula, beside plain text. */
const text = (maxLength: number) =>
  fc
    .tuple(
      fc.constantFrom(
        '',
        '=',
        '+',
        '-',
        '@',
        "'",
        "''=",
        ';=',
        'a;=',
        'a;-',
        '%=',
        '|',
        'x|=',
        '\u200b=',
        '＝',
        '"=',
      ),
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: maxLength - 4 }),
    )
    .map(([start, rest]) => (start + rest).replace(/[\p{Cc}\p{Cs}\p{Co}\p{Cn}\uFFFD]/gu, '').trim())
    .filter(
      (s) =>
        s.length > 0 && s.length <= maxLength && !/[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/u.test(s),
    );

const adjusters: fc.Arbitrary<AdjusterProfile> = fc
  .record({
    name: text(30),
    maxStep: fc.integer({ min: 2, max: 12 }),
    backlash: fc.integer({ min: 0, max: 8e6 }).map((millionths) => millionths / 1e6),
    degreesPerTurn: maybe(fc.double({ min: 1e-6, max: 30, noNaN: true })),
    travel: fc.integer({ min: 8, max: 800 }),
  })
  .map((fields) => defined(fields) as AdjusterProfile);

/** Six rising figures make the scale; the law and its decibels go together. */
const meter: fc.Arbitrary<MeterProfile> = fc
  .record({
    name: fc.oneof(text(30), fc.constantFrom(...NEUTRAL_METERS.map(({ name }) => name))),
    unit: fc.oneof(fc.constant(''), text(12)),
    scale: fc.uniqueArray(fc.double({ min: -1e6, max: 1e6, noNaN: true }), {
      minLength: 6,
      maxLength: 6,
      comparator: (a, b) => a === b,
    }),
    resolution: fc.double({ min: 1e-9, max: 1e6, noNaN: true }),
    tolerance: fc.double({ min: 1e-9, max: 1e6, noNaN: true }),
    law: fc.constantFrom('linear' as const, 'logarithmic' as const, 'unknown' as const),
    dbPerUnit: fc.double({ min: 1e-6, max: 100, noNaN: true }),
    settleMs: fc.integer({ min: 0, max: 600_000 }),
    holdMs: fc.integer({ min: 0, max: 600_000 }),
    gainDbPerStep: fc.option(fc.double({ min: 1e-6, max: 100, noNaN: true }), { nil: undefined }),
    gain: fc.constantFrom('continuous' as const, 'stepped' as const, 'automatic' as const, 'fixed' as const),
  })
  .map(({ scale, dbPerUnit, gainDbPerStep, ...rest }) => {
    const [min, lostAt, bandLow, bandHigh, saturatedAt, max] = scale.map((x) => x + 0).sort((a, b) => a - b);
    const db = rest.law === 'logarithmic' ? { dbPerUnit } : {};
    const step = gainDbPerStep === undefined ? {} : { gainDbPerStep };
    return { ...rest, ...db, ...step, min, lostAt, bandLow, bandHigh, saturatedAt, max } as MeterProfile;
  });

const plan: fc.Arbitrary<PairPlan> = fc
  .record({
    id: fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,31}$/).filter((id) => id !== 'EXAMPLE'),
    name: text(40),
    zone: maybe(text(20)),
    pathLength: maybe(between(1, 300)),
    emitterHeight: maybe(between(0, 40)),
    receiverHeight: maybe(between(0, 40)),
    ceilingHeight: maybe(between(40, 100)),
    spacing: maybe(between(1, 300)),
    wallDistance: maybe(between(1, 300)),
    meter: maybe(meter),
    adjusters: maybe(adjusters),
    alarmThreshold: maybe(
      fc.record({ unit: fc.constantFrom('dB' as const, 'percent' as const), value: between(1, 40) }),
    ),
    alarmDelay: maybe(between(0, 600)),
    faultDelay: maybe(between(0, 600)),
    filterPercent: maybe(between(1, 99)),
    filters: maybe(fc.array(between(1, 99), { minLength: 1, maxLength: 12 })),
    rangeMin: maybe(between(1, 50)),
    rangeMax: maybe(between(50, 300)),
    beamAngle: maybe(between(1, 90)),
    leastSignal: maybe(between(-100, 100)),
    mostLoss: maybe(between(1, 40)),
  })
  .map((fields) => defined(fields) as PairPlan);

/** Some pairs of one site, with every figure that a plan can have. */
export const anyPlans = fc.uniqueArray(plan, {
  minLength: 1,
  maxLength: 8,
  selector: ({ id }) => id.toLowerCase(),
});
