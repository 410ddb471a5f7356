import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import type { Search } from '../../src/engine/search.ts';
import { randomPair } from '../../src/simulator/cases.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import { FAMILIES, physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng, type Rng } from '../../src/simulator/rng.ts';
import { quantile } from './align-table.ts';
import { runEngine, type Step } from './engine-run.ts';

/** Readings, and turns forth and back, that make a job long but do not end it. */
const LENGTHS = [100, 1_000, 10_000];
const RATES = [0, 0.02, 0.05];
/** Seeds that follow each other draw pairs that are much alike: so they stand apart, by a prime. */
const APART = 7919;

type Draw = (rng: Rng, n: number) => PairSpec;

const WORLDS: readonly (readonly [name: string, draw: Draw])[] = [
  ['first simulator', (rng) => randomPair(rng)],
  // Every family in its turn.
  ['second simulator', (rng, n) => physicalPair(FAMILIES[n % FAMILIES.length] ?? FAMILIES[0], rng)],
];

/** Prints the time of one decision over whole jobs, with people who err too, and in jobs made long. */
export function decisionTimes(jobs: number, seed: number): void {
  console.log(`One decision, milliseconds: ${jobs} jobs a row, seeds ${seed} + ${APART} i.`);
  console.log('| world | errors | decisions | median | 95 % | 99 % | 99.9 % | most |');
  console.log(`|${' --- |'.repeat(8)}`);
  let last: Step | undefined;
  for (const [name, draw] of WORLDS) {
    for (const rate of RATES) {
      const times: number[] = [];
      for (let n = 0; n < jobs; n++) {
        const rng = createRng(seed + APART * n);
        const errors = { misread: rate, wrongTurn: rate, lateReading: 0 };
        const watch = (step: Step) => {
          if (step.advice.action.kind === 'turn') last = step;
          times.push(timed(step.search, step.crew.at));
        };
        runEngine(draw(rng, n), errors, rng, watch, true);
      }
      const cells = [0.5, 0.95, 0.99, 0.999, 1].map((share) => quantile(times, share).toFixed(2));
      console.log(`| ${name} | ${100 * rate} % | ${times.length} | ${cells.join(' | ')} |`);
    }
  }
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
