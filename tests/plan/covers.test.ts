import { describe, expect, it } from 'vitest';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { HALF_COVER_DB } from '../../src/plan/attenuation.ts';
import {
  alarmCover,
  alarmLoss,
  filterNeeded,
  looksLost,
  quietCover,
  sideOfLoss,
} from '../../src/plan/covers.ts';
import { COUNTS } from '../conversation/table.ts';

const plan = (threshold: number | undefined, filters?: number[]): Partial<PairPlan> => ({
  ...(threshold !== undefined && { alarmThreshold: { unit: 'dB', value: threshold } }),
  ...(filters && { filters }),
});
/** Obscuration in percent of a loss in dB: the definition of EN 54-12, from memory. */
const percent = (db: number): number => 100 * (1 - 10 ** (-db / 10));

describe('a loss of light that is known to 0.5 dB', () => {
  it.each([
    [2.49, 'between'],
    [2.5, 'above'],
    [1.5, 'below'],
    [1.51, 'between'],
  ] as const)('of %s dB lies %s a threshold of 2 dB', (db, side) => {
    expect(sideOfLoss({ db, tolerance: 0.5 }, 2)).toBe(side);
  });
});

describe('what the alarm test holds back', () => {
  it.each<[string, Partial<PairPlan>, typeof COUNTS | undefined, number, number]>([
    ['a filter clearly above the threshold', plan(1, [50]), undefined, 3.0103, 0.5],
    ['half a cover that the meter can measure', plan(2), COUNTS, HALF_COVER_DB, 0.5],
    ['half a cover that it cannot', plan(1), undefined, HALF_COVER_DB, 1.5],
    ['half a cover on a meter of unknown law', plan(1), { ...COUNTS, law: 'unknown' }, HALF_COVER_DB, 1.5],
    ['the strongest filter, where none is strong enough', plan(6, [20, 60]), undefined, 3.9794, 0.5],
    ['half a cover, where no filter is stronger', plan(6, [20, 40]), undefined, HALF_COVER_DB, 1.5],
    ['half a cover, where there is no filter', plan(6), undefined, HALF_COVER_DB, 1.5],
    [
      'half a cover, where the only stronger filter leaves the meter dark',
      plan(6, [99]),
      COUNTS,
      HALF_COVER_DB,
      0.5,
    ],
    ['half a cover, where the filter is just as strong', plan(6, [50]), undefined, HALF_COVER_DB, 1.5],
  ])('is %s', (_, planned, meter, db, tolerance) => {
    const loss = alarmLoss({ plan: planned, meter });
    expect(loss.db).toBeCloseTo(db, 3);
    expect(loss.tolerance).toBe(tolerance);
  });
});

describe('the covers that a kit gives', () => {
  it('are the weakest that must alarm and the strongest that must not', () => {
    const kit = plan(2, [80, 10, 20, 60]);
    expect(alarmCover({ plan: kit })).toEqual({ how: 'filter', filter: 60 });
    expect(quietCover({ plan: kit })).toEqual({ how: 'filter', filter: 20 });
  });

  it('are none where every filter is too near the threshold, and half a cover too', () => {
    expect(alarmCover({ plan: plan(3, [50]) })).toBeUndefined();
    expect(quietCover({ plan: plan(3, [50]) })).toBeUndefined();
  });

  it('are the strongest filter, or half a cover, where no threshold is known', () => {
    expect(alarmCover({ plan: plan(undefined, [60, 20]) })).toEqual({ how: 'filter', filter: 60 });
    expect(alarmCover({ plan: undefined })).toEqual({ how: 'half' });
    expect(quietCover({ plan: plan(undefined, [10]) })).toBeUndefined();
  });

  it('leave a filter over 95 % for last: it looks like a lost beam', () => {
    // 3.98 dB; behind 95.5 % this meter still shows something, behind 99 % it is dark.
    expect(alarmCover({ plan: plan(3.98, [20, 95, 99]) })).toEqual({ how: 'filter', filter: 95 });
    expect(alarmCover({ plan: plan(1, [10, 96]) })).toEqual({ how: 'half' });
    expect(alarmCover({ plan: plan(3.98, [20, 95.5]), meter: COUNTS })).toEqual({
      how: 'filter',
      filter: 95.5,
    });
    expect(alarmCover({ plan: plan(3.98, [20, 99]), meter: COUNTS })).toBeUndefined();
    expect(alarmCover({ plan: plan(3.98, [20, 99]) })).toEqual({ how: 'filter', filter: 99 });
    expect(quietCover({ plan: plan(15, [80, 96]) })).toEqual({ how: 'filter', filter: 80 });
  });

  it('are the strongest that does not look like a lost beam where no threshold is known', () => {
    expect(alarmCover({ plan: plan(undefined, [60, 99]) })).toEqual({ how: 'filter', filter: 60 });
    expect(alarmCover({ plan: plan(undefined, [99]) })).toEqual({ how: 'filter', filter: 99 });
    expect(alarmCover({ plan: plan(undefined, [99]), meter: COUNTS })).toEqual({ how: 'half' });
  });

  it.each([
    [95, false],
    [95.01, true],
    [99, true],
  ])('a filter of %d %% looks like a lost beam: %s', (filter, looks) => {
    expect(looksLost({ how: 'filter', filter })).toBe(looks);
    expect(looksLost({ how: 'half', filter })).toBe(false);
  });

  it('ask for a filter half a decibel above the threshold, rounded up', () => {
    expect(filterNeeded(2)).toBe(Math.ceil(percent(2.5)));
    expect(filterNeeded(3.979)).toBe(Math.ceil(percent(4.479)));
  });
});
