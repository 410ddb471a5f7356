import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import type { Search } from '../../src/engine/search.ts';
import { randomPair } from '../../src/simulator/cases.ts';
import { CAREFUL } from '../../src/simulator/crew.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { quantile } from './align-table.ts';
import { runEngine, type Step } from './engine-run.ts';

const JOBS = 200;
/** Readings, and turns forth and back, that make a job long but do not end it. */
const LENGTHS = [100, 1_000, 10_000];

/** Prints the time of one decision, over whole jobs and in jobs made long. */
export function decisionTimes(seed: number): void {
  const times: number[] = [];
  let last: Step | undefined;
  for (let n = 0; n < JOBS; n++) {
    const rng = createRng(seed + n);
    runEngine(randomPair(rng), CAREFUL, rng, (step) => {
      if (step.advice.action.kind === 'turn') last = step;
      times.push(timed(step.search, step.crew.at));
    });
  }
  const ms = (share: number) => quantile(times, share).toFixed(3);
  console.log(
    `One decision over ${JOBS} jobs: ${ms(0.5)} ms median, ${ms(0.95)} ms 95th percentile, ${ms(0.99)} ms 99th`,
  );
  if (!last) return;
  for (const length of LENGTHS) {
    const { search, at } = lengthened(last, length);
    const long = Array.from({ length: 50 }, () => timed(search, at));
    console.log(`One decision after ${length} more entries: ${quantile(long, 0.5).toFixed(3)} ms median`);
  }
}

/** A fresh copy, so that no cached search can help. */
function timed(search: Search, now: number): number {
  const copy = { ...search };
  const start = performance.now();
  advise(copy, now);
  return performance.now() - start;
}

function lengthened({ search, crew }: Step, entries: number): { search: Search; at: number } {
  let [longer, at] = [search, crew.at];
  for (let i = 0; i < entries; i++) {
    at += 5_000;
    const isTurn = i % 2 === 0;
    const eighths = i % 4 === 0 ? 2 : -2;
    const fact = isTurn
      ? ({ type: 'move', axis: 'horizontal', eighths } as const)
      : ({ type: 'reading', reading: { kind: 'value', value: search.meter.bandLow } } as const);
    longer = observe(longer, { seq: 1e6 + i, at, fact });
  }
  return { search: longer, at };
}
