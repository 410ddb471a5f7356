import { describe, expect, it } from 'vitest';
import type { JobSetup } from '../../src/model/setup.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { PLANTS, type Plant } from '../../src/simulator/plants.ts';
import { cleanVisit } from './clean-visit.ts';
import { playedVisit, SETUP } from './site.ts';

describe('a simulated visit', () => {
  it('without faults ends signed, and the review finds nothing', () => {
    const entries = playedVisit();
    expect(entries.some(({ fact }) => fact.type === 'signed')).toBe(true);
    expect(new VisitRecord({ entries }).findings).toEqual([]);
  });

  /** Thresholds in dB, with what the crew owns: filters on both sides, on one, or none where half a cover will do. */
  it.each([
    [0.98, [10, 40]],
    [1.87, [20, 60]],
    [1.87, []],
    [2.5, []],
    [3.01, [50, 60]],
    [3.98, [50, 70]],
    [6, [60, 80]],
  ])('at %d dB with the filters %j has no findings either', (value, filters) => {
    const plan = {
      ...SETUP.plan,
      id: 'B2',
      name: 'North aisle',
      alarmThreshold: { unit: 'dB', value },
      filters,
    };
    const entries = playedVisit([], 1, { ...SETUP, plan } as JobSetup);
    expect(entries.some(({ fact }) => fact.type === 'signed')).toBe(true);
    expect(new VisitRecord({ entries }).findings).toEqual([]);
  });

  it.each(Array.from({ length: 20 }, (_, i) => i + 1))(
    'at random, seed %i, has no findings either',
    (seed) => {
      const entries = cleanVisit(seed);
      expect(entries.some(({ fact }) => fact.type === 'signed')).toBe(true);
      expect(new VisitRecord({ entries }).findings).toEqual([]);
    },
  );

  it.each(Object.entries(PLANTS) as unknown as [Plant, string[]][])(
    'with %s planted gives %j and nothing else',
    (plant, ids) => {
      const found = new VisitRecord({ entries: playedVisit([plant]) }).findings;
      expect(found.map(({ id }) => id).sort()).toEqual([...ids].sort());
    },
  );

  it('with two signatures has no findings either, while nothing is touched', () => {
    const entries = playedVisit(['touched-since-both']);
    const second = entries.findLastIndex(({ fact }) => fact.type === 'signed');
    const { findings, state } = new VisitRecord({ entries: entries.slice(0, second + 1) });
    expect(findings).toEqual([]);
    expect([state.signed?.name, ...state.beside.map(({ name }) => name)]).toEqual([
      'S. Example',
      'W. Example',
    ]);
  });

  it('every finding points at entries of the log, oldest first', () => {
    const entries = playedVisit(['misread', 'takeover', 'hasty', 'drift', 'late-alarm']);
    const found = new VisitRecord({ entries }).findings;
    expect(found).not.toEqual([]);
    for (const { entries: seqs } of found) {
      expect(seqs.length).toBeGreaterThan(0);
      expect([...seqs].sort((a, b) => a - b)).toEqual(seqs);
      for (const seq of seqs) expect(entries[seq]).toBeDefined();
    }
  });
});
