import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Advice } from '../../src/model/advice.ts';
import type { AlarmThreshold, PairPlan } from '../../src/model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { LossUnit, METRES, METRES_PER_FOOT, type Units } from '../../src/model/units.ts';
import { besideLimits } from '../../src/phrases/beside-limits.ts';
import { figuresText } from '../../src/phrases/figures.ts';
import { instructionText } from '../../src/phrases/instruct.ts';
import { nearText, nearWords } from '../../src/phrases/near.ts';
import { placeText, settingsText } from '../../src/phrases/planned.ts';
import { lengthText, limitFigures, lossText, shownToCrew, thresholdText } from '../../src/phrases/units.ts';
import { dbOf, dbOfPercent, percentOfDb } from '../../src/plan/attenuation.ts';
import { exactLengthIn, lengthIn, metresOf, readLength } from '../../src/plan/lengths.ts';
import { lossIn, readLoss, thresholdIn, thresholdOf } from '../../src/plan/losses.ts';

const FEET: Units = { length: 'ft', loss: 'percent/ft' };

describe('lengths', () => {
  // NIST SP 811 (2008), appendix B.6, from memory: 1 ft = 0.3048 m exactly; 1 in = 25.4 mm exactly.
  it.each([
    ['1', 0.3048],
    ['30 ft', 9.144],
    ["30'", 9.144],
    ['30 feet', 9.144],
    ['1 foot', 0.3048],
    ['12 ft 6 in', 3.81],
    ['12\' 6"', 3.81],
    ['9.1 m', 9.1],
    ['9,1 metres', 9.1],
    ['9.1 meters', 9.1],
    ['15 cm', 0.15],
    ['6 in', 0.1524],
    ['1000', 304.8],
    ['.5', 0.1524],
    ['0.001', 0.0003048],
  ])('%s, where feet are read, are %d m', (text, metres) => {
    expect(readLength(text, 'ft')).toBe(metres);
  });

  it.each([
    ['62', 62],
    ['62,5', 62.5],
    ['203 ft', 61.8744],
    ['9.1m', 9.1],
  ])('%s, where metres are read, are %d m', (text, metres) => {
    expect(readLength(text, 'm')).toBe(metres);
  });

  it.each(['', 'far', '6o', '1,200', '5 yards', '9.1 m m', '12 m 6 in', '1e3', '--5', '3 ft 4 m'])(
    '"%s" is no length',
    (text) => {
      expect(readLength(text, 'ft')).toBeUndefined();
      expect(readLength(text, 'm')).toBeUndefined();
    },
  );

  it('is written in feet with the fewest figures that bring the same metres back', () => {
    expect(exactLengthIn(9.144, 'ft')).toBe(30);
    expect(exactLengthIn(62, 'm')).toBe(62);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_000_000 }), (tenths) => {
        const metres = tenths / 10_000;
        expect(metresOf(exactLengthIn(metres, 'ft'), 'ft')).toBe(metres);
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 98_000 }), (hundredths) => {
        expect(exactLengthIn(metresOf(hundredths / 100, 'ft'), 'ft')).toBe(hundredths / 100);
      }),
    );
  });

  it.each([
    [9.144, '30 ft'],
    [62, '203.4 ft'],
    [0.025, '0.08202 ft'],
    [300, '984.3 ft'],
  ])('%d m is shown as %s', (metres, text) => {
    expect(lengthText(metres, FEET)).toBe(text);
    expect(lengthText(metres, METRES)).toBe(`${metres} m`);
  });

  it('what to stay within is never shown as more than it is', () => {
    expect([nearText(0.15, METRES), nearWords(0.15, METRES)]).toEqual(['15 cm', 'fifteen centimetres']);
    expect([nearText(0.15, FEET), nearWords(0.15, FEET)]).toEqual(['5 in', 'five inches']);
  });

  it('a limit in feet is rounded inward: what is shown is still allowed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 400, noNaN: true }), (metres) => {
        expect(metresOf(limitFigures(metres, 'ft', 'up'), 'ft')).toBeGreaterThanOrEqual(metres - 1e-8);
        expect(metresOf(limitFigures(metres, 'ft', 'down'), 'ft')).toBeLessThanOrEqual(metres + 1e-8);
        expect(Math.abs(limitFigures(metres, 'ft', 'up') - lengthIn(metres, 'ft'))).toBeLessThan(0.011);
      }),
    );
  });
});

describe('a value beside its limits', () => {
  it.each([
    [6, [6], 3, 6, [6]],
    [6.004, [6], 3, 6.004, [6]],
    [5.9996, [6], 3, 5.9996, [6]],
    [6.0000000001, [6], 3, 6, [6]],
    [328.117, [16.404, 328.084], 4, 328.12, [16.404, 328.08]],
    [1.6404, [0.08202, 1.9685], 4, 1.64, [0.08202, 1.968]],
  ])('%d beside %j', (value, limits, figures, shown, shownLimits) => {
    expect(besideLimits(value, limits, figures)).toEqual({ value: shown, limits: shownLimits });
  });

  it('is always shown on the side on which it is, whatever the figures', () => {
    const figure = fc.double({ min: 0.001, max: 400, noNaN: true });
    const near = fc
      .tuple(figure, fc.double({ min: -1e-3, max: 1e-3, noNaN: true }))
      .map(([a, d]) => [a, a * (1 + d)]);
    fc.assert(
      fc.property(
        fc.oneof(fc.tuple(figure, figure), near),
        fc.integer({ min: 1, max: 6 }),
        ([a = 0, b = 0], figures) => {
          const shown = besideLimits(a, [b], figures);
          const same = Math.abs(a - b) <= 1e-9;
          if (!same) expect(Math.sign(shown.value - (shown.limits[0] ?? 0))).toBe(Math.sign(a - b));
        },
      ),
    );
  });
});

it.each([
  [{ loss: 2.999, threshold: 3 }, METRES, '2.999 dB lost, alarm set at 3.000 dB'],
  [{ loss: 3, threshold: 3 }, METRES, '3.00 dB lost, alarm set at 3.00 dB'],
  [
    { loss: 3.0002, expectedLoss: 3.1, threshold: 3 },
    METRES,
    '3.0002 dB lost, 3.10 dB expected, alarm set at 3.0000 dB',
  ],
  [{ loss: 3.002, threshold: 3 }, { length: 'm', loss: 'percent' }, '49.90 % lost, alarm set at 49.88 %'],
] as const)('losses beside a threshold, %j, are not rounded onto it', (figures, units, text) => {
  expect(figuresText(figures, NEUTRAL_METERS[1] as MeterProfile, units)).toBe(text);
});

describe('losses of light', () => {
  // UL 268, from memory: Ou = 100 * (1 - (Ts/Tc)^(1/d)), d in feet. Worked the other way round here: each foot lets the
  // same part through, so the light left after n feet is that part multiplied n times.
  it.each([
    [2, 10],
    [0.2, 203],
    [4, 5],
  ])('%d %/ft over %d ft is what the feet hold back one after the other', (percent, feet) => {
    let left = 1;
    for (let foot = 0; foot < feet; foot += 1) left *= 1 - percent / 100;
    const metres = feet * METRES_PER_FOOT;
    expect(percentOfDb(dbOf(percent, 'percent/ft', metres))).toBeCloseTo(100 * (1 - left), 9);
    expect(lossIn(dbOfPercent(100 * (1 - left)), 'percent/ft', metres)).toBeCloseTo(percent, 9);
    // The same with metres.
    expect(percentOfDb(dbOf(percent, 'percent/m', feet))).toBeCloseTo(100 * (1 - left), 9);
  });

  it.each([
    ['35', 'percent', { value: 35, unit: 'percent' }],
    ['35 %', 'dB', { value: 35, unit: 'percent' }],
    ['1,9 dB', 'percent', { value: 1.9, unit: 'dB' }],
    ['0.2 %/ft', 'dB', { value: 0.2, unit: 'percent/ft' }],
    ['0.2 percent per foot', 'dB', { value: 0.2, unit: 'percent/ft' }],
    ['0.7 %/m', 'dB', { value: 0.7, unit: 'percent/m' }],
    ['0.2', 'percent/ft', { value: 0.2, unit: 'percent/ft' }],
  ] as const)('"%s", where %s is read', (text, unit, read) => {
    expect(readLoss(text, unit)).toEqual(read);
  });

  it.each(['', '%', 'much', '3 furlongs', '3 %/yd', '3 dB/m'])('"%s" is no loss', (text) => {
    expect(readLoss(text, 'dB')).toBeUndefined();
  });

  it('a threshold in percent or dB stays as it is stated; one for each foot becomes dB over the path', () => {
    expect(thresholdOf(35, 'percent', undefined)).toEqual({ unit: 'percent', value: 35 });
    expect(thresholdOf(1.9, 'dB', undefined)).toEqual({ unit: 'dB', value: 1.9 });
    const { unit, value } = thresholdOf(2, 'percent/ft', 10 * METRES_PER_FOOT) as AlarmThreshold;
    expect(unit).toBe('dB');
    expect(value).toBeCloseTo(-10 * Math.log10(0.98 ** 10), 6);
  });

  it('is refused where it needs a path and there is none, and beyond what a detector can have', () => {
    expect(thresholdOf(2, 'percent/ft', undefined)).toBeUndefined();
    expect(thresholdOf(2, 'percent/m', undefined)).toBeUndefined();
    for (const unit of LossUnit.options) expect(thresholdOf(0, unit, 60)).toBeUndefined();
    expect(thresholdOf(40, 'dB', 60)).toBeDefined();
    expect(thresholdOf(40.1, 'dB', 60)).toBeUndefined();
    expect(thresholdOf(100, 'percent', 60)).toBeUndefined();
    // 100 m at 8.7 % a metre are 39.5 dB, at 8.9 % 40.5 dB.
    expect(thresholdOf(8.7, 'percent/m', 100)).toBeDefined();
    expect(thresholdOf(8.9, 'percent/m', 100)).toBeUndefined();
  });

  it.each([
    [{ length: 'm' }, '35 %', '1.87 dB'],
    [{ length: 'm', loss: 'dB' }, '1.871 dB', '1.87 dB'],
    [{ length: 'm', loss: 'percent' }, '35 %', '35.0 %'],
    [{ length: 'm', loss: 'percent/m' }, '0.6924 %/m', '0.692 %/m'],
    [{ length: 'ft', loss: 'percent/ft' }, '0.2116 %/ft', '0.212 %/ft'],
  ] as const)('35 percent over 62 m where %j is read: %s', (units, threshold, loss) => {
    const shown = { ...units, path: 62 };
    expect(thresholdText({ unit: 'percent', value: 35 }, shown)).toBe(threshold);
    expect(lossText(dbOfPercent(35), shown)).toBe(loss);
  });

  it('without a path, what needs one is told as it is stated, or in dB', () => {
    const shown = { length: 'ft', loss: 'percent/ft' } as const;
    expect(thresholdText({ unit: 'percent', value: 35 }, shown)).toBe('35 %');
    expect(lossText(1.87, shown)).toBe('1.87 dB');
    expect(thresholdIn({ unit: 'percent', value: 35 }, 'percent/ft', undefined)).toBeUndefined();
  });

  it('all of the light is 100 percent', () => {
    expect(lossText(Number.POSITIVE_INFINITY, { length: 'm', loss: 'percent' })).toBe('100.0 %');
  });
});

describe('words in the units of the job', () => {
  const setup: JobSetup = {
    site: 'Hollin Bridge',
    pair: 'B2',
    meter: NEUTRAL_METERS[1] as MeterProfile,
    adjusters: NEUTRAL_ADJUSTERS,
    pathLength: 62,
  };
  const reAim: Advice = {
    to: 'emitter',
    action: { kind: 're-aim' },
    rule: 're-aim',
    because: [],
    figures: {},
  };

  it('an aim by eye is spoken, shown and explained in centimetres or in inches', () => {
    expect(instructionText(reAim, setup)).toEqual({
      say: 'Aim by eye, within fifteen centimetres. Say done.',
      show: 'Aim by eye, within 15 cm of the receiver, 62 m away',
      why: expect.stringContaining('to within 15 cm of the receiver'),
    });
    expect(instructionText(reAim, { ...setup, units: FEET })).toEqual({
      say: 'Aim by eye, within five inches. Say done.',
      show: 'Aim by eye, within 5 in of the receiver, 203.4 ft away',
      why: expect.stringContaining('to within 5 in of the receiver'),
    });
  });

  it('the way to the receiver is left out where the path is not known', () => {
    const { pathLength: _, ...unknown } = setup;
    const show = (of: JobSetup) => instructionText(reAim, of).show;
    expect(show({ ...setup, pathLength: 12.192, units: FEET })).toContain('of the receiver, 40 ft away');
    expect(show(unknown)).toBe('Aim by eye, within 15 cm of the receiver');
  });

  it('a plan on the report is told in them', () => {
    const plan: PairPlan = {
      id: 'B2',
      name: 'B2',
      pathLength: 62,
      emitterHeight: 9.144,
      alarmThreshold: { unit: 'percent', value: 35 },
      filters: [20, 60],
    };
    const feet = { ...FEET, path: 62 };
    expect(placeText(plan, METRES)).toBe('path 62 m, emitter at 9.144 m');
    expect(placeText(plan, feet)).toBe('path 203.4 ft, emitter at 30 ft');
    expect(settingsText(plan, METRES)).toBe('alarm at 35 % lost, test filters 20, 60 %');
    expect(settingsText(plan, feet)).toBe('alarm at 0.2116 %/ft lost, test filters 20, 60 %');
  });

  // By hand: 1 - 10^(-1.87 / 10) = 35.0 %, 1 - 10^(-0.6 / 10) = 12.9 %.
  it.each([
    ['a meter in counts', setup.meter, undefined, '35.0 % lost', '12.9 % less light'],
    [
      'a meter in dB',
      { ...setup.meter, law: 'logarithmic' as const, dbPerUnit: 1 },
      undefined,
      '1.87 dB lost',
      '0.6 dB less light',
    ],
    [
      'a site that chose its unit',
      setup.meter,
      { length: 'm', loss: 'dB' } as const,
      '1.87 dB lost',
      '0.6 dB less light',
    ],
  ])('the crew reads a loss as its own things are marked: %s', (_, meter, units, lost, less) => {
    const shown = shownToCrew({ ...setup, meter, ...(units && { units }) });
    expect(figuresText({ loss: dbOfPercent(35) }, meter, shown)).toBe(lost);
    expect(figuresText({ lostSince: 0.6 }, meter, shown)).toBe(less);
    // What came back is no part of the light.
    expect(figuresText({ lostSince: -0.6 }, meter, shown)).toBe('0.6 dB more light');
  });

  it('the figures of a test are told in them', () => {
    const figures = { loss: 3.01, expectedLoss: 3.98, threshold: dbOfPercent(35) };
    const text = (units?: Units) => figuresText(figures, setup.meter, { ...(units ?? METRES), path: 62 });
    expect(text()).toBe('3.01 dB lost, 3.98 dB expected, alarm set at 1.87 dB');
    expect(text({ length: 'm', loss: 'percent' })).toBe('50.0 % lost, 60.0 % expected, alarm set at 35.0 %');
    expect(text(FEET)).toBe('0.340 %/ft lost, 0.450 %/ft expected, alarm set at 0.212 %/ft');
  });
});
