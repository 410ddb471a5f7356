import { describe, expect, it } from 'vitest';
import { reviewSite } from '../../src/findings/across-visits.ts';
import { driftBetween } from '../../src/record/last-visit.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { DEMO_PAIRS, playDemoSite } from '../../src/simulator/demo-site.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { PLANTS } from '../../src/simulator/plants.ts';
import { EMPTY_SITE, foldSite, livePairs } from '../../src/site/state.ts';
import { pairVisits } from './pair-outcome.ts';
import { playedVisit, SETUP } from './site.ts';

const demo = playDemoSite(Date.UTC(2026, 2, 3, 8));
const visitsByPair = DEMO_PAIRS.map(({ id, pathLength }) =>
  pairVisits(
    id,
    pathLength,
    demo.visits.filter(({ pair }) => pair === id),
  ),
);

describe('the invented site', () => {
  it('has a dozen pairs, each with its visits', () => {
    const site = demo.site.reduce(foldSite, EMPTY_SITE);
    expect(livePairs(site)).toHaveLength(12);
    expect(
      livePairs(site)
        .flatMap(({ visits }) => visits.map(({ job }) => job))
        .sort(),
    ).toEqual(demo.visits.map(({ job }) => job).sort());
  });

  it('the findings of each visit are its planted faults, and nothing else', () => {
    const found = demo.visits.map(({ job, entries }) => [
      job,
      new VisitRecord({ entries }).findings.map(({ id }) => id).sort(),
    ]);
    const planted = DEMO_PAIRS.flatMap(({ id, visits }) =>
      visits.map((plants, i) => [
        `demo-${id}-visit-${i + 1}`,
        plants.flatMap((plant): string[] => [...PLANTS[plant]]).sort(),
      ]),
    );
    expect(found).toEqual(planted);
  });

  it('the findings of the site are the weak pair and the pair that a later visit undid, and nothing else', () => {
    expect(reviewSite(visitsByPair).map(({ id, pair }) => [id, pair])).toEqual([
      ['weak-neighbour', 'N4'],
      ['undone', 'D1'],
    ]);
  });

  it('the weak pair is shown with its equals, and not with pairs of another length', () => {
    const weak = reviewSite(visitsByPair).find(({ id }) => id === 'weak-neighbour');
    expect(weak?.entries.map(({ job }) => job.slice(5, 7))).toEqual(['N4', 'N1', 'N2', 'N3']);
    expect(weak?.figures.weaker).toBeGreaterThan(1);
  });
});

describe('compared with the last visit', () => {
  it('the reading before anything is touched shows how much light was lost since then', () => {
    const earlier = new VisitRecord({ entries: playedVisit() }).visit;
    const later = new LoggedJob('next-visit', Date.UTC(2027, 2, 3));
    later.input({ kind: 'open', setup: SETUP });
    later.say('panel', '120');
    later.say('emitter', 'gain down');
    later.say('panel', '90');
    const visit = new VisitRecord({ entries: later.entries }).visit;
    const drift = earlier && visit && driftBetween(earlier, visit);
    const accepted = earlier?.accepted?.reading;
    const value = accepted?.kind === 'value' ? accepted.value : Number.NaN;
    expect(drift).toMatchObject({ from: { value }, to: { value: 120 } });
    // The meter is linear, from zero.
    expect(drift?.lostDb).toBeCloseTo(10 * Math.log10(value / 120), 9);
  });

  it('a visit that touched before it read says nothing about the last visit', () => {
    const [first, second] = visitsByPair.find(({ pair }) => pair === 'D1')?.visits ?? [];
    expect(first && second && driftBetween(second, first)).toBeUndefined();
  });
});
