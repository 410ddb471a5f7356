import { describe, expect, it } from 'vitest';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { PLANTS, type Plant } from '../../src/simulator/plants.ts';
import { playedVisit } from './site.ts';

describe('a simulated visit', () => {
  it('without faults ends signed, and the review finds nothing', () => {
    const entries = playedVisit();
    expect(entries.some(({ fact }) => fact.type === 'signed')).toBe(true);
    expect(new VisitRecord({ entries }).findings).toEqual([]);
  });

  it.each(Object.entries(PLANTS) as unknown as [Plant, string[]][])(
    'with %s planted gives %j and nothing else',
    (plant, ids) => {
      const found = new VisitRecord({ entries: playedVisit([plant]) }).findings;
      expect(found.map(({ id }) => id).sort()).toEqual([...ids].sort());
    },
  );

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
