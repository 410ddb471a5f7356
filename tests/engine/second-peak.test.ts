import { describe, expect, it } from 'vitest';
import { type Beam, fitShape } from '../../src/engine/beam.ts';
import { hasUnseen, secondPeak, unexplored } from '../../src/engine/explore.ts';
import type { Sample } from '../../src/engine/sample.ts';
import type { View } from '../../src/engine/view.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

/** A beam with light beside it that it cannot have made. */
const beside = (otherLight: readonly Sample[], more: Partial<View> = {}, top = -4): View =>
  viewOf({
    beam: beamOf({ tops: [[0, { value: top, sd: 0 }]], more: { otherLight } }),
    samples: otherLight,
    ...more,
  });

describe('Light where this beam cannot be', () => {
  const light = seen(at(30, 10), -8, { seqs: [7] });

  it('is looked at five eighths further on', () => {
    const here = seen(at(0), -4, { seqs: [9] });
    const view = beside([light], { here });
    expect(unexplored(view)).toEqual({ spot: at(35, 10), seen: light });
    expect(hasUnseen(view)).toBe(true);
    expect(secondPeak(view)?.advice).toMatchObject({
      rule: 'second-peak',
      action: { kind: 'turn', axis: 'horizontal', eighths: 12 },
      because: [7, 9],
    });
  });

  const dark = (horizontal: number, vertical: number) => seen(at(horizontal, vertical), 'dark');
  const around = [dark(35, 10), dark(25, 10), dark(30, 15), dark(30, 5)];
  it.each([
    ['to the other side once it is dark there', around.slice(0, 1), at(25, 10)],
    ['along the other adjuster once it is dark on both sides', around.slice(0, 2), at(30, 15)],
    ['to that one’s other side', around.slice(0, 3), at(30, 5)],
    ['nowhere once it is ringed', around, undefined],
    ['not where it was read three eighths away', [dark(38, 13)], at(25, 10)],
    ['though it was read four eighths away', [dark(39, 10)], at(35, 10)],
    ['though it was read four eighths away on the other adjuster', [dark(35, 14)], at(35, 10)],
  ])('is looked at %s', (_, samples, spot) => {
    const view = beside([light], { samples: [light, ...samples] });
    expect(unexplored(view)?.spot).toEqual(spot);
    expect(hasUnseen(view)).toBe(spot !== undefined);
    expect(secondPeak(view) === undefined).toBe(spot === undefined);
  });

  it.each([
    ['at the end of the screw', { low: -80, high: 35 }, at(35, 10)],
    ['not beyond it', { low: -80, high: 34 }, at(25, 10)],
    ['at the other end of the screw', { low: 25, high: 34 }, at(25, 10)],
    ['not beyond that either', { low: 26, high: 34 }, at(30, 15)],
  ])('is looked at %s', (_, horizontal, spot) => {
    const { search } = viewOf();
    const limited = { ...search, limits: { ...search.limits, horizontal } };
    expect(unexplored(beside([light], { search: limited }))?.spot).toEqual(spot);
  });

  it('is looked at where it is brightest beside the peak at its gain', () => {
    const lights = [
      seen(at(-30), -14),
      seen(at(30), -9),
      seen(at(30, 30), -5, { gain: 1 }),
      seen(at(-30, -30), -12),
    ];
    const tops = [
      [0, { value: -4, sd: 0 }],
      [1, { value: 6, sd: 0 }],
    ] as const;
    const view = (otherLight: readonly Sample[]) =>
      viewOf({ beam: beamOf({ tops, more: { otherLight } }), samples: otherLight });
    expect(unexplored(view(lights))?.seen).toBe(lights[1]);
    expect(unexplored(view(lights.toReversed()))?.seen).toBe(lights[1]);
    // At a gain whose peak is not known, a reading stands for itself.
    const unknown = seen(at(30, 30), -6, { gain: 2 });
    expect(unexplored(view([...lights, unknown]))?.seen).toBe(lights[1]);
    expect(unexplored(view([seen(at(30, 30), -6, { gain: 2 }), ...lights]))?.seen).toBe(lights[1]);
    expect(unexplored(view([...lights, seen(at(30, 30), -4.5, { gain: 2 })]))?.seen.gain).toBe(2);
  });

  it.each([
    ['there is no beam', viewOf()],
    ['the beam explains all', beside([])],
  ])('is not looked for where %s', (_, view) => {
    expect(unexplored(view)).toBeUndefined();
    expect(secondPeak(view)).toBeUndefined();
    expect(hasUnseen(view)).toBe(false);
  });
});

describe('A second peak is left alone', () => {
  const places = [-20, -10, 0, 10, 20];
  const cross = [...places.map((x) => at(30 + x)), ...places.filter((y) => y !== 0).map((y) => at(30, y))];
  /** Read at nine places about its own peak of -10 dB, up and down by so much against an exact beam. */
  const lobe = (scatter = 0, gain = 0) =>
    cross.map((turned, i) => {
      const drop = (3 * ((turned.horizontal - 30) ** 2 + turned.vertical ** 2)) / 16 ** 2;
      return seen(turned, -10 - drop + (i % 2 ? scatter : -scatter), { gain });
    });
  const fitted = (light: readonly Sample[]) => fitShape(light, DECIBELS, at(0), 1) as Beam;
  /** The highest it may be, at two standard deviations. */
  const highest = (light: readonly Sample[]) => {
    const { value, sd } = fitted(light).heights.get(0) ?? { value: Number.NaN, sd: Number.NaN };
    return value + 2 * sd;
  };

  it.each([
    [1.01, true],
    [0.99, false],
  ])('where it is lower by %f dB, of one, for certain: %s', (by, isLeft) => {
    const light = lobe(0.1);
    const view = beside(light, {}, highest(light) + by);
    expect(unexplored(view) === undefined).toBe(isLeft);
  });

  // The misfit may be ten more than there are readings: 19.
  it.each([
    [0.16, 15, 18, true],
    [0.18, 20, 23, false],
  ])(
    'where readings that scatter by %f dB misfit by %i to %i, of 19, as of one beam: %s',
    (scatter, least, most, isLeft) => {
      const light = lobe(scatter);
      const { chi2 } = fitted(light);
      expect(chi2 > least && chi2 < most).toBe(true);
      expect(unexplored(beside(light, {}, 10)) === undefined).toBe(isLeft);
    },
  );

  it('only where it is lower at every gain that it was read at', () => {
    const light = [...lobe(), ...lobe(0, 1)];
    const beam = (tops: readonly number[]) =>
      beamOf({ tops: tops.map((value, gain) => [gain, { value, sd: 0 }]), more: { otherLight: light } });
    const isLeft = (...tops: number[]) =>
      unexplored(viewOf({ beam: beam(tops), samples: light })) === undefined;
    expect(isLeft(0, 0)).toBe(true);
    expect(isLeft(0, -10)).toBe(false);
    expect(isLeft(-10, 0)).toBe(false);
    expect(isLeft(0)).toBe(false);
  });

  it('not while no level of it was read', () => {
    expect(unexplored(beside([seen(at(30), 'flooded')]))?.spot).toEqual(at(35));
  });
});
