import { describe, expect, it } from 'vitest';
import { evidenceSeqs, isSeenClose, sides } from '../../src/engine/accept.ts';
import type { Beam } from '../../src/engine/beam.ts';
import type { Sample } from '../../src/engine/sample.ts';
import { startSearch } from '../../src/engine/search.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

// A beam that falls to half at 9 eighths: 3 to the side is near its peak. A turn of the hand is 10, and 0.6 of it 6.
const search = startSearch(DECIBELS, { ...NEUTRAL_ADJUSTERS, maxStep: 10 });
const beam = beamOf({ half: at(9, 9) });
const place = { gain: 0, turned: at(0) };
const found = (samples: readonly Sample[], of: { beam?: Beam } = { beam }) => {
  const { below, above } = sides(viewOf({ search, ...of, samples }), place, 'horizontal');
  return { below: below?.turned, above: above?.turned };
};

const centre = seen(at(0), -4);
const low = (horizontal: number, vertical = 0) => seen(at(horizontal, vertical), -6);

describe('The sides of a peak are lower readings', () => {
  it.each([
    ['at 0.6 of a turn of the hand', [low(-6), low(6)], -6, 6],
    ['not nearer than that', [low(-5), low(5)], undefined, undefined],
    ['one without the other', [low(-6), low(5)], -6, undefined],
    ['the other without the one', [low(-5), low(6)], undefined, 6],
    ['the newest on each side', [low(-6), low(6), low(-9), low(9)], -9, 9],
    ['no signal among them', [seen(at(-6), 'dark'), low(6)], -6, 6],
    ['not such as read the same', [seen(at(-6), -4), low(6)], undefined, 6],
    ['not such as were read at another gain', [seen(at(-6), -6, { gain: 1 }), low(6)], undefined, 6],
    ['not such as lie off the line of the middle reading', [low(-6, 1), low(6)], undefined, 6],
  ])('%s', (_, samples, below, above) => {
    expect(found([centre, ...samples])).toEqual({
      below: below === undefined ? undefined : at(below),
      above: above === undefined ? undefined : at(above),
    });
  });

  it.each([
    ['an eighth off is on the peak', seen(at(1), -4), true],
    ['an eighth off to the other side is, too', seen(at(-1), -4), true],
    ['two eighths off is not', seen(at(2), -4), false],
    ['two eighths off to the other side is not either', seen(at(-2), -4), false],
    ['at another gain is not', seen(at(0), -4, { gain: 1 }), false],
    ['flooded says nothing of what is lower', seen(at(0), 'flooded'), false],
  ])('than a middle reading: one that was taken %s', (_, middle, expected) => {
    expect(found([middle, low(-6), low(6)])).toEqual(
      expected ? { below: at(-6), above: at(6) } : { below: undefined, above: undefined },
    );
  });

  it.each([
    [3, true],
    [4, false],
    [-3, true],
    [-4, false],
  ])('on a line %i eighths off the other adjuster’s peak, of 3: %s', (off, expected) => {
    const line = [seen(at(0, off), -4), low(-6, off), low(6, off)];
    expect(found(line)).toEqual(
      expected ? { below: at(-6, off), above: at(6, off) } : { below: undefined, above: undefined },
    );
  });

  it('on the first line that has both, though another line has one', () => {
    const lines = [centre, low(-6), seen(at(0, 2), -4), low(-8, 2), low(8, 2)];
    expect(found(lines)).toEqual({ below: at(-8, 2), above: at(8, 2) });
  });

  it('two eighths away while no beam is known', () => {
    expect(found([centre, low(-2), low(2)], {})).toEqual({ below: at(-2), above: at(2) });
    expect(found([centre, low(-1), low(1)], {})).toEqual({ below: undefined, above: undefined });
  });

  it('of the vertical adjuster as of the horizontal', () => {
    const samples = [centre, seen(at(0, -6), -6), seen(at(0, 6), -6)];
    const { below, above } = sides(viewOf({ search, beam, samples }), place, 'vertical');
    expect([below, above]).toEqual(samples.slice(1));
  });

  it('about the place, wherever it is', () => {
    const samples = [seen(at(20), -4), low(14), low(26)];
    const there = { gain: 0, turned: at(20) };
    expect(sides(viewOf({ search, beam, samples }), there, 'horizontal')).toEqual({
      below: samples[1],
      above: samples[2],
    });
  });
});

describe('A reading next to the peak', () => {
  const close = (sample: Sample, half = 9) =>
    isSeenClose(
      viewOf({ search, beam: beamOf({ half: at(half, 9) }), samples: [sample] }),
      place,
      'horizontal',
    );

  it.each([
    ['one eighth away is on it', low(1), false],
    ['two eighths away is next to it', low(2), true],
    ['two eighths away on the other side is, too', low(-2), true],
    ['where the beam has fallen to half is', low(9), true],
    ['beyond that is not', low(10), false],
    ['at another gain is not', seen(at(3), -5, { gain: 1 }), false],
    ['without a signal is not', seen(at(3), 'dark'), false],
    ['flooded is not', seen(at(3), 'flooded'), false],
    ['3 eighths off the other adjuster’s peak is', low(3, 3), true],
    ['4 eighths off the other adjuster’s peak is not', low(3, 4), false],
  ])('%s', (_, sample, expected) => {
    expect(close(sample)).toBe(expected);
  });

  it('may be two eighths away on a beam however narrow, and no further', () => {
    expect(close(low(2), 1)).toBe(true);
    expect(close(low(3), 1)).toBe(false);
  });

  it('needs no more than one of many, about the place wherever it is', () => {
    const samples = [low(20), low(23), low(40)];
    const there = { gain: 0, turned: at(20) };
    expect(isSeenClose(viewOf({ search, beam, samples }), there, 'horizontal')).toBe(true);
  });

  it('is none while no beam is known', () => {
    expect(isSeenClose(viewOf({ search, samples: [low(3)] }), place, 'horizontal')).toBe(false);
  });
});

it('Acceptance rests on the newest entry of each side and of the place itself, oldest first, each once', () => {
  const of = (sample: Sample, ...seqs: number[]) => ({ ...sample, seqs });
  const here = of(centre, 20, 21);
  const samples = [
    of(low(-6), 5, 6),
    of(low(6), 3),
    of(seen(at(0, -6), -6), 30, 9),
    of(seen(at(0, 6), -6), 6),
    here,
  ];
  expect(evidenceSeqs(viewOf({ search, beam, samples }), here)).toEqual([3, 6, 9, 21]);
  const alone = viewOf({ search, beam, samples: [here] });
  expect(evidenceSeqs(alone, here)).toEqual([21]);
});
