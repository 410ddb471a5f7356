import type { PlayedSite } from '../../server/demo/site-fixture.ts';
import { digest, newToken } from '../../server/guard/secrets.ts';
import type { Store } from '../../server/store/store.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { TestStep } from '../../src/model/steps.ts';
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

/** A new phone in the seat of a job that is in the store: its token. */
export async function tokenOf(store: Store, job: JobId, seat: Seat): Promise<string> {
  const token = newToken();
  await store.append(job, [], { issue: [{ token: digest(token), role: seat }] });
  return token;
}

/** The same, where the visit has steps of cause and effect. */
export const unsignedWithSteps = (pair: string, steps: readonly TestStep[]): PlayedSite => {
  const { site, visits } = unsigned(pair);
  const sealed = visits.map(({ job, entries }) => {
    if (job !== visitTo(pair).job) return { job, entries };
    let head = emptyHead(job);
    return {
      job,
      entries: entries.map(({ at, actor, fact, ref }) => {
        const written =
          fact.type === 'opened' ? { ...fact, setup: { ...fact.setup, steps: [...steps] } } : fact;
        const entry = seal(head, { actor, fact: written, ...(ref && { ref }) }, at);
        head = headAfter(entry);
        return entry;
      }),
    };
  });
  return { site, visits: sealed };
};
