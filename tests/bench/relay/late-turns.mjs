import { readFileSync } from 'node:fs';
import { PerformanceObserver } from 'node:perf_hooks';

/**
 * Loaded into a process of the server (`--import`): tells the bench of each turn of its main thread that came late, and what the thread
 * did meanwhile. Linux: how long it was on a processor, and how long it was ready and none was free, stands in /proc.
 */
const EACH_MS = 20;
const LATE_MS = 100;
const NS_A_MS = 1e6;

/** Of the main thread, whose number is that of the process. */
const ranAndWaited = () =>
  readFileSync(`/proc/${process.pid}/schedstat`, 'utf8').split(' ').slice(0, 2).map(Number);

let collecting = 0;
new PerformanceObserver((list) => {
  for (const { duration } of list.getEntries()) collecting += duration;
}).observe({ entryTypes: ['gc'] });

let before = performance.now();
let [ran, waited] = ranAndWaited();
let collected = 0;
setInterval(() => {
  const now = performance.now();
  const late = now - before - EACH_MS;
  const [ranNow = 0, waitedNow = 0] = ranAndWaited();
  if (late > LATE_MS)
    process.send?.({
      late,
      ran: (ranNow - ran) / NS_A_MS,
      waited: (waitedNow - waited) / NS_A_MS,
      collected: collecting - collected,
    });
  [before, ran, waited, collected] = [now, ranNow, waitedNow, collecting];
}, EACH_MS).unref();
