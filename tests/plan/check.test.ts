import { describe, expect, it } from 'vitest';
import { GUIDANCES, Guidance } from '../../src/model/guidance.ts';
import { PairPlan } from '../../src/model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import { GUIDANCE_ONLY, planFigureText } from '../../src/phrases/plan-formulas.ts';
import { checkPlan, FIGURES, type FigureId } from '../../src/plan/check.ts';
import { lossBetween, readingBehind } from '../../src/plan/expected.ts';

const meter = (unit: string) => NEUTRAL_METERS.find((each) => each.unit === unit) as MeterProfile;

const FULL = PairPlan.parse({
  id: 'B2',
  name: 'North aisle',
  pathLength: 62,
  emitterHeight: 9.4,
  receiverHeight: 9.4,
  ceilingHeight: 9.9,
  spacing: 14,
  wallDistance: 7,
  meter: meter('counts'),
  adjusters: { ...NEUTRAL_ADJUSTERS, degreesPerTurn: 0.7 },
  alarmThreshold: { unit: 'percent', value: 35 },
  rangeMin: 5,
  rangeMax: 100,
  beamAngle: 1,
});

const [BS, NFPA] = GUIDANCES as [Guidance, Guidance];

const figures = (plan: Partial<PairPlan>, guidance?: Guidance) => {
  const all = checkPlan({ ...FULL, ...plan }, guidance);
  return (id: FigureId) => all.find((each) => each.id === id);
};

describe('aiming', () => {
  // Within 15 cm: common practice, no source. The angles are atan(0.15/L), arithmetic.
  it.each([
    [10, 0.859],
    [50, 0.172],
    [100, 0.0859],
  ])('at %d m, aiming within 15 cm means within %d degrees', (pathLength, degrees) => {
    expect(figures({ pathLength })('aiming-tolerance')?.value).toBeCloseTo(degrees, 3);
  });

  it('a beam of one degree is 1.08 m wide at 62 m', () => {
    expect(figures({})('footprint')?.value).toBeCloseTo(2 * 62 * Math.tan(Math.PI / 360), 9);
  });

  it('a quarter of a 0.7 degree turn moves the spot 0.19 m at 62 m', () => {
    expect(figures({})('quarter-turn')?.value).toBeCloseTo(0.189, 3);
  });

  it('a path outside the maker’s range gives a warning', () => {
    expect(figures({})('path-length')?.warns).toBe(false);
    expect(figures({ pathLength: 101 })('path-length')?.warns).toBe(true);
    expect(figures({ pathLength: 4 })('path-length')?.warns).toBe(true);
  });
});

describe('siting', () => {
  // BS 5839-1, from memory: 7.5 m to either side, 25 to 600 mm below the ceiling, 500 mm from obstructions.
  it.each([
    ['reach', { spacing: 15 }, false],
    ['reach', { spacing: 15.1 }, true],
    ['receiver-ceiling', { ceilingHeight: 9.425 }, false],
    ['receiver-ceiling', { ceilingHeight: 9.42 }, true],
    ['receiver-ceiling', { ceilingHeight: 10.0 }, false],
    ['receiver-ceiling', { ceilingHeight: 10.01 }, true],
    // Table of the highest ceilings, from memory: 25 m for beam detectors.
    ['ceiling-height', { ceilingHeight: 25 }, false],
    ['ceiling-height', { ceilingHeight: 25.01 }, true],
    ['wall-distance', { wallDistance: 0.5 }, false],
    ['wall-distance', { wallDistance: 0.4 }, true],
    ['wall-distance', { wallDistance: 7.6 }, true],
  ] as const)('BS 5839-1 style: %s of %j warns: %s', (id, plan, warns) => {
    expect(figures(plan, BS)(id)?.warns).toBe(warns);
  });

  // NFPA 72 annex, from memory: about 18.3 m (60 ft) between beams, half of it to a wall.
  it.each([
    ['reach', { spacing: 18.3 }, false],
    ['reach', { spacing: 18.4 }, true],
    ['wall-distance', { wallDistance: 9.15 }, false],
    ['wall-distance', { wallDistance: 9.2 }, true],
  ] as const)('NFPA 72 style: %s of %j warns: %s', (id, plan, warns) => {
    expect(figures(plan, NFPA)(id)?.warns).toBe(warns);
  });

  it('every limit can be changed, and a limit that is left out is not checked', () => {
    const own = { ...BS, reach: 5 };
    expect(figures({ spacing: 14 }, own)('reach')?.warns).toBe(true);
    const { reach: _, spacing: __, ...without } = own;
    expect(figures({ spacing: 140 }, Guidance.parse(without))('reach')?.warns).toBe(false);
  });

  // Common practice, no source; 25 m as in BS 5839-1, from memory.
  it.each<[FigureId, Partial<PairPlan>, boolean]>([
    ['ceiling-height', { ceilingHeight: 25 }, false],
    ['ceiling-height', { ceilingHeight: 25.01 }, true],
    ['ceiling-height', { ceilingHeight: 60 }, true],
    ['emitter-ceiling', { emitterHeight: 8.9 }, false],
    ['emitter-ceiling', { emitterHeight: 8.89 }, true],
    ['receiver-ceiling', { receiverHeight: 2.9 }, true],
    ['receiver-ceiling', { receiverHeight: 9.875 }, false],
    ['receiver-ceiling', { receiverHeight: 9.876 }, true],
  ])(
    'without guidance, and under one that says nothing of ceilings, %s of %j warns: %s',
    (id, plan, warns) => {
      for (const guidance of [undefined, NFPA]) {
        const figure = figures(plan, guidance)(id);
        expect(figure?.warns).toBe(warns);
        expect(figure?.by).toMatch(/^common practice/);
        expect(figure?.guided).toBeUndefined();
      }
    },
  );

  it('no figure is checked against nought, or against a source without a name', () => {
    for (const guidance of [undefined, { name: 'Our own', source: '', ceilingMost: 0.6 }, ...GUIDANCES]) {
      for (const figure of checkPlan(FULL, guidance)) {
        expect(figure.least ?? 1, figure.id).toBeGreaterThan(0);
        if (figure.least !== undefined || figure.most !== undefined)
          expect(figure.by, figure.id).toMatch(/\S/);
      }
    }
  });

  it('two limits of one figure each name where they are from', () => {
    const own = { name: 'Our own', source: '', ceilingMost: 0.6 };
    expect(figures({}, own)('emitter-ceiling')).toMatchObject({
      by: 'at least: common practice, no source; at most: Our own',
      guided: ['most'],
    });
  });

  it('half of the spacing that a guidance allows limits the reach, where it gives no shorter one', () => {
    const spacing = { name: 'Our own', source: '', spacing: 12 };
    expect(figures({ spacing: 12 }, spacing)('reach')?.warns).toBe(false);
    expect(figures({ spacing: 12.1 }, spacing)('reach')?.warns).toBe(true);
    expect(figures({ spacing: 11 }, { ...spacing, reach: 5 })('reach')?.most).toBe(5);
    expect(figures({ spacing: 14 }, { ...spacing, reach: 9 })('reach')?.most).toBe(6);
  });

  it('a beam above its ceiling gives a warning under any guidance', () => {
    expect(figures({ ceilingHeight: 9 })('receiver-ceiling')?.warns).toBe(true);
  });
});

describe('light', () => {
  it('the threshold is given in percent and in decibels', () => {
    expect(figures({})('alarm-db')?.value).toBeCloseTo(1.871, 3);
    expect(figures({ alarmThreshold: { unit: 'dB', value: 3.0103 } })('alarm-percent')?.value).toBeCloseTo(
      50,
      3,
    );
  });

  // EN 54-12, from memory: the response threshold lies between 0.5 and 6 dB.
  it.each([
    [0.4, true],
    [0.5, false],
    [6, false],
    [6.1, true],
  ])('a threshold of %d dB warns: %s', (value, warns) => {
    expect(figures({ alarmThreshold: { unit: 'dB', value } })('alarm-db')?.warns).toBe(warns);
  });

  it.each<[Partial<PairPlan>, FigureId, boolean]>([
    [{ filterPercent: 95 }, 'filter', false],
    [{ filterPercent: 99 }, 'filter', true],
    [{ filters: [20, 96] }, 'filter', true],
    [{ alarmDelay: 0 }, 'alarm-delay', true],
    [{ alarmDelay: 10 }, 'alarm-delay', false],
    [{ faultDelay: 0 }, 'fault-delay', true],
    [{ faultDelay: 10 }, 'fault-delay', false],
    [{ filters: [20, 43] }, 'cover-loss', false],
    [{ filterPercent: 60, alarmThreshold: { unit: 'percent', value: 60 } }, 'cover-loss', true],
  ])('%j: %s warns: %s', (plan, id, warns) => {
    expect(figures(plan)(id)?.warns).toBe(warns);
  });

  it('a half cover that holds back less than the threshold warns', () => {
    expect(figures({ alarmThreshold: { unit: 'percent', value: 60 } })('cover-loss')?.warns).toBe(true);
    expect(figures({})('cover-loss')?.warns).toBe(false);
  });

  it('a half cover halves a linear reading and takes 3.01 dB off a reading in decibels; with an unknown law nothing is said', () => {
    const half = 10 * Math.log10(2);
    expect(readingBehind(valueReading(140), half, meter('counts'))).toEqual(valueReading(70));
    const db = readingBehind(valueReading(-4), half, meter('dB'));
    expect(db?.kind === 'value' && db.value).toBeCloseTo(-7.0103, 4);
    expect(readingBehind(valueReading(140), half, { ...meter('counts'), law: 'unknown' })).toBeUndefined();
  });

  it('a loss the meter cannot show is no signal', () => {
    expect(readingBehind(valueReading(140), 30, meter('counts'))).toEqual(NO_SIGNAL);
    expect(lossBetween(valueReading(140), NO_SIGNAL, meter('counts'))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('words', () => {
  it('every figure carries its formula, its source and that it is guidance', () => {
    const all = checkPlan({ ...FULL, alarmDelay: 10, faultDelay: 10, filterPercent: 60 }, BS);
    expect(new Set(all.map(({ id }) => id))).toEqual(new Set(FIGURES));
    for (const figure of all) {
      expect(planFigureText(figure)).toMatch(
        /Formula: .+\. Source: .+\. guidance; local code and the maker decide$/,
      );
      expect(planFigureText(figure)).toContain(GUIDANCE_ONLY);
    }
  });

  it('a warning says which limit it was checked against, and whose limit that is', () => {
    const reach = figures({ spacing: 16 }, BS)('reach');
    expect(reach && planFigureText(reach)).toContain('at most 7.5 m (BS 5839-1, from memory)');
  });

  it('tells lengths in feet where the site reads feet, and a loss beside its dB', () => {
    const shown = { length: 'ft', loss: 'percent/ft', path: 62 } as const;
    const plan = {
      ...FULL,
      pathLength: 62,
      spacing: 14,
      rangeMin: 5,
      rangeMax: 100,
      alarmThreshold: { unit: 'percent', value: 35 },
    } as const;
    const text = (id: FigureId, of = plan): string => {
      const figure = checkPlan(of, BS).find((each) => each.id === id);
      return figure ? planFigureText(figure, shown) : '';
    };
    // 62 m = 203.41 ft, 5 m = 16.404 ft, 100 m = 328.08 ft; 7 m = 22.966 ft, 7.5 m = 24.606 ft.
    expect(text('path-length')).toMatch(
      /^path length: 203\.4 ft\. Checked against at least 16\.4 ft, at most 328\.1 ft/,
    );
    expect(text('reach')).toMatch(/22\.97 ft\. Checked against at most 24\.61 ft/);
    expect(text('aiming-tolerance')).toContain('Formula: atan(0.4921 ft / path length). Source: 0.4921 ft:');
    expect(text('alarm-db')).toMatch(
      /: 1\.87 dB \(0\.212 %\/ft\)\. Checked against at least 0\.5 dB, at most 6 dB/,
    );
    // A hand beyond the limit is shown beyond it: 100.01 m = 328.117 ft.
    const over = { ...plan, pathLength: 100.01 };
    expect(text('path-length', over as never)).toMatch(
      /^path length: 328\.12 ft\. Warning: .*at most 328\.08 ft/,
    );
  });

  /** A plan with one figure just beyond its limit, by `d`. A filter of 60 % holds back 10 * log10(100 / 40) dB. */
  const BEYOND: readonly [FigureId, (d: number) => Partial<PairPlan>][] = [
    ['path-length', (d) => ({ pathLength: 100 + d })],
    ['path-length', (d) => ({ pathLength: 5 - d })],
    ['reach', (d) => ({ spacing: 15 + 2 * d })],
    ['wall-distance', (d) => ({ wallDistance: 7.5 + d })],
    ['ceiling-height', (d) => ({ ceilingHeight: 25 + d })],
    ['wall-distance', (d) => ({ wallDistance: 0.5 - d })],
    ['emitter-ceiling', (d) => ({ ceilingHeight: 9.4 + 0.6 + d })],
    ['receiver-ceiling', (d) => ({ ceilingHeight: 9.4 + 0.025 - d })],
    ['alarm-db', (d) => ({ alarmThreshold: { unit: 'dB', value: 6 + d } })],
    ['alarm-db', (d) => ({ alarmThreshold: { unit: 'dB', value: 0.5 - d } })],
    ['alarm-delay', (d) => ({ alarmDelay: 1 - d })],
    ['fault-delay', (d) => ({ faultDelay: 1 - d })],
    ['filter', (d) => ({ filterPercent: 95 + d })],
    [
      'cover-loss',
      (d) => ({
        filterPercent: 60,
        alarmThreshold: { unit: 'dB', value: 10 * Math.log10(100 / 40) - 0.5 + d },
      }),
    ],
  ];

  it.each(BEYOND)('%s is never shown at its own limit while it is beyond it', (id, plan) => {
    for (const d of [0.4, 0.004, 0.0004, 1e-7]) {
      for (const length of ['m', 'ft'] as const) {
        const figure = checkPlan({ ...FULL, ...plan(d) }, BS).find((each) => each.id === id);
        const text = figure ? planFigureText(figure, { length }) : '';
        expect(text).toContain('Warning: ');
        const shown = Number(/: (-?[\d.e-]+) /.exec(text)?.[1]);
        const low = Number(/at least ([\d.e-]+) /.exec(text)?.[1] ?? Number.NEGATIVE_INFINITY);
        const high = Number(/at most ([\d.e-]+) /.exec(text)?.[1] ?? Number.POSITIVE_INFINITY);
        expect(shown < low || shown > high, text).toBe(true);
      }
    }
  });

  it('guidance in feet allows sixty feet between beams and not an inch more', () => {
    const feet = GUIDANCES.find(({ name }) => name === 'NFPA 72 style, in feet');
    const reach = (inches: number) => {
      const figures = checkPlan({ id: 'B2', name: 'B2', spacing: inches * 0.0254 }, feet);
      const figure = figures.find(({ id }) => id === 'reach');
      return figure && planFigureText(figure, { length: 'ft' });
    };
    expect(reach(720)).toMatch(/: 30 ft\. Checked against at most 30 ft /);
    expect(reach(721)).toMatch(/: 30\.04 ft\. Warning: .*at most 30 ft /);
  });

  it('tells no length in metres where the site reads feet', () => {
    const all = checkPlan({ ...FULL, filterPercent: 60 }, BS);
    for (const figure of all) {
      expect(planFigureText(figure, { length: 'ft' })).not.toMatch(/\d (m|cm)\b/);
      expect(planFigureText(figure, { length: 'm' })).not.toMatch(/\d (ft|in)\b/);
    }
  });

  it('what is not known is left out', () => {
    expect(checkPlan({ id: 'X', name: 'X' }).map(({ id }) => id)).toEqual(['cover-loss']);
  });
});
