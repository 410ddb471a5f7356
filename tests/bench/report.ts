import { cpus, loadavg } from 'node:os';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { sitePdf } from '../../server/report/make.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Draft, Entry, Log } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import { playDemoSite } from '../../src/simulator/demo-site.ts';

/**
 * The time that the PDF of a large site takes (`npm run bench:report -- 12`: of one with so many pairs), and how long the server can do nothing else during it. The visits are
 * those of the demo site, sealed again with other names.
 */
const PAIRS = Number(process.argv[2] ?? 500);

const [opened, ...rest] = playDemoSite(Date.UTC(2026, 2, 3, 8)).site;
const { visits } = playDemoSite(Date.UTC(2026, 2, 3, 8));
const plans = rest.flatMap(({ fact }) => (fact.type === 'pair-planned' ? [fact.pair] : []));
if (!opened) throw new Error('the demo has no site');

/** Another log with the same facts at the same times. */
function logOf(job: JobId, entries: readonly Pick<Entry, 'at' | 'actor' | 'fact'>[]): Log {
  let head = emptyHead(job);
  const sealed = entries.map(({ at, actor, fact }) => {
    // A signature is for its own log.
    const draft: Draft = { actor, fact: fact.type === 'signed' ? { ...fact, head } : fact };
    const entry = seal(head, draft, at);
    head = headAfter(entry);
    return entry;
  });
  return { entries: sealed, head };
}

const logs = new Map<JobId, Log>();
const site: Pick<Entry, 'at' | 'actor' | 'fact'>[] = [opened];
for (let i = 0; i < PAIRS; i++) {
  const plan = plans[i % plans.length];
  const visit = visits[i % visits.length];
  if (!plan || !visit) throw new Error('the demo has no pairs');
  const id = `P${i + 1}`;
  const job = `bench-report-${i + 1}`;
  logs.set(job, logOf(job, visit.entries));
  const { at, actor } = opened;
  site.push({ at, actor, fact: { type: 'pair-planned', pair: { ...plan, id, name: `Pair ${id}` } } });
  site.push({ at, actor, fact: { type: 'job-begun', pair: id, job } });
}
const entries = [...logs.values()].reduce((sum, { head }) => sum + head.count, 0);

const { make } = sitePdf(
  logOf('bench-report-site', site),
  { zone: 'UTC', at: opened.at },
  async (job) => {
    const log = logs.get(job);
    if (!log) throw new Error(`no log ${job}`);
    return log;
  },
  async () => undefined,
);
const delays = monitorEventLoopDelay({ resolution: 5 });
delays.enable();
const began = performance.now();
const busy = process.cpuUsage();
const file = await make(() => {});
const wall = (performance.now() - began) / 1000;
const { user, system } = process.cpuUsage(busy);
delays.disable();

console.table([
  {
    pairs: PAIRS,
    entries,
    'seconds, wall': Number(wall.toFixed(1)),
    'seconds, processor': Number(((user + system) / 1e6).toFixed(1)),
    'longest stall, ms': Math.round(delays.max / 1e6),
    'stall, 99 % below, ms': Math.round(delays.percentile(99) / 1e6),
    MB: Number((file.length / 1e6).toFixed(1)),
  },
]);
console.log(
  `${cpus().length} cores, load average ${loadavg()
    .map((load) => load.toFixed(1))
    .join(', ')}.`,
);
