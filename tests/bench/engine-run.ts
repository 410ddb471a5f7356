import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import { type Beginning, type Search, startSearch } from '../../src/engine/search.ts';
import type { Advice } from '../../src/model/advice.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { type Crew, carryOut, type Errors, newCrew } from '../../src/simulator/crew.ts';
import {
  type BeamPair,
  createBeamPair,
  onReflection,
  type PairSpec,
  shortfallDb,
} from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';

/** The result of one method in one case. */
export interface Outcome {
  /** It ended by accepting (a baseline: by its own stopping rule). */
  accepted: boolean;
  turns: number;
  gainChanges: number;
  readings: number;
  /** Readings for which a person alone walks to the meter: the first, and each after something was done at the beam. */
  trips?: number;
  /** The same where the gain is set beside the meter. */
  tripsGainBeside?: number;
  seconds: number;
  /** Where it ended, dB below the true best. */
  shortfall: number;
  onReflection: boolean;
  reAims: number;
  questions: number;
  /** It ended by naming what stands in the way. */
  named: boolean;
}

/** An alignment that takes more entries than this has failed. */
const LONGEST = 1000;

/** Advice that names a cause which turning the screws cannot mend. */
const END_RULES: ReadonlySet<string> = new Set(['too-weak', 'too-strong', 'no-single-peak', 'light-stays']);

/** What takes a person to the beam; the gain too, where it is set there. */
const AT_THE_BEAM: ReadonlySet<Advice['action']['kind']> = new Set([
  'turn',
  'gain',
  're-aim',
  'block',
  'unblock',
  'check',
]);

const NOT_BESIDE = new Set([...AT_THE_BEAM].filter((kind) => kind !== 'gain'));

class Trips {
  count = 0;
  #away = true;
  readonly #leaves: ReadonlySet<string>;
  constructor(leaves: ReadonlySet<string>) {
    this.#leaves = leaves;
  }
  after(kind: Advice['action']['kind']): void {
    if (kind === 'read' && this.#away) this.count += 1;
    this.#away = kind === 'read' ? false : this.#away || this.#leaves.has(kind);
  }
}

export interface Step {
  advice: Advice;
  crew: Crew;
  search: Search;
}

/** Drives the engine and a simulated crew until it accepts or gives up. */
export function runEngine(
  spec: PairSpec,
  errors: Errors,
  rng: Rng,
  watch?: (step: Step) => void,
  stopWhenNamed = false,
  begin: Beginning = {},
): Outcome {
  let crew = newCrew(createBeamPair(spec));
  let search = startSearch(spec.meter, NEUTRAL_ADJUSTERS, begin);
  const count: Partial<Record<Advice['action']['kind'], number>> = {};
  let named = false;
  const [trips, tripsByTurns] = [new Trips(AT_THE_BEAM), new Trips(NOT_BESIDE)];
  for (let i = 0; i < LONGEST && !search.accepted; i++) {
    const { advice } = advise(search, crew.at);
    named = END_RULES.has(advice.rule);
    if (named && stopWhenNamed) break;
    watch?.({ advice, crew, search });
    count[advice.action.kind] = (count[advice.action.kind] ?? 0) + 1;
    trips.after(advice.action.kind);
    tripsByTurns.after(advice.action.kind);
    const done = carryOut(crew, advice, errors, rng);
    crew = done.crew;
    for (const event of done.events) search = observe(search, event);
  }
  return {
    accepted: search.accepted?.backed ?? false,
    turns: count.turn ?? 0,
    gainChanges: count.gain ?? 0,
    readings: count.read ?? 0,
    trips: trips.count,
    tripsGainBeside: tripsByTurns.count,
    seconds: crew.at / 1000,
    ...judged(crew.pair),
    reAims: count['re-aim'] ?? 0,
    questions: count.ask ?? 0,
    named,
  };
}

export const judged = (pair: BeamPair): Pick<Outcome, 'shortfall' | 'onReflection'> => ({
  shortfall: shortfallDb(pair),
  onReflection: onReflection(pair),
});
