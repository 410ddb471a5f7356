import { describe, expect, it } from 'vitest';
import { isForetold } from '../../src/engine/surprise.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

const { search } = viewOf();
const gain0 = (value: number, sd = 0) => beamOf({ tops: [[0, { value, sd }]] });

describe('A misread would show', () => {
  // 8.19 dB down the shape of the beam is known to 0.69 dB, 8.33 dB down to 0.71; 0.7 will do.
  it.each([
    ['near the peak', seen(at(3), -4.3), true],
    ['so far down that the shape still tells', seen(at(14, 5), -12), true],
    ['not further down', seen(at(15, 0), -12), false],
    ['not at a gain whose peak is not known', seen(at(3), -4.3, { gain: 1 }), false],
    ['by a flooded reading near the peak', seen(at(3), 'flooded'), true],
  ])('or not: %s', (_, here, expected) => {
    expect(isForetold(gain0(-4), here, search)).toBe(expected);
  });

  it('not while the height is known no better than to 0.7 dB', () => {
    expect(isForetold(gain0(-4, 0.69), seen(at(0), -4), search)).toBe(true);
    expect(isForetold(gain0(-4, 0.7), seen(at(0), -4), search)).toBe(false);
  });

  // Lost at -40 dB; on the peak the shape is known to 0.04 dB.
  it.each([
    [-40.09, 0, true],
    [-40.08, 0, false],
    [-60, 4, true],
    [-60, 4.01, false],
  ])('by no signal where %f dB, known to %f dB, is foretold: %s', (value, sd, expected) => {
    expect(isForetold(gain0(value, sd), seen(at(0), 'dark'), search)).toBe(expected);
  });

  it('not while there is no beam, nor on a meter of unknown law', () => {
    expect(isForetold(undefined, seen(at(0), -4), search)).toBe(false);
    const unknown = { ...search, meter: { ...search.meter, law: 'unknown' as const } };
    expect(isForetold(gain0(-4), seen(at(0), -4), unknown)).toBe(false);
  });
});
