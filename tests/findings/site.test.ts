import { describe, expect, it } from 'vitest';
import { review } from '../../src/findings/review.ts';
import { pairStory, reviewSite } from '../../src/findings/site.ts';
import { DEMO_PAIRS, playDemoSite } from '../../src/simulator/demo-site.ts';
import { PLANTS } from '../../src/simulator/plants.ts';
import { driftBetween } from '../../src/site/drift.ts';
import { EMPTY_SITE, foldSite, livePairs } from '../../src/site/state.ts';

const demo = playDemoSite(Date.UTC(2026, 2, 3, 8));
const stories = DEMO_PAIRS.map(({ id, pathLength }) =>
  pairStory(
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

  it('every planted fault appears in the findings of its visit, and no others', () => {
    const found = demo.visits.map(({ job, entries }) => [
      job,
      review(entries)
        .map(({ id }) => id)
        .sort(),
    ]);
    const planted = DEMO_PAIRS.flatMap(({ id, visits }) =>
      visits.map((plants, i) => [
        `demo-${id}-visit-${i + 1}`,
        plants.flatMap((plant): string[] => [...PLANTS[plant]]).sort(),
      ]),
    );
    expect(found).toEqual(planted);
  });

  it('the weak pair and the one undone on a later visit appear in the findings of the site, and no others', () => {
    expect(reviewSite(stories).map(({ id, pair }) => [id, pair])).toEqual([
      ['weak-neighbour', 'N4'],
      ['undone', 'D1'],
    ]);
  });

  it('the weak pair is told with its equals, which are not those of another length', () => {
    const weak = reviewSite(stories).find(({ id }) => id === 'weak-neighbour');
    expect(weak?.entries.map(({ job }) => job.slice(5, 7))).toEqual(['N4', 'N1', 'N2', 'N3']);
    expect(weak?.figures.weaker).toBeGreaterThan(1);
  });
});

describe('compared with the last visit', () => {
  it('a visit that touched before it read says nothing of the one before', () => {
    const [first, second] = stories.find(({ pair }) => pair === 'D1')?.visits ?? [];
    expect(first && second && driftBetween(second, first)).toBeUndefined();
  });
});
