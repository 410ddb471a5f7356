import type { Errors } from '../../src/simulator/crew.ts';
import { FAMILIES, type Family, physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { isFalse, quantile } from './align-table.ts';
import { type Outcome, runEngine } from './engine-run.ts';
import { plainPractice } from './plain.ts';

const CLOSE_DB = 0.2;
/** Seeds that follow each other draw pairs that are much alike: so they stand apart, by a prime. */
const APART = 7919;
/** A search that takes more turns than this has failed. */
const MOST_TURNS = 150;

/**
 * Prints the engine beside plain practice, for each family of the second simulator whose name begins with `only`, and
 * each share of misread numbers and of wrong turns. Plain practice is run without errors.
 */
export function byFamily(cases: number, seed: number, rates: readonly number[], only: string): void {
  console.log(`\nSecond simulator, family by family: n = ${cases} each, seeds ${seed} + ${APART} i.`);
  console.log(
    'Ended: accepted, or with the cause named, within 150 turns. Turns and seconds: median / 95th percentile.',
  );
  console.log(
    '| beam | errors | accepted % | within 0.2 dB % | false | ended % | turns | seconds | practice: accepted % | within 0.2 dB % | false | turns |',
  );
  console.log(`|${' --- |'.repeat(12)}`);
  for (const family of FAMILIES.filter((name) => name.startsWith(only))) {
    const practice = outcomes(family, cases, seed, plainPractice);
    for (const rate of rates) {
      const errors: Errors = { misread: rate, wrongTurn: rate, lateReading: 0 };
      const engine = outcomes(family, cases, seed, (spec, rng) =>
        runEngine(spec, errors, rng, undefined, true),
      );
      const cells = [
        family,
        `${100 * rate} %`,
        ...quality(engine),
        percent(engine, (o) => (o.accepted || o.named) && o.turns <= MOST_TURNS),
        spread(engine, (o) => o.turns),
        spread(engine, (o) => o.seconds),
        ...quality(practice),
        spread(practice, (o) => o.turns),
      ];
      console.log(`| ${cells.join(' | ')} |`);
    }
  }
}

type Method = (spec: ReturnType<typeof physicalPair>, rng: ReturnType<typeof createRng>) => Outcome;

const outcomes = (family: Family, cases: number, seed: number, run: Method): Outcome[] =>
  Array.from({ length: cases }, (_, n) => {
    const rng = createRng(seed + APART * n);
    return run(physicalPair(family, rng), rng);
  });

const percent = (all: readonly Outcome[], which: (o: Outcome) => boolean): string =>
  ((100 * all.filter(which).length) / all.length).toFixed(0);

const spread = (all: readonly Outcome[], pick: (o: Outcome) => number): string =>
  [0.5, 0.95].map((share) => quantile(all.map(pick), share).toFixed(0)).join(' / ');

const quality = (all: readonly Outcome[]): string[] => [
  percent(all, (o) => o.accepted),
  percent(all, (o) => o.accepted && o.shortfall <= CLOSE_DB),
  String(all.filter(isFalse).length),
];
