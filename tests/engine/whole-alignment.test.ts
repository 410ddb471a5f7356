import { describe, expect, it } from 'vitest';
import type { MeterProfile } from '../../src/model/profile.ts';
import type { Lobe } from '../../src/simulator/beam.ts';
import { randomPair } from '../../src/simulator/cases.ts';
import { CAREFUL } from '../../src/simulator/crew.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { runEngine } from '../bench/engine-run.ts';
import { DECIBELS, goodPair, PERCENT } from './crew-of-two.ts';

const align = (spec: PairSpec, errors = CAREFUL, seed = 1) => runEngine(spec, errors, createRng(seed));

describe('a whole alignment with a simulated crew', () => {
  it.each([11, 12, 13, 14, 15, 16])('ends at the peak, accepted on its evidence (seed %i)', (seed) => {
    const rng = createRng(seed);
    const outcome = runEngine(randomPair(rng, { sideLobe: 0, reflection: 0 }), CAREFUL, rng);
    expect(outcome.accepted).toBe(true);
    expect(outcome.shortfall).toBeLessThan(0.3);
  });

  it.each([21, 22, 23, 24, 25, 26])(
    'is never accepted off the peak by a crew that errs (seed %i)',
    (seed) => {
      const rng = createRng(seed);
      const outcome = runEngine(randomPair(rng), { misread: 0.05, wrongTurn: 0.05, lateReading: 0.02 }, rng);
      expect(outcome.accepted && (outcome.shortfall > 1 || outcome.onReflection)).toBe(false);
    },
  );

  // Cases that the bench once found accepted on a side lobe: light that was given up, or light that was doubted
  // though it was read twice at its place, or, with a double turn unnoticed, looked for where it was not; or the
  // beam of a side lobe stood in the dark beyond the aim.
  it.each([
    [5_022_348, 0],
    [5_033_956, 0],
    [1_008_691, 0.02],
    [7_404_220, 0.02],
    [7_404_220, 0],
  ])('is not accepted on the lower of two lights (seed %i, %f of errors)', (seed, rate) => {
    const rng = createRng(seed);
    const errors = { misread: rate, wrongTurn: rate, lateReading: 0 };
    const outcome = runEngine(randomPair(rng), errors, rng);
    expect(outcome.accepted).toBe(true);
    expect(outcome.shortfall).toBeLessThan(0.2);
  });

  const meters: [string, MeterProfile][] = [
    ['decibels', DECIBELS],
    ['a gain in steps', { ...PERCENT, gain: 'stepped' }],
    ['an unknown law', { ...PERCENT, law: 'unknown' }],
    ['a gain of its own', { ...PERCENT, gain: 'automatic', bandLow: 15, bandHigh: 97 }],
  ];
  it.each(meters)('ends at the peak on a meter with %s', (_, meter) => {
    const outcome = align(goodPair(meter, { gainStepDb: meter.gain === 'stepped' ? 1.5 : 0 }));
    expect(outcome).toMatchObject({ accepted: true });
    expect(outcome.shortfall).toBeLessThan(0.2);
  });

  it('ends at the peak with a turn and a half of lost motion that the profile knows nothing of', () => {
    const outcome = align(goodPair(DECIBELS, { backlash: { horizontal: 1.5, vertical: 1.5 } }));
    expect(outcome.accepted).toBe(true);
    expect(outcome.shortfall).toBeLessThan(0.2);
  });

  const main = goodPair(PERCENT).lobes[0];
  const aside = (more: Partial<Lobe>): Lobe => ({ ...main, horizontal: 0, vertical: 0, belowDb: 8, ...more });

  it('needs no question and no new start on a flat-topped beam that floods the meter', () => {
    const flat = { ...main, shape: { kind: 'flat-topped' } as const, halfHorizontal: 6, halfVertical: 7 };
    const outcome = align(goodPair(DECIBELS, { lobes: [flat] }));
    expect(outcome).toMatchObject({ accepted: true, questions: 0 });
    expect(outcome.shortfall).toBeLessThan(0.1);
    expect(outcome.turns).toBeLessThan(20);
  });

  it('ends at the peak beside a reflection that brightens several of its far readings', () => {
    const narrow = { ...main, halfHorizontal: 4.3, halfVertical: 4 };
    const shine = aside({
      halfHorizontal: 4.3,
      halfVertical: 4,
      horizontal: 5,
      vertical: -20,
      belowDb: 9,
      reflected: true,
    });
    const outcome = align(goodPair(DECIBELS, { lobes: [narrow, shine], peakDb: 15 }));
    expect(outcome).toMatchObject({ accepted: true, onReflection: false });
    expect(outcome.shortfall).toBeLessThan(0.1);
  });

  it('is not accepted on a reflection the search began on', () => {
    const far = { ...main, horizontal: 30, vertical: 12 };
    const outcome = align(goodPair(PERCENT, { lobes: [far, aside({ reflected: true })] }));
    expect(outcome.onReflection && outcome.accepted).toBe(false);
    expect(outcome.reAims).toBeGreaterThan(0);
  });

  it('leaves a side lobe for the higher peak', () => {
    const narrow = { halfHorizontal: 4, halfVertical: 4 };
    const far = { ...main, ...narrow, horizontal: 12, vertical: 4 };
    const lobe = aside({ halfHorizontal: 2, halfVertical: 2, belowDb: 13 });
    const outcome = align(goodPair(DECIBELS, { lobes: [far, lobe], peakDb: 12 }));
    expect(outcome.accepted).toBe(true);
    expect(outcome.shortfall).toBeLessThan(0.3);
  });
});
