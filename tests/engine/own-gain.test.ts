import { describe, expect, it } from 'vitest';
import { flooded, outOfBand, ownGainAtPeak, peakOutOfBand } from '../../src/engine/gain.ts';
import { startSearch } from '../../src/engine/search.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { CAREFUL } from '../../src/simulator/crew.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { runEngine } from '../bench/engine-run.ts';
import { DECIBELS, goodPair } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

const OWN: MeterProfile = { ...DECIBELS, gain: 'automatic' };

/** A reading at the place, at its gain; the band is from -6 to -3 dB. */
const viewAt = (
  db: number | 'flooded',
  { top = -4, gain = 0, gainWay = 0 as -1 | 0 | 1, before = db } = {},
) => {
  const here = seen(at(0), db, { gain });
  const earlier = gain > 0 ? [seen(at(0), before, { gain: gain - 1 })] : [];
  return viewOf({
    search: { ...startSearch(OWN, NEUTRAL_ADJUSTERS), gain, gainWay },
    here,
    samples: [...earlier, here],
    beam: beamOf({ tops: [[gain, { value: top, sd: 0 }]] }),
  });
};

describe('A detector that sets its own gain', () => {
  it.each([
    ['above the band', -2, 'lower'],
    ['below the band', -8, 'raise'],
  ])('is told to set it at a peak %s', (_, db, change) => {
    const given = outOfBand(viewAt(db))?.advice;
    expect(given).toMatchObject({ rule: 'set-own-gain', action: { kind: 'gain', change } });
    expect(given?.action).not.toHaveProperty('toward');
  });

  it('is left alone in the band', () => {
    expect(outOfBand(viewAt(-4))).toBeUndefined();
  });

  it.each([
    ['too weak', -8, 1 as const],
    ['too strong', -2, -1 as const],
  ])('that was told and did not change it: %s, and its own gain is the first cause', (words, db, gainWay) => {
    expect(outOfBand(viewAt(db, { gain: 1, gainWay }))?.advice).toMatchObject({
      rule: words.replace(' ', '-'),
      action: { kind: 'check', causes: expect.arrayContaining(['own-gain']) },
    });
  });

  it('that was told and changed it is told again', () => {
    const view = viewAt(-7, { gain: 1, gainWay: 1, before: -9 });
    expect(outOfBand(view)?.advice.rule).toBe('set-own-gain');
  });

  it.each([
    ['0.5 dB below the peak, at once', -7.5, 'set-own-gain'],
    ['0.6 dB below it, not yet', -7.6, undefined],
  ])('sets it before the peak is proven: %s', (_, db, rule) => {
    expect(ownGainAtPeak(viewAt(db, { top: -7 }))?.advice.rule).toBe(rule);
  });

  it('is never told from a flank: it would set the gain for the light there', () => {
    expect(peakOutOfBand(viewAt(-12, { top: 2 }))).toBeUndefined();
  });

  it('gets time when it is flooded', () => {
    expect(flooded(viewAt('flooded'))?.advice).toMatchObject({ rule: 'own-gain', action: { kind: 'read' } });
  });

  it('is of no concern where the gain is set by hand', () => {
    const view = viewAt(-8, { top: -8 });
    const byHand = { ...view, search: { ...view.search, meter: DECIBELS } };
    expect(ownGainAtPeak(byHand)).toBeUndefined();
    expect(outOfBand(byHand)?.advice.rule).toBe('mid-band');
  });

  it.each([1, 2, 3])('is aligned in its band (seed %i)', (seed) => {
    const outcome = runEngine(goodPair(OWN), CAREFUL, createRng(seed));
    expect(outcome).toMatchObject({ accepted: true });
    expect(outcome.shortfall).toBeLessThan(0.2);
  });
});
