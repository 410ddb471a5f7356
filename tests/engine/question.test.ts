import { describe, expect, it } from 'vitest';
import type { Sample, Turn } from '../../src/engine/sample.ts';
import type { Search } from '../../src/engine/search.ts';
import { startSearch } from '../../src/engine/search.ts';
import { openQuestion } from '../../src/engine/surprise.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import { DECIBELS, PERCENT } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

const [, COUNTS, VOLTS] = NEUTRAL_METERS as [MeterProfile, MeterProfile, MeterProfile];

describe('A number that cannot be is asked about', () => {
  const asks = (value: number, meter: MeterProfile, expected: { value: number; sd: number }) => {
    const here = seen(at(0), -4, { reading: valueReading(value), seqs: [6, 7] });
    return openQuestion(startSearch(meter, NEUTRAL_ADJUSTERS), here, { past: beamOf(), expected });
  };
  /** Everything it may be mistaken for, whatever is expected. */
  const anything = { value: -10, sd: 100 };

  // Flooded at 99, 250, 4.9 and -0.5; lost at 2, 5, 0.1 and -40.
  it.each([
    [12, PERCENT, [21, 22]],
    [13, PERCENT, [30, 31, 23, 3]],
    [15, PERCENT, [50, 51, 25, 5]],
    [19, PERCENT, [90, 91, 29, 9]],
    [20, PERCENT, [30, 10]],
    [21, COUNTS, [12, 31, 11, 210]],
    [30, PERCENT, [13, 3, 40, 20]],
    [31, PERCENT, [13, 41, 21, 3.1]],
    [35, PERCENT, [53, 45, 25, 3.5]],
    [40, PERCENT, [14, 4, 50, 30]],
    [90, PERCENT, [19, 9, 80]],
    [89, PERCENT, [98, 79, 8.9]],
    [9, PERCENT, [19, 90]],
    [15.1, PERCENT, [50.1, 51.1, 25.1, 5.1]],
    [115, COUNTS, [150, 125, 105, 11.5]],
    [130, COUNTS, [113, 31, 140, 120, 13]],
    [240, COUNTS, [214, 42, 230, 24]],
    [1.2345, VOLTS, [0.3345]],
    [-15.5, DECIBELS, [-25.5, -5.5, -2]],
  ])('%f, for what sounds or is written like it', (value, meter, options) => {
    expect(asks(value, meter, anything)).toEqual({
      kind: 'which-value',
      about: 7,
      options: [value, ...options],
    });
  });

  // Fifty of a hundred is -3.01 dB, fifty-one -2.92; what was meant lies within 3 x 0.1 + 0.3 dB.
  it.each([
    [-3.6, [15, 50]],
    [-2.42, [15, 50, 51]],
    [-2.4, [15, 51]],
  ])('fifteen, where %f dB is foretold, with what may be meant', (value, options) => {
    expect(asks(15, PERCENT, { value, sd: 0.1 })).toEqual({ kind: 'which-value', about: 7, options });
  });

  // Twenty and two: three times 0.9 and 0.3 are 3 dB.
  it('not with what lies just so far off', () => {
    const expected = { value: -5, sd: 0.9 };
    expect(asks(-20, DECIBELS, expected)?.kind).toBe('is-it-so');
    expect(asks(-20, DECIBELS, { ...expected, value: -4.99 })).toMatchObject({ options: [-20, -2] });
  });

  it('as it is where nothing that sounds like it may be meant', () => {
    const is = { kind: 'is-it-so', about: 7, what: 'reading' };
    expect(asks(15, PERCENT, { value: -3.62, sd: 0.1 })).toEqual(is);
    const here = seen(at(0), 'dark', { reading: NO_SIGNAL, seqs: [7] });
    expect(openQuestion(viewOf().search, here, { past: beamOf(), expected: anything })).toEqual(is);
  });

  it('not where there is no entry to ask about', () => {
    const here = seen(at(0), -4, { seqs: [] });
    expect(openQuestion(viewOf().search, here, { past: beamOf(), expected: anything })).toBeUndefined();
  });
});

describe('Where the reading stands, the turn before it is asked about', () => {
  const beam = beamOf();
  const SIX: Turn = { axis: 'horizontal', eighths: 6 };
  /** Believed at (10, 2), six eighths on from (4, 2). */
  const asks = (
    db: number | 'dark' | 'flooded',
    more: Partial<Search> = {},
    sample: Partial<Sample> = {},
    past = beam,
  ) => {
    const search: Search = {
      ...viewOf().search,
      confirmed: [7],
      touched: 'move',
      lastMove: { seq: 5, turn: SIX },
      ...more,
    };
    const here = seen(at(10, 2), db, { seqs: [6, 7], ...sample });
    return openQuestion(search, here, { past, expected: { value: -8, sd: 0.3 } });
  };
  const options = (...found: Turn[]) => ({ kind: 'which-move', about: 5, options: found });
  const turn = (axis: Turn['axis'], eighths: number): Turn => ({ axis, eighths });
  /** What the beam makes there. */
  const level = (h: number, v: number) => -4 - (3 * (h ** 2 + v ** 2)) / 9 ** 2;

  it.each([
    ['the other way', level(-2, 2), [turn('horizontal', -6)]],
    ['on the other adjuster', level(4, 8), [turn('vertical', 6)]],
    ['on the other adjuster the other way', level(4, -4), [turn('vertical', -6), turn('horizontal', 3)]],
    ['twice as far', level(16, 2), [turn('horizontal', 12)]],
    ['half as far', level(7, 2), [turn('horizontal', 3), turn('vertical', 6)]],
  ])('it was made %s, the likeliest first', (_, db, found) => {
    expect(asks(db)).toEqual(options(...found));
    // With backlash the screws stand elsewhere than the emitter points; they say so where nothing else does.
    expect(asks(db, {}, { turned: at(13, 1) })).toEqual(options(...found));
    expect(asks(db, {}, { pointing: { horizontal: [], vertical: [] } })).toEqual(options(...found));
  });

  it('of the other adjuster as of this', () => {
    const lastMove = { seq: 5, turn: turn('vertical', 6) };
    const here = { turned: at(2, 10), pointing: { horizontal: [2], vertical: [10] } };
    expect(asks(level(2, -2), { lastMove }, here)).toEqual(options(turn('vertical', -6)));
  });

  it('with no more than the two likeliest, and no half of an odd turn', () => {
    const vague = beamOf({ more: { readDownTo: 0 } });
    expect(asks(level(7, 2), {}, {}, vague)).toEqual(options(turn('horizontal', 3), turn('vertical', -6)));
    const lastMove = { seq: 5, turn: turn('horizontal', 5) };
    const from = asks(level(7.5, 2), { lastMove }, {}, vague);
    expect(from).toMatchObject({ options: [{ axis: 'vertical' }, { axis: 'vertical' }] });
  });

  // The other way the beam is known to 0.064 dB: a reading may lie three times that and 0.3 dB off.
  it.each([
    [0.48, [turn('horizontal', -6)]],
    [0.5, undefined],
    [-0.48, [turn('vertical', -6), turn('horizontal', -6)]],
    [-0.5, [turn('vertical', -6)]],
  ])('where it would explain the reading to within so much: %f dB off', (off, found) => {
    expect(asks(level(-2, 2) + off)).toEqual(found && options(...found));
  });

  it('where no signal is what it would explain', () => {
    const lastMove = { seq: 5, turn: turn('horizontal', 24) };
    const here = { turned: at(10), pointing: { horizontal: [10], vertical: [0] } };
    expect(asks('dark', { lastMove }, here)).toEqual(
      options(turn('horizontal', -24), turn('horizontal', 48)),
    );
  });

  it.each([
    ['weaker than the meter shows, where there is no signal', -40.5, 'dark'],
    ['stronger than the meter shows, where it is flooded', 0.5, 'flooded'],
  ] as const)('where it would lead to light that is %s', (_, top, reading) => {
    const past = beamOf({ tops: [[0, { value: top, sd: 0 }]] });
    const lastMove = { seq: 5, turn: turn('horizontal', 5) };
    const here = seen(at(10), reading, { seqs: [7] });
    expect(asks(reading, { lastMove }, here, past)).toMatchObject({ options: { 0: turn('horizontal', -5) } });
  });

  it.each([
    ['it stands, too', { confirmed: [7, 5] }, {}],
    ['the gain was touched since', { touched: 'gain' }, {}],
    ['none was made', { lastMove: undefined }, {}],
    ['the peak at this gain is not known', {}, { gain: 1 }],
    ['none would explain the reading', {}, { level: { kind: 'level', db: 5, sd: 0.04 } }],
  ] as const)('not where %s', (_, more, sample) => {
    expect(asks(level(-2, 2), more, sample)).toBeUndefined();
  });

  it('only once one of the entries of the reading stands', () => {
    expect(asks(level(-2, 2), { confirmed: [6] })?.kind).toBe('which-move');
    expect(asks(level(-2, 2), { confirmed: [8] })?.kind).toBe('is-it-so');
  });
});
