import { checked, headAfter } from '../../src/log/chain.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head } from '../../src/model/ids.ts';
import { SiteReport } from '../../src/report/build.ts';
import { playDemoSite } from '../../src/simulator/demo-site.ts';

/** The invented site of a dozen pairs, with planted faults. */
export const demo = playDemoSite(Date.UTC(2026, 2, 3, 8));

export const logOf = (entries: readonly Entry[]): CheckedLog => checked({ entries, head: headOf(entries) });
export const headOf = (entries: readonly Entry[]): Head => headAfter(entries.at(-1) as Entry);

export const visitsOf = (pair: string): CheckedLog[] =>
  demo.visits.filter((visit) => visit.pair === pair).map(({ entries }) => logOf(entries));

export function demoReport(zone = 'UTC'): SiteReport {
  const report = new SiteReport(logOf(demo.site), { zone, at: Date.UTC(2026, 2, 6, 8) });
  for (const pair of report.pairs) report.add(pair, visitsOf(pair.plan.id));
  return report;
}
