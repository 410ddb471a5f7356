import { describe, expect, it } from 'vitest';
import { VisitRecord } from '../../src/record/visit-record.ts';
import type { Plant } from '../../src/simulator/plants.ts';
import { progressOf } from '../../src/visit/progress.ts';
import { retestsOf } from '../../src/visit/retests.ts';
import { playedVisit } from '../findings/site.ts';

/** The retests of a visit as far as the entry `until`, or whole. */
function retests(plants: readonly Plant[], until = Number.POSITIVE_INFINITY) {
  const entries = playedVisit(plants).filter(({ seq }) => seq <= until);
  const visit = new VisitRecord({ entries }).visit;
  if (!visit) throw new Error('the visit opened no job');
  return retestsOf(visit.commission, progressOf(visit.commission, visit.until));
}

describe('a test that failed', () => {
  it('passed later when its last attempt did', () => {
    const [made, ...more] = retests(['late-alarm']);
    expect(more).toEqual([]);
    expect(made?.test).toBe('alarm');
    expect(made?.passed).toBeGreaterThan(made?.failed ?? 0);
  });

  it('did not pass later before the last attempt is over', () => {
    const [made] = retests(['late-alarm']);
    expect(retests(['late-alarm'], (made?.passed ?? 0) - 1)).toEqual([]);
    expect(retests(['late-alarm'], made?.passed)).toEqual([]);
  });

  it('did not pass later in a way that counts when the pair was turned since', () => {
    expect(retests(['late-alarm', 'touched-since'])).toEqual([]);
  });

  it('did not pass later when someone only answered for it', () => {
    expect(retests(['excused'])).toEqual([]);
  });

  it('is none where all passed at once', () => {
    expect(retests([])).toEqual([]);
  });
});
