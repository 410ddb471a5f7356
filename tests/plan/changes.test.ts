import { describe, expect, it } from 'vitest';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { changedFields, MATTERS, planSince } from '../../src/plan/changes.ts';
import { COUNTS } from '../conversation/table.ts';
import { SETUP } from '../visit/record.ts';

const PLAN: Required<PairPlan> = {
  id: 'B2',
  name: 'North aisle',
  zone: '3',
  pathLength: 62,
  emitterHeight: 9,
  receiverHeight: 9,
  ceilingHeight: 9.5,
  spacing: 12,
  wallDistance: 6,
  meter: COUNTS,
  adjusters: NEUTRAL_ADJUSTERS,
  alarmThreshold: { unit: 'percent', value: 35 },
  alarmDelay: 10,
  faultDelay: 10,
  filterPercent: 60,
  filters: [20, 60],
  rangeMin: 8,
  rangeMax: 100,
  beamAngle: 0.7,
  leastSignal: 100,
  mostLoss: 3,
};

describe('what of a plan has changed', () => {
  it('is each field that matters, and no other', () => {
    for (const [field, matters] of Object.entries(MATTERS)) {
      const { [field as keyof PairPlan]: _, ...without } = PLAN;
      const fields = changedFields({ from: PLAN, to: without as PairPlan });
      expect(fields, field).toEqual(matters ? [field] : []);
      expect(changedFields({ from: without as PairPlan, to: PLAN }), field).toEqual(fields);
    }
    expect(changedFields({ from: PLAN, to: { ...PLAN, id: 'B3' } })).toEqual([]);
  });

  it('is none where one filter is planned as a kit of one', () => {
    const { filters: _, ...one } = PLAN;
    expect(changedFields({ from: one, to: { ...one, filters: [60] } })).toEqual([]);
    expect(changedFields({ from: one, to: { ...one, filters: [50] } })).toEqual(['filters']);
  });

  it('counts the profiles that stood in where the plan named none, and is nothing without a plan', () => {
    const { meter: _, adjusters: __, ...bare } = PLAN;
    const setup = { ...SETUP, plan: bare };
    expect(planSince(setup, bare)).toBeUndefined();
    expect(planSince(setup, PLAN)).toBeUndefined();
    expect(planSince({ ...SETUP, plan: PLAN }, bare)).toBeDefined();
    const { plan: ___, ...alone } = SETUP;
    expect(planSince(alone, PLAN)).toBeUndefined();
    expect(planSince(setup, { ...bare, zone: '4' })).toEqual({
      from: { ...bare, meter: COUNTS, adjusters: NEUTRAL_ADJUSTERS },
      to: { ...bare, zone: '4', meter: COUNTS, adjusters: NEUTRAL_ADJUSTERS },
    });
  });

  const METERED = { ...SETUP, plan: { ...PLAN, meter: COUNTS } };
  const ADJUSTED = { ...SETUP, adjusters: { ...NEUTRAL_ADJUSTERS, degreesPerTurn: 0.7 }, plan: PLAN };
  const described = (setup: JobSetup, now: Partial<PairPlan>) =>
    planSince(setup, { ...(setup.plan as PairPlan), ...now }) !== undefined;

  it.each<[string, JobSetup, Partial<PairPlan>, boolean]>([
    ['the decibels of a gain step are filled in', METERED, { meter: { ...COUNTS, gainDbPerStep: 1 } }, false],
    [
      'they are left out again',
      { ...METERED, meter: { ...COUNTS, gainDbPerStep: 1 } },
      { meter: COUNTS },
      false,
    ],
    [
      'another figure of them',
      { ...METERED, meter: { ...COUNTS, gainDbPerStep: 1 } },
      { meter: { ...COUNTS, gainDbPerStep: 1.5 } },
      true,
    ],
    [
      'they are filled in, and the band is another',
      METERED,
      { meter: { ...COUNTS, gainDbPerStep: 1, bandLow: COUNTS.bandLow + 1 } },
      true,
    ],
    ['the pitch of the adjusters is left out', ADJUSTED, { adjusters: NEUTRAL_ADJUSTERS }, false],
    [
      'another pitch of the adjusters',
      ADJUSTED,
      { adjusters: { ...NEUTRAL_ADJUSTERS, degreesPerTurn: 0.8 } },
      true,
    ],
  ])('a profile that says more of the same thing proves nothing less: %s', (_, setup, now, changed) => {
    expect(described(setup, now)).toBe(changed);
  });
});
