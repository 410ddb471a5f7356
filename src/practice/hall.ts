import type { Entry } from '../model/entry.ts';
import type { PracticeAct } from '../model/practice.ts';
import type { JobSetup } from '../model/setup.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { type BeamPair, block, createBeamPair, reAim, setGain, truePeak, turn } from '../simulator/pair.ts';
import { between, createRng } from '../simulator/rng.ts';
import { practicePair } from './pair.ts';

/** The simulated pair of a practice job at one moment: a fold over the log of the job. */
export interface Hall {
  /** Its times are milliseconds since the job was opened. */
  readonly pair: BeamPair;
  /** When the job was opened, ms since 1970. */
  readonly from: number;
  readonly setup: JobSetup;
  /** How many turns the crew has reported. */
  readonly turns: number;
  /** The turn that went the other way than the hand meant. */
  readonly slip?: { readonly at: number; readonly axis: Axis; readonly meant: Eighths };
  readonly aims: number;
}

/** So many turns go right before one slips, and up to `VARIES` - 1 more. */
const RIGHT_BEFORE = 2;
const VARIES = 3;
/** Nobody would notice that less went the other way, eighths. */
const LEAST_SLIP = 2;

/** Undefined before the job is opened, and for a job that is not practice. */
export function hallAfter(
  hall: Hall | undefined,
  { at, fact }: Pick<Entry, 'at' | 'fact'>,
): Hall | undefined {
  if (fact.type === 'opened' && fact.setup.practice) {
    const { practice } = fact.setup;
    const pair = createBeamPair(practicePair(practice));
    return { pair, from: at, setup: fact.setup as JobSetup, turns: 0, aims: 0 };
  }
  if (!hall) return undefined;
  if (fact.type === 'move') return { ...hall, turns: hall.turns + 1 };
  return fact.type === 'practised' ? afterAct(hall, fact.act, at) : hall;
}

export const hallOf = (entries: readonly Pick<Entry, 'at' | 'fact'>[]): Hall | undefined =>
  entries.reduce<Hall | undefined>(hallAfter, undefined);

function afterAct(hall: Hall, act: PracticeAct, at: number): Hall {
  const now = at - hall.from;
  const { pair } = hall;
  switch (act.did) {
    case 'turn': {
      if (!slips(hall, act.eighths)) return { ...hall, pair: turn(pair, act.axis, act.eighths, now) };
      const slip = { at, axis: act.axis, meant: act.eighths };
      return { ...hall, pair: turn(pair, act.axis, -act.eighths, now), slip };
    }
    case 'gain':
      return { ...hall, pair: setGain(pair, act.db, now) };
    case 'card':
      return { ...hall, pair: block(pair, act.inPath, now) };
    case 'aim':
      return { ...hall, pair: reAim(pair, byEye(hall), now), aims: hall.aims + 1 };
    case 'misheard':
      return hall;
  }
}

function slips({ setup: { practice }, slip, turns }: Hall, eighths: Eighths): boolean {
  if (!practice?.troubles.includes('wrong-way') || slip || Math.abs(eighths) < LEAST_SLIP) return false;
  return turns >= RIGHT_BEFORE + (practice.seed % VARIES);
}

/** An aim by eye misses, each time otherwise. */
function byEye({ pair: { spec }, setup: { practice }, aims }: Hall): Record<Axis, number> {
  const rng = createRng((practice?.seed ?? 0) + aims + 1);
  const angle = between(rng, 0, 2 * Math.PI);
  const off = spec.aimRadius * Math.sqrt(rng());
  const peak = truePeak(spec);
  return {
    horizontal: peak.horizontal + off * Math.cos(angle),
    vertical: peak.vertical + off * Math.sin(angle),
  };
}
