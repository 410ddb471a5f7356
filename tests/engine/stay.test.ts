import { describe, expect, it } from 'vitest';
import { agree, heard, newStay, settled, type TimedReading } from '../../src/engine/stay.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../../src/model/reading.ts';
import { PERCENT } from './crew-of-two.ts';

const SECOND = 1_000;

/** Readings with the seconds since the hands were off, as the stay they make. */
const stayOf = (readings: readonly (readonly [number, Reading | number])[], meter = PERCENT) =>
  readings
    .map(
      ([after, reading], seq): TimedReading => ({
        seq,
        at: after * SECOND,
        reading: typeof reading === 'number' ? valueReading(reading) : reading,
      }),
    )
    .reduce((stay, reading) => heard(stay, reading, meter), newStay(0));

const settledOn = (...readings: (readonly [number, Reading | number])[]) =>
  settled(stayOf(readings), PERCENT);

describe('two readings agree', () => {
  // Tolerance 1, lost at 2, flooded at 99.
  it.each([
    ['apart by the tolerance', valueReading(50), valueReading(51), true],
    ['apart by more than the tolerance', valueReading(50), valueReading(51.01), false],
    ['apart by more than the tolerance, downwards', valueReading(50), valueReading(48.99), false],
    ['no signal, and a number at the lost end', NO_SIGNAL, valueReading(2), true],
    ['lost numbers, however far apart', valueReading(2), valueReading(-5), true],
    ['a number at the lost end, and one above it', valueReading(2), valueReading(2.5), false],
    ['flooded, and a number at the flooded end', SATURATED, valueReading(99), true],
    ['flooded numbers, however far apart', valueReading(99), valueReading(120), true],
    ['a number below the flooded end, and one at it', valueReading(98.5), valueReading(99), false],
    ['no signal, and flooded', NO_SIGNAL, SATURATED, false],
  ])('or not: %s', (_, a, b, expected) => {
    expect(agree(a, b, PERCENT)).toBe(expected);
    expect(agree(b, a, PERCENT)).toBe(expected);
  });

  it.each([
    [1e-9, true],
    [1.1e-9, false],
  ])('where arithmetic alone adds %f to the tolerance: %s', (excess, expected) => {
    const fromZero: MeterProfile = { ...PERCENT, lostAt: -1 };
    expect(agree(valueReading(0), valueReading(1 + excess), fromZero)).toBe(expected);
  });
});

describe('a stay settles', () => {
  // Settle time 4 s.
  it('on nothing while nothing was read', () => {
    expect(settled(newStay(0), PERCENT)).toBeUndefined();
  });

  it.each([
    ['on no single reading just before the settle time', [[3.999, 50]], undefined],
    ['on a single reading at the settle time', [[4, 50]], 50],
    [
      'on no two that agree, a quarter of the settle time short of a millisecond apart',
      [
        [1, 50],
        [1.999, 50],
      ],
      undefined,
    ],
    [
      'on two that agree, a quarter of the settle time apart',
      [
        [1, 50],
        [2, 50],
      ],
      50,
    ],
    [
      'on no two that do not agree',
      [
        [1, 50],
        [2, 52],
      ],
      undefined,
    ],
    [
      'on the last of early readings, not on their mean',
      [
        [1, 50],
        [2, 51],
      ],
      51,
    ],
    [
      'on the late readings alone, once there is one',
      [
        [1, 50],
        [4, 51],
      ],
      51,
    ],
    [
      'on the mean of the late readings',
      [
        [4, 50],
        [5, 51],
        [6, 50.2],
      ],
      50.4,
    ],
    [
      'on the readings after a break',
      [
        [4, 50],
        [5, 60],
        [6, 61],
      ],
      60.5,
    ],
  ] as const)('%s', (_, readings, value) => {
    expect(settledOn(...readings)?.reading).toEqual(value === undefined ? undefined : valueReading(value));
  });

  it('on no reading from before the hands were off, even without a settle time', () => {
    const meter = { ...PERCENT, settleMs: 0 };
    expect(settled(stayOf([[-1, 50]], meter), meter)).toBeUndefined();
    expect(settled(stayOf([[0, 50]], meter), meter)).toBeDefined();
  });

  it('on the entries that agree, held from the first that counts to the last', () => {
    const stay = settledOn([0, 60], [1, 50], [4, 50], [9, 50]);
    expect(stay).toMatchObject({ seqs: [1, 2, 3], from: 4 * SECOND, to: 9 * SECOND });
    expect(settledOn([1, 50], [2, 50])).toMatchObject({ from: 2 * SECOND, to: 2 * SECOND });
  });

  it('on a surer level the more late readings agree', () => {
    const once = settledOn([4, 50])?.level;
    const four = settledOn([1, 50], [4, 50], [5, 50], [6, 50], [7, 50])?.level;
    if (once?.kind !== 'level' || four?.kind !== 'level') throw new Error('levels were expected');
    expect(four.db).toBe(once.db);
    // Half the noise, and the hundredth of a decibel that no number of readings takes away.
    expect(Math.sqrt(four.sd ** 2 - 0.01 ** 2)).toBeCloseTo(Math.sqrt(once.sd ** 2 - 0.01 ** 2) / 2, 9);
  });

  it.each([
    ['lost', NO_SIGNAL, 'below'],
    ['flooded', SATURATED, 'above'],
  ])('on a signal that stays %s', (_, reading, kind) => {
    expect(settledOn([4, reading], [5, reading])).toMatchObject({ reading, level: { kind }, seqs: [0, 1] });
  });
});

describe('a reading breaks away', () => {
  it.each([
    [
      'from the mean of those before it',
      [
        [4, 50],
        [5, 51],
        [6, 51.6],
      ],
      1,
    ],
    [
      'not while it agrees with their mean',
      [
        [4, 50],
        [5, 51],
        [6, 51.4],
      ],
      0,
    ],
    [
      'not from one before the settle time',
      [
        [3.999, 50],
        [5, 60],
      ],
      0,
    ],
    [
      'from one at the settle time',
      [
        [4, 50],
        [5, 60],
      ],
      1,
    ],
    [
      'each time anew',
      [
        [4, 50],
        [5, 60],
        [6, 50],
        [7, 60],
      ],
      3,
    ],
    [
      'from a lost signal',
      [
        [4, NO_SIGNAL],
        [5, 50],
      ],
      1,
    ],
  ] as const)('%s', (_, readings, breaks) => {
    expect(stayOf(readings).breaks).toBe(breaks);
  });

  it('and a new run begins with it', () => {
    expect(
      stayOf([
        [4, 50],
        [5, 50],
        [6, 60],
      ]).run.map(({ seq }) => seq),
    ).toEqual([2]);
  });
});

it('A stay keeps its oldest reading and the newest fifteen: since when it held, and what it holds', () => {
  const all = Array.from({ length: 20 }, (_, i) => [4 + i, 50] as const);
  const kept = (n: number) => stayOf(all.slice(0, n)).run.map(({ seq }) => seq);
  expect(kept(16)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]);
  expect(kept(17)).toEqual([0, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16]);
  expect(kept(20)).toEqual([0, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19]);
});
