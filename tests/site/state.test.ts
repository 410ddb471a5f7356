import { describe, expect, it } from 'vitest';
import { Fact } from '../../src/model/facts.ts';
import { EMPTY_SITE, foldSite, livePairs } from '../../src/site/state.ts';

const siteOf = (...facts: Fact[]) =>
  facts.reduce((state, fact, seq) => foldSite(state, { seq, at: 1_000 + seq, fact }), EMPTY_SITE);

const opened: Fact = { type: 'site-opened', site: 'Quayside Hall 3', logVersion: 1 };
const planned = (id: string, pathLength?: number): Fact => ({
  type: 'pair-planned',
  pair: { id, name: `Pair ${id}`, ...(pathLength !== undefined && { pathLength }) },
});

describe('a site', () => {
  it('has the pairs in the order in which they were planned', () => {
    const site = siteOf(opened, planned('B2'), planned('B1'));
    expect(site.site).toBe('Quayside Hall 3');
    expect(livePairs(site).map(({ plan }) => plan.id)).toEqual(['B2', 'B1']);
    expect(site.count).toBe(3);
  });

  it('a pair that is planned again keeps its place and its visits', () => {
    const visit: Fact = { type: 'job-begun', pair: 'B2', job: 'job-of-b2' };
    const site = siteOf(opened, planned('B2', 62), planned('B1'), visit, planned('B2', 64));
    expect(livePairs(site)[0]).toMatchObject({
      plan: { pathLength: 64 },
      visits: [{ job: 'job-of-b2', seq: 3 }],
    });
  });

  it('a pair that is dropped leaves the board with its reason, and its visits stay', () => {
    const dropped: Fact = { type: 'pair-dropped', pair: 'B2', reason: 'Wall moved' };
    const site = siteOf(opened, planned('B2'), { type: 'job-begun', pair: 'B2', job: 'job-of-b2' }, dropped);
    expect(livePairs(site)).toEqual([]);
    expect(site.pairs.get('B2')).toMatchObject({
      dropped: { reason: 'Wall moved' },
      visits: [{ job: 'job-of-b2' }],
    });
  });

  it('a dropped pair that is planned again is back', () => {
    const dropped: Fact = { type: 'pair-dropped', pair: 'B2', reason: 'Wall moved' };
    expect(livePairs(siteOf(opened, planned('B2'), dropped, planned('B2')))).toHaveLength(1);
  });

  it('a log already written is read, with names and plans that today would be refused', () => {
    const old: unknown[] = [
      { type: 'site-opened', site: 'Hall\u202e 3', logVersion: 1 },
      { type: 'pair-planned', pair: { id: 'b2', name: 'x\u0000y', rangeMin: 90, rangeMax: 10 } },
      { type: 'pair-planned', pair: { id: 'B2', name: 'B2', emitterHeight: 9, ceilingHeight: 8 } },
    ];
    const site = siteOf(...old.map((fact) => Fact.parse(fact)));
    expect(site.site).toBe('Hall\u202e 3');
    expect(livePairs(site).map(({ plan }) => plan.id)).toEqual(['b2', 'B2']);
  });

  it('reads in the units it was opened with, until others are chosen', () => {
    const feet = { length: 'ft', loss: 'percent/ft' } as const;
    expect(siteOf(opened).units).toBeUndefined();
    expect(siteOf({ ...opened, units: { length: 'm' } } as Fact).units).toEqual({ length: 'm' });
    const site = siteOf({ ...opened, units: { length: 'm' } } as Fact, { type: 'units-chosen', units: feet });
    expect(site.units).toEqual(feet);
    expect(site.site).toBe('Quayside Hall 3');
  });

  it('a visit to a pair that does not exist, and the facts of a job, change nothing', () => {
    const site = siteOf(opened, { type: 'job-begun', pair: 'B9', job: 'job-of-b9' }, { type: 'pause' });
    expect(site.pairs.size).toBe(0);
  });
});
