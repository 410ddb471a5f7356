import { describe, expect, it } from 'vitest';
import { reviewSite } from '../../src/findings/across-visits.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { siteFindingText } from '../../src/phrases/findings.ts';
import { MATTERS } from '../../src/plan/changes.ts';
import { COUNTS } from '../conversation/table.ts';
import { pairVisits } from './pair-outcome.ts';
import { playedVisit, SETUP } from './site.ts';

const PLAN: PairPlan = {
  id: 'B2',
  name: 'North aisle',
  zone: '3',
  pathLength: 62,
  emitterHeight: 9,
  receiverHeight: 9,
  ceilingHeight: 9.5,
  spacing: 12,
  wallDistance: 6,
  alarmThreshold: { unit: 'percent', value: 35 },
  alarmDelay: 10,
  faultDelay: 10,
  filterPercent: 60,
  rangeMin: 8,
  rangeMax: 100,
  beamAngle: 0.7,
};
const OTHER_METER = NEUTRAL_METERS.find(({ name }) => name !== COUNTS.name);
const entries = playedVisit([], 1, { ...SETUP, plan: PLAN });
const open = entries.slice(0, 20);

/** What the site finds when the pair of that visit is planned so now. */
const found = (now: PairPlan, visits = [entries]) =>
  reviewSite([
    pairVisits(
      'B2',
      62,
      visits.map((each, i) => ({ job: `visit-${i}`, entries: each })),
      now,
    ),
  ]);

/** Each field with another value, and how the change is told; undefined where it does not matter. */
const CHANGES: Record<Exclude<keyof PairPlan, 'id'>, [Partial<PairPlan>, told: string | undefined]> = {
  name: [{ name: 'Renamed' }, undefined],
  zone: [{ zone: '4' }, 'zone: 3 → 4'],
  pathLength: [{ pathLength: 62.0004 }, 'path: 62 m → 62.0004 m'],
  emitterHeight: [{ emitterHeight: 8.9 }, 'emitter height: 9 m → 8.9 m'],
  receiverHeight: [{ receiverHeight: 8.9 }, 'receiver height: 9 m → 8.9 m'],
  ceilingHeight: [{ ceilingHeight: 60 }, 'ceiling height: 9.5 m → 60 m'],
  spacing: [{ spacing: 15 }, 'spacing: 12 m → 15 m'],
  wallDistance: [{ wallDistance: 7 }, 'wall distance: 6 m → 7 m'],
  meter: [{ meter: OTHER_METER }, `meter: ${COUNTS.name} → ${OTHER_METER?.name}`],
  adjusters: [
    { adjusters: { ...NEUTRAL_ADJUSTERS, name: 'Fine screws' } },
    `adjusters: ${NEUTRAL_ADJUSTERS.name} → Fine screws`,
  ],
  alarmThreshold: [{ alarmThreshold: { unit: 'percent', value: 50 } }, 'alarm threshold: 35 % → 50 %'],
  alarmDelay: [{ alarmDelay: 30 }, 'alarm delay: 10 s → 30 s'],
  faultDelay: [{ faultDelay: undefined }, 'fault delay: 10 s → not stated'],
  filterPercent: [{ filterPercent: 50 }, 'test filters: 60 % → 50 %'],
  filters: [{ filters: [20, 60] }, 'test filters: 60 % → 20, 60 %'],
  rangeMin: [{ rangeMin: 10 }, 'shortest path allowed: 8 m → 10 m'],
  rangeMax: [{ rangeMax: 60 }, 'longest path allowed: 100 m → 60 m'],
  beamAngle: [{ beamAngle: 1 }, 'beam angle: 0.7 degrees → 1 degrees'],
  leastSignal: [{ leastSignal: 1 }, undefined],
  mostLoss: [{ mostLoss: 3 }, undefined],
};

describe('a plan that was changed after the pair was signed', () => {
  it.each(Object.entries(CHANGES))('%s', (_, [change, told]) => {
    const findings = found({ ...PLAN, ...change } as PairPlan);
    expect(findings.map(({ id, severity }) => [id, severity])).toEqual(
      told === undefined ? [] : [['plan-changed', 'serious']],
    );
    const [finding] = findings;
    if (finding) {
      expect(siteFindingText(finding)).toBe(
        `The plan of pair B2 was changed after it was signed: ${told}. It must be proven anew.`,
      );
    }
  });

  it('has a case for every field of a plan', () => {
    expect(Object.keys(CHANGES).sort()).toEqual(Object.keys(MATTERS).sort());
  });

  it('is no finding while it is as it was, or is planned so again', () => {
    expect(found(PLAN)).toEqual([]);
    expect(found({ ...PLAN, filters: [60] })).toEqual([]);
    expect(found({ ...PLAN, meter: COUNTS, adjusters: NEUTRAL_ADJUSTERS })).toEqual([]);
  });

  it('is told with every field that changed, in the units of the site', () => {
    const [finding] = found({ ...PLAN, zone: '4', pathLength: 60.96 });
    expect(finding && siteFindingText(finding, { length: 'ft' })).toContain('zone: 3 → 4; path: 203.4');
    expect(finding && siteFindingText(finding, { length: 'ft' })).toContain('ft → 200 ft');
  });

  it('tells of other figures under the same name of a meter', () => {
    const [finding] = found({ ...PLAN, meter: { ...COUNTS, tolerance: COUNTS.tolerance + 1 } });
    expect(finding && siteFindingText(finding)).toContain(`other figures of meter: ${COUNTS.name}`);
  });

  it('asks for a new visit where the visit is not signed yet', () => {
    const [finding, ...more] = found({ ...PLAN, alarmDelay: 30 }, [open]);
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ id: 'plan-changed', severity: 'question' });
    expect(finding && siteFindingText(finding)).toBe(
      'The plan of pair B2 was changed after its visit began: alarm delay: 10 s → 30 s. The visit goes by the old plan. Begin a new visit.',
    );
  });

  it('is settled by a visit under the new plan, and by no earlier one', () => {
    const now = { ...PLAN, alarmDelay: 30 };
    const anew = playedVisit([], 2, { ...SETUP, plan: now });
    expect(found(now, [entries, anew])).toEqual([]);
    expect(found(now, [anew, entries]).map(({ id }) => id)).toEqual(['plan-changed']);
  });
});
