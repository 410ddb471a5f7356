import { describe, expect, it } from 'vitest';
import { flooded, outOfBand, peakOutOfBand } from '../../src/engine/gain.ts';
import { nothingThere } from '../../src/engine/hunt.ts';
import { observe } from '../../src/engine/observe.ts';
import { startSearch } from '../../src/engine/search.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

/** The band is from -6 to -3 dB; heights of the peak at the settings so far, newest last. */
const ruleAt = (heights: number[], meter: Partial<MeterProfile>): string | undefined => {
  const gain = heights.length - 1;
  const last = heights.at(-1) as number;
  const before = heights.at(-2) ?? last;
  const here = seen(at(0), last, { gain });
  const view = viewOf({
    search: {
      ...startSearch({ ...DECIBELS, gain: 'stepped', ...meter }, NEUTRAL_ADJUSTERS),
      gain,
      gainWay: last > before ? 1 : last < before ? -1 : 0,
    },
    here,
    samples: heights.map((db, i) => seen(at(0), db, { gain: i })),
    beam: beamOf({ tops: heights.map((value, i) => [i, { value, sd: 0 }] as const) }),
  });
  const given = peakOutOfBand(view) ?? outOfBand(view);
  return given?.advice.rule;
};

describe('a gain step too coarse for the band', () => {
  it.each<[string, number[], Partial<MeterProfile>, string | undefined]>([
    ['a peak below the band is raised', [-8], {}, 'mid-band'],
    [
      'above it after one step, where a step is that large: it is said',
      [-8, -2],
      { gainDbPerStep: 6 },
      'gain-too-coarse',
    ],
    ['below it after one step down as well', [-2, -8], { gainDbPerStep: 6 }, 'gain-too-coarse'],
    ['more than one and a half steps: a step between was passed', [-8, -2], { gainDbPerStep: 4 }, 'mid-band'],
    ['one and a half steps less a little: it was one', [-8, -2], { gainDbPerStep: 4.01 }, 'gain-too-coarse'],
    ['a step of unknown size is tried once more', [-8, -2], {}, 'mid-band'],
    ['and then said', [-8, -2, -8], {}, 'gain-too-coarse'],
    ['from above as well', [-2, -8, -2], {}, 'gain-too-coarse'],
    ['a step on the same side is only one step', [-12, -8], { gainDbPerStep: 4 }, 'mid-band'],
    ['at the edge of the band it is in it', [-8, -3.4], { gainDbPerStep: 4.6 }, undefined],
    [
      'just below the edge, too, where a step down leaves the band',
      [-8, -3.01],
      { gainDbPerStep: 5 },
      undefined,
    ],
    ['just above the edge it is not', [-8, -2.99], { gainDbPerStep: 5 }, 'gain-too-coarse'],
    [
      'just below the edge, where the step down may stay in it',
      [-8, -3.01],
      { gainDbPerStep: 2 },
      'mid-band',
    ],
    ['a gain that is turned freely is set again', [-8, -2, -8], { gain: 'continuous' }, 'mid-band'],
  ])('%s', (_, heights, meter, rule) => {
    expect(ruleAt(heights, meter)).toBe(rule);
  });
});

describe('a gain that could not be set', () => {
  const started = { ...startSearch(DECIBELS, NEUTRAL_ADJUSTERS) };
  const cannot = (gain: 'lower' | 'raise' | 'full') =>
    ({ type: 'cannot', why: 'unsaid', instruction: 0, order: 'gain', gain }) as const;
  const searched = (...facts: SearchFact[]) =>
    facts.reduce((search, fact, i) => observe(search, { seq: i, at: i, fact }), started);

  // Its meter floods at -0.5 dB and its band is from -6 to -3.
  it.each<[string, 'lower' | 'raise' | 'full', number, string, string]>([
    ['lower, and the peak is above the band', 'lower', -2, 'too-strong', 'gain-stuck'],
    ['raise, and it is below', 'raise', -8, 'too-weak', 'gain-stuck'],
    ['to full, and it is below', 'full', -8, 'too-weak', 'gain-stuck'],
  ])('%s: that is the first cause to look into', (_, gain, db, rule, cause) => {
    const search = searched(cannot(gain));
    const given = outOfBand(viewOf({ search, here: seen(at(0), db) }))?.advice;
    expect(given).toMatchObject({ rule, action: { kind: 'check' } });
    expect(given?.action.kind === 'check' && given.action.causes[0]).toBe(cause);
  });

  it('is still set the other way', () => {
    const given = outOfBand(viewOf({ search: searched(cannot('lower')), here: seen(at(0), -8) }));
    expect(given?.advice).toMatchObject({ rule: 'mid-band', action: { kind: 'gain', change: 'raise' } });
  });

  it('floods the meter no end: the cause is said at once', () => {
    const given = flooded(viewOf({ search: searched(cannot('lower')), here: seen(at(0), 'flooded') }));
    expect(given?.advice.action).toMatchObject({
      kind: 'check',
      causes: expect.arrayContaining(['gain-stuck']),
    });
  });

  it.each<['lower' | 'raise' | 'full', string]>([
    ['lower', 'full-gain-to-find'],
    ['raise', 're-aim'],
    ['full', 're-aim'],
  ])('%s: with no signal the next thing is %s', (gain, rule) => {
    const here = seen(at(0), 'dark');
    const given = nothingThere(viewOf({ search: searched(cannot(gain)), here, samples: [here] }));
    expect(given?.advice.rule).toBe(rule);
  });

  it.each<['lower' | 'raise', SearchFact, -1 | 0 | 1]>([
    ['lower', { type: 'disturbed', why: 'knocked' }, -1],
    ['raise', { type: 'disturbed', why: 'knocked' }, 1],
    ['lower', { type: 'gain', change: 'raised' }, 0],
  ])('%s: after %o it is %i', (gain, fact, stuck) => {
    expect(searched(cannot(gain), fact).gainStuck).toBe(stuck);
  });

  it.each<[string, SearchFact, -1 | 0 | 1]>([
    ['once it is set', { type: 'gain', change: 'lowered' }, 0],
    ['once its cause was looked into', { type: 'checked', instruction: 0 }, 0],
    ['but not by aiming again', { type: 're-aimed' }, 1],
    ['nor by a turn', { type: 'move', axis: 'horizontal', eighths: 4 }, 1],
  ])('is forgotten %s', (_, fact, stuck) => {
    expect(searched(cannot('full'), fact).gainStuck).toBe(stuck);
  });

  it.each<[string, SearchFact, boolean]>([
    ['an order to aim', { type: 'cannot', why: 'unsaid', instruction: 0, order: 're-aim' }, true],
    ['an order to read', { type: 'cannot', why: 'unsaid', instruction: 0, order: 'read' }, false],
    ['an order that an older log does not name', { type: 'cannot', why: 'unsaid', instruction: 0 }, true],
  ])('of %s says whether anybody can aim', (_, fact, unaimed) => {
    expect(searched(fact).unaimed).toBe(unaimed);
  });
});
