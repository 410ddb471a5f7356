import { describe, expect, it } from 'vitest';
import { outOfBand, peakOutOfBand } from '../../src/engine/gain.ts';
import { startSearch } from '../../src/engine/search.ts';
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
