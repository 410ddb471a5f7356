import { parseArgs } from 'node:util';
import { randomPair } from '../../src/simulator/cases.ts';
import { CAREFUL, type Errors } from '../../src/simulator/crew.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { byFamily } from './align-families.ts';
import { writeFigures } from './align-figures.ts';
import { printRatios, printTable, type Result } from './align-table.ts';
import { decisionTimes } from './align-time.ts';
import { type Outcome, runEngine } from './engine-run.ts';
import { goldenSection } from './golden.ts';
import { plainPractice } from './plain.ts';
import { simplex } from './simplex.ts';

/**
 * All methods on the same random beam pairs. Case number n of seed s is drawn from `createRng(s + n)`, so that any
 * line can be made again. The engine was tried out on other seeds (1000 to 99999, 3000000 to 3009999, 7000000 to
 * 8099999). The only exceptions are cases that were found there and then understood (tests/engine).
 */
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1000000' },
    /** Only the engine, for long runs that look for a false accept. */
    engine: { type: 'boolean', default: false },
    /** Share of misread values and of wrong turns in the second run of the engine; 0 leaves it out. */
    errors: { type: 'string', default: '0.02' },
    /** Pairs of each family of the second simulator; 0 leaves it out. */
    families: { type: 'string', default: '100' },
    /** The beginning of the names of its families, to run only these. */
    family: { type: 'string', default: '' },
    /** The shares of misread values and of wrong turns there. */
    rates: { type: 'string', default: '0,0.02,0.05' },
    /** Only the second simulator. */
    physical: { type: 'boolean', default: false },
    /** Instead of all else: how long a decision takes, so many jobs a row. */
    times: { type: 'string' },
    /** Folder for the figures of docs/engine.md. */
    figures: { type: 'string' },
  },
});
const cases = Number(values.cases);
const seed = Number(values.seed);
const rate = Number(values.errors);
const ERRING: Errors = { misread: rate, wrongTurn: rate, lateReading: 0 };

type Method = (n: number) => Outcome;

const onCase =
  (run: (spec: ReturnType<typeof randomPair>, rng: ReturnType<typeof createRng>) => Outcome): Method =>
  (n) => {
    const rng = createRng(seed + n);
    return run(randomPair(rng), rng);
  };

const methods: [string, Method][] = [['engine', onCase((spec, rng) => runEngine(spec, CAREFUL, rng))]];
if (rate > 0) {
  const percent = rate * 100;
  methods.push([
    `engine, ${percent} % misread and ${percent} % wrong turns`,
    onCase((spec, rng) => runEngine(spec, ERRING, rng)),
  ]);
}
if (!values.engine) {
  methods.push(
    ['plain practice', onCase(plainPractice)],
    ['golden section', onCase(goldenSection)],
    ['Nelder-Mead (fmin)', onCase(simplex)],
  );
}

if (values.times) decisionTimes(Number(values.times), seed);
else {
  if (!values.physical) firstSimulator();
  if (Number(values.families) > 0)
    byFamily(Number(values.families), seed, values.rates.split(',').map(Number), values.family);
}

function firstSimulator(): void {
  console.log(
    `${cases} cases, seeds ${seed} to ${seed + cases - 1}. Ladder time: a move 6 s, a settled reading 4 s, an aim by eye 60 s.`,
  );
  const results: Result[] = methods.map(([name, method]) => ({
    name,
    outcomes: Array.from({ length: cases }, (_, n) => method(n)),
  }));
  printTable(results, seed);
  printRatios(results);
  if (values.figures) writeFigures(results, values.figures);
}
