import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import { type Search, startSearch } from '../../src/engine/search.ts';
import type { Action, Advice } from '../../src/model/advice.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../../src/model/reading.ts';
import type { Axis } from '../../src/model/turns.ts';
import { CAREFUL, type Crew, carryOut, newCrew } from '../../src/simulator/crew.ts';
import { createBeamPair, type PairSpec } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';

export const PERCENT = NEUTRAL_METERS[0] as MeterProfile;
export const DECIBELS = NEUTRAL_METERS[3] as MeterProfile;

/** A well-made pair: a Gaussian beam eight eighths wide, two turns off, no backlash, hardly any noise. */
export const goodPair = (meter: MeterProfile, more: Partial<PairSpec> = {}): PairSpec => ({
  meter,
  lobes: [
    {
      shape: { kind: 'gaussian' },
      horizontal: 9,
      vertical: -6,
      halfHorizontal: 8,
      halfVertical: 8,
      belowDb: 0,
      reflected: false,
    },
  ],
  peakDb: 10,
  gainRangeDb: 40,
  gainStepDb: 0,
  backlash: { horizontal: 0, vertical: 0 },
  coupling: 0,
  aimRadius: 4,
  travel: 80,
  lagMs: 400,
  noiseDb: 0.005,
  noiseUnits: meter.tolerance / 20,
  driftDbPerMinute: 0,
  vibration: { eighths: 0, periodMs: 1000 },
  ...more,
});

/**
 * What is said at a job whose emitter was aimed by eye, and what the engine answers. Every word takes a settle time, unless
 * told otherwise.
 */
export class Job {
  search: Search;
  at = 1_000_000;
  seq = 0;

  constructor(
    readonly meter: MeterProfile = PERCENT,
    readonly wait = 5_000,
  ) {
    this.search = startSearch(meter, NEUTRAL_ADJUSTERS);
    this.say({ type: 're-aimed' });
  }

  /** Gives the entry's sequence number. */
  say(fact: SearchFact, after = this.wait): number {
    this.at += after;
    this.search = observe(this.search, { seq: this.seq, at: this.at, fact });
    return this.seq++;
  }

  reads = (value: number | 'nothing' | 'flooded', after = this.wait): number =>
    this.say(
      {
        type: 'reading',
        reading: value === 'nothing' ? NO_SIGNAL : value === 'flooded' ? SATURATED : valueReading(value),
      },
      after,
    );

  turns = (axis: Axis, eighths: number): number => this.say({ type: 'move', axis, eighths });

  /** Does what is asked with the two adjusters and the gain, without a beam. */
  obeys(action: Action): void {
    if (action.kind === 'turn') this.turns(action.axis, action.eighths);
    if (action.kind === 'gain')
      this.say({ type: 'gain', change: action.change === 'full' ? 'full' : 'lowered' });
    if (action.kind === 're-aim') this.say({ type: 're-aimed' });
    if (action.kind === 'check') this.say({ type: 'checked', instruction: 0 });
  }

  get advice(): Advice {
    return advise(this.search, this.at).advice;
  }
  get action(): Action {
    return this.advice.action;
  }
  get missing(): string[] {
    return missingForAccept(this.search, this.at).map(({ id }) => id);
  }
}

export interface Moment {
  search: Search;
  crew: Crew;
  advice: Advice;
}

/** A careful crew works on a simulated pair until `stop` says so; the engine's advice then. */
export function workUntil(spec: PairSpec, stop: (moment: Moment) => boolean, seed = 1): Moment {
  const rng = createRng(seed);
  let crew = newCrew(createBeamPair(spec));
  let search = startSearch(spec.meter, NEUTRAL_ADJUSTERS);
  for (let i = 0; i < 300; i++) {
    const moment = { search, crew, advice: advise(search, crew.at).advice };
    if (stop(moment)) return moment;
    const done = carryOut(crew, moment.advice, CAREFUL, rng);
    crew = done.crew;
    for (const event of done.events) search = observe(search, event);
  }
  throw new Error('the crew never got there');
}
