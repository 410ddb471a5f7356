import { describe, expect, it } from 'vitest';
import { higherReading, isKnownLower, lower } from '../../src/engine/compare.ts';
import type { Sample } from '../../src/engine/sample.ts';
import { at, seen } from './given.ts';

/** A level read with a certain noise, dB. */
const noisy = (db: number, sd: number): Sample => seen(at(0), 'dark', { level: { kind: 'level', db, sd } });

describe('A reading is lower than another', () => {
  it.each([
    ['by more than 2.5 standard deviations of both: 0.5 dB', -5.51, 0, true],
    ['not by 0.5 dB itself', -5.5, 0, false],
    ['not where it is higher', -4, 0, false],
    ['by more than is asked for', -5.71, 0.7, true],
    ['not by less than is asked for', -5.69, 0.7, false],
    ['not by what is asked for where the noise is more', -5.49, 0.1, false],
  ])('%s', (_, db, atLeast, expected) => {
    expect(lower(noisy(db, 0.12), noisy(-5, 0.16), atLeast)).toBe(expected);
    expect(lower(noisy(db, 0.16), noisy(-5, 0.12), atLeast)).toBe(expected);
  });

  it('asks for nothing but the noise unless told', () => {
    expect(lower(noisy(-5.51, 0.2), noisy(-5, 0))).toBe(true);
    expect(lower(noisy(-5.5, 0.2), noisy(-5, 0))).toBe(false);
  });

  it.each([
    ['no signal, than a level', seen(at(0), 'dark'), seen(at(0), -30), true],
    ['a level, than none', seen(at(0), -45), seen(at(0), 'dark'), false],
    ['no signal, than none', seen(at(0), 'dark'), seen(at(0), 'dark'), false],
    ['a flooded one, than a level', seen(at(0), 'flooded'), seen(at(0), 10), false],
    [
      'a level, than a flooded one: how high that is nobody knows',
      seen(at(0), -30),
      seen(at(0), 'flooded'),
      false,
    ],
    ['no signal, than a flooded one', seen(at(0), 'dark'), seen(at(0), 'flooded'), false],
  ])('or not: %s', (_, a, than, expected) => {
    expect(lower(a, than)).toBe(expected);
  });
});

describe('A place read higher than here', () => {
  const here = seen(at(0), -5);
  it.each([
    ['by 0.31 dB counts', [seen(at(3), -4.69)], true],
    ['by 0.29 dB may be noise', [seen(at(3), -4.71)], false],
    ['at another gain says nothing', [seen(at(3), -4, { gain: 1 })], false],
    ['and not when it was read again does not count', [seen(at(3), -4), seen(at(3), -5)], false],
    ['only when it was read again counts', [seen(at(3), -5), seen(at(3), -4)], true],
    ['counts among others', [seen(at(2), -5), seen(at(3), -4)], true],
  ])('%s', (_, samples, expected) => {
    expect(higherReading(samples, here)).toBe(expected ? samples.at(-1) : undefined);
  });
});

describe('A place is known to be lower', () => {
  const here = seen(at(0), -5);
  it.each([
    ['where it read lower', [seen(at(3), -5.2)], true],
    ['not where it read the same', [seen(at(3), -5.1)], false],
    ['not where it was read at another gain', [seen(at(3), -9, { gain: 1 })], false],
    ['not where another was read', [seen(at(2), -9)], false],
  ])('%s', (_, samples, expected) => {
    expect(isKnownLower(samples, here, at(3))).toBe(expected);
  });
});
