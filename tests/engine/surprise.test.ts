import { describe, expect, it } from 'vitest';
import { type Beam, fitShape } from '../../src/engine/beam.ts';
import type { PerAxis, Sample } from '../../src/engine/sample.ts';
import { surprise } from '../../src/engine/surprise.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

const { search } = viewOf();
const known = (value: number, sd = 0, more: Partial<Beam> = {}) =>
  beamOf({ tops: [[0, { value, sd }]], more });

/** Two readings that no beam of any shape explains: none is an alibi for another. */
const before = [seen(at(5), -5), seen(at(5), -25)];
const at0 = (db: number, sd: number): Sample => seen(at(0), -4, { level: { kind: 'level', db, sd } });
const isSurprise = (beam: Beam, here: Sample, of = search, earlier: readonly Sample[] = before) =>
  surprise(beam, earlier, here, of) !== undefined;

describe('A reading is a surprise', () => {
  it('that lies 0.35 dB off, however well all is known', () => {
    expect(isSurprise(known(0), at0(-0.351, 0.01))).toBe(true);
    expect(isSurprise(known(0), at0(0.351, 0.01))).toBe(true);
    expect(isSurprise(known(0), at0(-0.35, 0.01))).toBe(false);
    expect(isSurprise(known(0), at0(0.35, 0.01))).toBe(false);
  });

  // A height known to 0.03 dB, a shape to 0.04 on the peak, a noise of 0.12: 0.13 dB in all.
  it.each([
    ['4.5 standard deviations', 0, 0.584, 0.586],
    ['half as much again after a new start', 1, 0.877, 0.878],
    ['twice as much after a second', 2, 1.169, 1.171],
  ])('that lies off by %s', (_, restarts, within, beyond) => {
    const after = { ...search, restarts };
    for (const way of [-1, 1]) {
      expect(isSurprise(known(-4, 0.03), at0(-4 + way * within, 0.12), after)).toBe(false);
      expect(isSurprise(known(-4, 0.03), at0(-4 + way * beyond, 0.12), after)).toBe(true);
    }
  });

  // The noise of what the meter cannot show is taken for 0.3 dB: 1.369 dB with the 0.05 of the beam.
  it.each([
    ['no signal, where light just above the lost end is foretold', 'dark', -38.64, false],
    ['no signal, where light well above the lost end is foretold', 'dark', -38.63, true],
    ['no signal, where still less is foretold', 'dark', -50, false],
    ['flooded, where light just below the flooded end is foretold', 'flooded', -1.86, false],
    ['flooded, where light well below the flooded end is foretold', 'flooded', -1.87, true],
    ['flooded, where still more is foretold', 'flooded', 10, false],
  ] as const)('or not: %s', (_, reading, foretold, expected) => {
    expect(isSurprise(known(foretold, 0.03), seen(at(0), reading))).toBe(expected);
  });

  it.each([
    ['where the prediction is known to 4 dB', 4, 0, true],
    ['not where it is vaguer', 4.01, 0, false],
    ['not at a gain whose peak is not known', 0, 1, false],
  ])('%s', (_, sd, gain, expected) => {
    expect(isSurprise(known(-4, sd), seen(at(0), -35, { gain }))).toBe(expected);
  });

  it('with what was expected: how far down the beam, the less its shape is known', () => {
    const beam = known(-4, 0.03, { readDownTo: 6 });
    const expected = (turned: PerAxis<number>) =>
      surprise(beam, before, seen(turned, -0.6), search)?.expected;
    expect(expected(at(9))?.value).toBeCloseTo(-7, 9);
    expect(expected(at(9))?.sd).toBeCloseTo(Math.hypot(0.03, 0.04 + 0.08 * 3), 9);
    const deep = surprise(beam, before, seen(at(18), 20), search);
    expect(deep?.past).toBe(beam);
    expect(deep?.expected.value).toBeCloseTo(-16, 9);
    expect(deep?.expected.sd).toBeCloseTo(Math.hypot(0.03, 0.04 + 0.08 * 6 + 0.5 * 6), 9);
  });

  it('only beside two readings of the beam itself, on a meter whose law is known', () => {
    const here = seen(at(0), -10);
    const [one, two] = before as [Sample, Sample];
    expect(isSurprise(known(-4), here, search, [one, two])).toBe(true);
    expect(isSurprise(known(-4), here, search, [two])).toBe(false);
    expect(isSurprise(known(-4, 0, { otherLight: [two] }), here, search, [one, two])).toBe(false);
    const unknown = { ...search, meter: { ...search.meter, law: 'unknown' as const } };
    expect(isSurprise(known(-4), here, unknown)).toBe(false);
  });

  it('beside two that show nothing, too', () => {
    const dark = [seen(at(30), 'dark'), seen(at(-30), 'dark')];
    expect(isSurprise(known(-4), seen(at(0), -10), search, dark)).toBe(true);
    expect(isSurprise(known(-4), seen(at(0), -10), search, dark.slice(1))).toBe(false);
  });
});

describe('A beam of the other shape is an alibi', () => {
  const places = [-15, -12, -9, -6, -3, 0, 3, 6, 9, 12, 15];
  const cross = [...places.map((x) => at(x)), ...places.filter((y) => y !== 0).map((y) => at(0, y))];
  const parabola = ({ horizontal, vertical }: PerAxis<number>) =>
    (3 * (horizontal ** 2 + vertical ** 2)) / 9 ** 2;
  /** Both peak at -4 dB and fall to half at 9 eighths; 13 eighths off they lie 7 dB apart. */
  const levels = {
    Gaussian: (turned: PerAxis<number>) => -4 - parabola(turned),
    'flat-topped': (turned: PerAxis<number>) => -4 - parabola(turned) ** 2 / 3,
  } as const;
  const SHAPES = { Gaussian: 1, 'flat-topped': 2 } as const;

  /** Readings of a beam that is taken for one of the other shape. */
  const mistaken = (is: keyof typeof SHAPES, by = 0, otherLight: readonly Sample[] = []) => {
    const readings = cross.map((turned) => seen(turned, levels[is](turned)));
    const chi2 = fitShape(readings, DECIBELS, at(0), SHAPES[is])?.chi2 ?? Number.NaN;
    const beam = known(-4, 0, { shape: is === 'Gaussian' ? 2 : 1, chi2: chi2 - by, otherLight });
    return { beam, readings, here: seen(at(13), levels[is](at(13))) };
  };

  it.each([
    ['Gaussian', 24.9, false],
    ['Gaussian', 25.1, true],
    ['flat-topped', 24.9, false],
    ['flat-topped', 25.1, true],
  ] as const)(
    'a %s one that explains those before it worse by %f, of 25: a surprise is %s',
    (is, by, expected) => {
      const { beam, readings, here } = mistaken(is, by);
      expect(isSurprise(beam, here, search, readings)).toBe(expected);
    },
  );

  it.each(['Gaussian', 'flat-topped'] as const)('a %s one, not where it is contradicted as well', (is) => {
    const { beam, readings, here } = mistaken(is);
    const neither = seen(here.turned, here.level.db + 15);
    expect(surprise(beam, readings, neither, search)?.past).toBe(beam);
  });

  it('without the light from elsewhere', () => {
    const light = [seen(at(-30), -8), seen(at(-35), -9)];
    const apart = mistaken('flat-topped', 0, light);
    expect(isSurprise(apart.beam, apart.here, search, [...apart.readings, ...light])).toBe(false);
    const mixed = mistaken('flat-topped');
    expect(isSurprise(mixed.beam, mixed.here, search, [...mixed.readings, ...light])).toBe(true);
  });
});

describe('Back at a place next to the peak', () => {
  // 0.96 dB down; twice 0.04 dB of noise are less than 0.3.
  const place = at(5, 1);
  const first = seen(place, -5);
  const told = (here: Sample, earlier: readonly Sample[] = [first]) =>
    surprise(known(-4), [...before, ...earlier], here, search);

  it('the reading seen there should come back: 0.3 dB less is a surprise', () => {
    expect(told(seen(place, -5.31))).toMatchObject({ expected: { value: -5, sd: 0.04 } });
    expect(told(seen(place, -5.29))).toBeUndefined();
  });

  it('0.3 dB less itself is none', () => {
    const earlier = [...before, seen(place, 0.3)];
    expect(surprise(known(1.3), earlier, seen(place, 0), search)).toBeUndefined();
    expect(surprise(known(1.3), earlier, seen(place, -0.001), search)).toBeDefined();
  });

  const noisy = (db: number) => seen(place, db, { level: { kind: 'level', db, sd: 0.1 } });
  it.each([
    ['more is none', seen(place, -4.6), [first], false],
    ['three standard deviations of both less is one', noisy(-5.43), [noisy(-5)], true],
    ['not quite three standard deviations less is none', noisy(-5.42), [noisy(-5)], false],
    ['the newest reading there is what counts', seen(place, -5.31), [seen(place, -4.7), first], true],
    [
      'the newest reading there is what counts, if lower',
      seen(place, -5.31),
      [first, seen(place, -5.2)],
      false,
    ],
    ['another place says nothing', seen(place, -5.31), [seen(at(5), -5)], false],
    ['another gain says nothing', seen(place, -5.31), [seen(place, -5, { gain: 1 })], false],
    ['no signal says nothing', seen(place, -5.31), [seen(place, 'dark')], false],
    ['more than 1 dB down backlash may explain it', seen(at(5, 2), -5.5), [seen(at(5, 2), -5)], false],
  ])('or not: %s', (_, here, earlier, expected) => {
    expect(told(here, earlier) !== undefined).toBe(expected);
  });
});
