import type { PlayedSite } from '../../server/demo/site-fixture.ts';
import { type DemoVisit, playDemoSite } from '../../src/simulator/demo-site.ts';

export const demo = playDemoSite(Date.UTC(2026, 2, 3, 8));

export const visitTo = (pair: string): DemoVisit =>
  demo.visits.find((visit) => visit.pair === pair) as DemoVisit;

/** The site with one visit, as it was just before it was signed. */
export const unsigned = (pair: string): PlayedSite => ({
  site: demo.site,
  visits: demo.visits.map(({ job, entries }) => {
    const end = entries.findIndex(({ fact }) => fact.type === 'signed');
    return { job, entries: job === visitTo(pair).job ? entries.slice(0, end) : entries };
  }),
});
