import { describe, expect, it } from 'vitest';
import type { UsedCover } from '../../src/model/checklists.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../../src/model/reading.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { type Covering, coverOf, isReadingOff, isUnread, sideOf } from '../../src/visit/cover.ts';
import { COUNTS } from '../conversation/table.ts';

const setup = (plan: Partial<PairPlan> = {}, meter = COUNTS): JobSetup => ({
  site: 'Quayside Hall 3',
  pair: 'B2',
  meter,
  adjusters: NEUTRAL_ADJUSTERS,
  plan: { id: 'B2', name: 'North aisle', ...plan },
});
const UNKNOWN_LAW = { ...COUNTS, law: 'unknown' as const };

/** The path covered, with what, and what the meter showed behind it; 140 counts before. */
const covering = (
  cover?: UsedCover,
  reading?: Reading,
  state: 'partial' | 'blocked' = 'partial',
): Covering => ({
  clearReading: valueReading(140),
  covered: { type: 'path', state, ...(cover && { cover }), seq: 2, at: 0 },
  ...(reading && { reading: { type: 'reading', reading, seq: 3, at: 1 } }),
});

describe('with what it was covered', () => {
  it.each<[string, Covering, JobSetup, UsedCover | undefined]>([
    ['all of it', covering(undefined, undefined, 'blocked'), setup({ filters: [20] }), { how: 'full' }],
    ['half, as was said', covering({ how: 'half' }), setup({ filters: [20, 40] }), { how: 'half' }],
    ['a named filter', covering({ how: 'filter', filter: 40 }), setup(), { how: 'filter', filter: 40 }],
    ['the only filter', covering({ how: 'filter' }), setup({ filters: [40] }), { how: 'filter', filter: 40 }],
    ['the only filter, unsaid', covering(), setup({ filterPercent: 40 }), { how: 'filter', filter: 40 }],
    ['one of two filters, unsaid', covering({ how: 'filter' }), setup({ filters: [20, 40] }), undefined],
    ['half, where there is no filter', covering(), setup(), { how: 'half' }],
    ['a filter that no plan names', covering({ how: 'filter' }), setup(), { how: 'filter' }],
  ])('%s', (_, one, of, cover) => {
    expect(coverOf(one, of)).toEqual(cover);
  });
});

describe('a reading behind the cover', () => {
  it.each<[string, Covering, JobSetup, boolean]>([
    ['is wanted behind half a cover', covering({ how: 'half' }), setup(), true],
    ['is there already', covering({ how: 'half' }, valueReading(70)), setup(), false],
    ['says nothing on a meter of unknown law', covering({ how: 'half' }), setup({}, UNKNOWN_LAW), false],
    ['is wanted behind a filter', covering({ how: 'filter', filter: 40 }), setup(), true],
    ['is wanted behind a full cover', covering(undefined, undefined, 'blocked'), setup(), true],
    [
      'is wanted where nobody knows the cover',
      covering({ how: 'filter' }),
      setup({ filters: [20, 40] }),
      true,
    ],
  ])('%s', (_, one, of, wanted) => {
    expect(isUnread(one, of)).toBe(wanted);
  });

  // Half the light is 70 counts, 3.01 dB; 1.5 dB more is 49.6, 1.5 dB less 98.9.
  it.each<[string, Covering, JobSetup, boolean]>([
    ['of half the light fits half a cover', covering({ how: 'half' }, valueReading(70)), setup(), false],
    ['1.5 dB off still does', covering({ how: 'half' }, valueReading(50)), setup(), false],
    ['more than that does not', covering({ how: 'half' }, valueReading(49)), setup(), true],
    ['of nothing fits a full cover', covering(undefined, NO_SIGNAL, 'blocked'), setup(), false],
    ['of some light does not', covering(undefined, valueReading(20), 'blocked'), setup(), true],
    ['flooded with light is what no cover leaves', covering({ how: 'half' }, SATURATED), setup(), true],
    [
      'of some light behind a full cover, on a meter of unknown law',
      covering(undefined, valueReading(6), 'blocked'),
      setup({}, UNKNOWN_LAW),
      true,
    ],
    [
      'of half the light behind half a cover says nothing on a meter of unknown law',
      covering({ how: 'half' }, valueReading(7)),
      setup({}, UNKNOWN_LAW),
      false,
    ],
    ['that nobody took is not off', covering({ how: 'half' }), setup(), false],
    [
      'behind an unknown cover is not off',
      covering(undefined, valueReading(20)),
      setup({ filters: [20, 40] }),
      false,
    ],
  ])('%s', (_, one, of, off) => {
    expect(isReadingOff(one, of)).toBe(off);
  });
});

describe('the side of the threshold that a cover is on', () => {
  const at = (db: number, more: Partial<PairPlan> = {}) =>
    setup({ alarmThreshold: { unit: 'dB', value: db }, ...more });

  it.each<[string, Covering, JobSetup, ReturnType<typeof sideOf>]>([
    ['unknown without a threshold', covering({ how: 'half' }), setup(), undefined],
    ['by the half alone: 1.5 dB either way', covering({ how: 'half' }), at(1.6), 'between'],
    ['by the half alone, clearly', covering({ how: 'half' }), at(1.5), 'above'],
    [
      'by what the meter showed: half a decibel',
      covering({ how: 'half' }, valueReading(70)),
      at(2.5),
      'above',
    ],
    ['by what it showed, too near', covering({ how: 'half' }, valueReading(70)), at(2.6), 'between'],
    ['not by a reading that is off', covering({ how: 'half' }, valueReading(20)), at(2.5), 'between'],
    [
      'by a filter’s grade, whatever was read',
      covering({ how: 'filter', filter: 50 }, valueReading(90)),
      at(2.5),
      'above',
    ],
    ['between, where nobody knows the cover', covering(), at(1, { filters: [20, 90] }), 'between'],
    ['between, where nobody knows the filter', covering({ how: 'filter' }), at(1), 'between'],
  ])('%s', (_, one, of, side) => {
    expect(sideOf(one, of)).toBe(side);
  });
});
