import { parseArgs } from 'node:util';
import { randomPair, SITE_MIX } from '../../src/simulator/cases.ts';
import { CAREFUL, type Errors } from '../../src/simulator/crew.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import { FAMILIES, physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { isFalse, quantile } from './align-table.ts';
import { type Outcome, runEngine } from './engine-run.ts';

/**
 * One person alone: the engine that hears only rising, falling, steady, nothing, too strong, against the same engine with numbers, on
 * the same pairs; with `--walk` how often a person who walks to the meter for each number has to go. Case n of seed s is drawn from `createRng(s + 7919 n)`:
 * seeds that follow each other draw pairs much alike. Tried out on seeds 1000 to 99999.
 */
const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '1000' },
    seed: { type: 'string', default: '1000000' },
    /** Share of wrong words. */
    errors: { type: 'string', default: '0' },
    /** The second simulator: so many pairs of each family. */
    physical: { type: 'boolean', default: false },
    /** The beginning of the name of a family. */
    family: { type: 'string', default: '' },
    /** Only the engine with numbers, with the trips of a person who walks. */
    walk: { type: 'boolean', default: false },
    /** Share of pairs of the first simulator with a side lobe, and with a reflection: as on a site unless given. */
    lobes: { type: 'string' },
    /** Leaves out the engine with numbers. */
    only: { type: 'boolean', default: false },
  },
});
const cases = Number(values.cases);
const seed = Number(values.seed);
/** Between the seeds of two cases: a prime. */
const APART = 7919;
const errors: Errors = { ...CAREFUL, misread: Number(values.errors) };
const walkErrors: Errors = { ...errors, wrongTurn: Number(values.errors) };

interface Way {
  readonly name: string;
  run(draw: (rng: ReturnType<typeof createRng>) => PairSpec, n: number): Outcome;
}

const WAYS: readonly Way[] = [
  {
    name: 'trends',
    run: onPair((spec, rng) => runEngine(spec, errors, rng, undefined, true, { byTrends: true })),
  },
  {
    name: 'walking',
    run: onPair((spec, rng) => runEngine(spec, walkErrors, rng, undefined, true, { walks: true })),
  },
  { name: 'numbers', run: onPair((spec, rng) => runEngine(spec, CAREFUL, rng)) },
];

function onPair(run: (spec: PairSpec, rng: ReturnType<typeof createRng>) => Outcome): Way['run'] {
  return (draw, n) => {
    const rng = createRng(seed + APART * n);
    return run(draw(rng), rng);
  };
}

const NEAR_DB = 0.5;

function row(name: string, outcomes: readonly Outcome[]) {
  const accepted = outcomes.filter((o) => o.accepted);
  const near = accepted.filter((o) => o.shortfall <= NEAR_DB && !o.onReflection);
  const percent = (n: number) => ((100 * n) / outcomes.length).toFixed(1);
  const of = (pick: (o: Outcome) => number) =>
    [0.5, 0.95, 1].map((share) => quantile(outcomes.map(pick), share).toFixed(0)).join(' / ');
  const worst = Math.max(0, ...accepted.map((o) => o.shortfall)).toFixed(2);
  return {
    way: name,
    n: outcomes.length,
    'accepted %': percent(accepted.length),
    'within 0.5 dB %': percent(near.length),
    'over 1 dB': outcomes.filter(isFalse).length,
    'worst dB': worst,
    turns: of((o) => o.turns),
    'trips, gain beside the meter': of((o) => o.tripsGainBeside ?? 0),
    'and at the emitter': of((o) => o.trips ?? 0),
    minutes: of((o) => o.seconds / 60),
  };
}

function table(name: string, draw: (rng: ReturnType<typeof createRng>) => PairSpec): void {
  console.log(name);
  const names = values.walk ? ['walking', 'numbers'] : ['trends', 'numbers'];
  const ways = WAYS.filter(({ name }) => names.slice(0, values.only ? 1 : 2).includes(name));
  const results = ways.map((way) => Array.from({ length: cases }, (_, n) => way.run(draw, n)));
  console.table(results.map((outcomes, i) => row(ways[i]?.name ?? '', outcomes)));
  for (const [n, outcome] of (results[0] ?? []).entries())
    if (isFalse(outcome)) console.log('false accept', seed + APART * n);
}

if (values.physical) {
  for (const family of FAMILIES.filter((each) => each.startsWith(values.family)))
    table(family, (rng) => physicalPair(family, rng));
} else
  table('pairs of the first simulator', (rng) =>
    randomPair(
      rng,
      values.lobes ? { sideLobe: Number(values.lobes), reflection: Number(values.lobes) } : SITE_MIX,
    ),
  );
