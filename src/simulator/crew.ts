import type { SearchEvent } from '../engine/history.ts';
import { agree } from '../engine/stay.ts';
import type { Action, Advice, Question } from '../model/advice.ts';
import type { SearchFact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { midBand } from '../model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../model/reading.ts';
import { type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import {
  type BeamPair,
  block,
  gainFor,
  handSlip,
  lightDb,
  ownGain,
  reAim,
  readMeter,
  setGain,
  truePeak,
  turn,
} from './pair.ts';
import { between, chance, normal, pick, type Rng } from './rng.ts';

/** How long things take, ms: estimates of our own, no source. A settled reading is the profile's settle time. */
export const MOVE_MS = 6_000;
export const SAY_MS = 1_000;

/** How often people make mistakes, as a share of the readings or turns. */
export interface Errors {
  /** A number heard or read wrong: swapped or dropped digits, thirteen for thirty, one digit off. */
  misread: number;
  /** A turn the wrong way, on the wrong adjuster, or of half or double the size. */
  wrongTurn: number;
  /** A reading from the moment before the turn. */
  lateReading: number;
}
export const CAREFUL: Errors = { misread: 0, wrongTurn: 0, lateReading: 0 };

interface Turn {
  axis: Axis;
  eighths: Eighths;
}

/** Two people and the beam pair they work on, at one moment. */
export interface Crew {
  readonly pair: BeamPair;
  /** ms */
  readonly at: number;
  readonly nextSeq: Seq;
  /** Turns that were really different from their entry. */
  readonly slips: ReadonlyMap<Seq, Turn>;
  /** The last reading said, by its entry. */
  readonly said: { readonly seq: Seq; readonly reading: Reading } | undefined;
  /** What the meter showed before the last turn. */
  readonly before: Reading | undefined;
  /** The light at the last look, dB, and since what change of the gain it can be compared. */
  readonly looked?: { readonly db: number; readonly gainDb: number } | undefined;
}

export const newCrew = (pair: BeamPair): Crew => ({
  pair,
  at: 0,
  nextSeq: 0,
  slips: new Map(),
  said: undefined,
  before: undefined,
});

export interface Done {
  readonly crew: Crew;
  readonly events: readonly SearchEvent[];
}

/** The crew does what it is asked, says so, and sometimes makes a mistake. */
export function carryOut(crew: Crew, advice: Advice, errors: Errors, rng: Rng): Done {
  const { action } = advice;
  switch (action.kind) {
    case 'turn':
      return makeTurn(crew, action, errors, rng);
    case 'gain':
      return changeGain(crew, action, rng);
    case 'read':
      if (action.as === 'trend') return sayTrend(crew, errors, rng);
      return sayReading(crew, errors, rng);
    case 'hold':
      return { crew: { ...crew, at: Math.max(crew.at, action.until) }, events: [] };
    case 're-aim': {
      const angle = between(rng, 0, 2 * Math.PI);
      const off = crew.pair.spec.aimRadius * Math.sqrt(rng());
      const peak = truePeak(crew.pair.spec);
      const pointing = {
        horizontal: peak.horizontal + off * Math.cos(angle),
        vertical: peak.vertical + off * Math.sin(angle),
      };
      const at = crew.at + 10 * MOVE_MS;
      return say({ ...crew, at, pair: reAim(crew.pair, pointing, at) }, [{ type: 're-aimed' }]);
    }
    case 'block':
    case 'unblock': {
      const blocked = action.kind === 'block';
      const at = crew.at + MOVE_MS;
      const fact: SearchFact = { type: 'path', state: blocked ? 'blocked' : 'clear' };
      return say({ ...crew, at, pair: block(crew.pair, blocked, at) }, [fact]);
    }
    case 'ask':
      return answer(crew, action.question, rng);
    case 'check':
      return say({ ...crew, at: crew.at + 10 * MOVE_MS }, [{ type: 'checked', instruction: 0 }]);
    case 'offer-accept': {
      const reading = readMeter(crew.pair, crew.at, rng);
      return say(crew, [{ type: 'accept', reading }]);
    }
    default:
      return { crew, events: [] };
  }
}

function say(crew: Crew, facts: readonly SearchFact[]): Done {
  const events = facts.map((fact, i) => ({ seq: crew.nextSeq + i, at: crew.at, fact }));
  return { crew: { ...crew, nextSeq: crew.nextSeq + facts.length }, events };
}

function makeTurn(crew: Crew, asked: Turn, errors: Errors, rng: Rng): Done {
  const meant = { axis: asked.axis, eighths: asked.eighths };
  const made = chance(rng, errors.wrongTurn) ? wrongTurn(meant, rng) : meant;
  const at = crew.at + MOVE_MS;
  const before = readMeter(crew.pair, crew.at, rng);
  const pair = turn(crew.pair, made.axis, made.eighths, at, handSlip(crew.pair.spec, rng));
  const went = pair.turned[made.axis] - crew.pair.turned[made.axis];
  const seq = crew.nextSeq;
  const stopped = went !== made.eighths;
  const facts: SearchFact[] = stopped
    ? [
        { type: 'move', axis: made.axis, eighths: went },
        { type: 'cannot', why: 'end-of-travel', instruction: 0, turn: made },
      ]
    : [{ type: 'move', ...meant }];
  const slips = made === meant || stopped ? crew.slips : new Map(crew.slips).set(seq, made);
  return say({ ...crew, at, pair, slips, before }, facts);
}

function wrongTurn({ axis, eighths }: Turn, rng: Rng): Turn {
  const kind = rng();
  if (kind < 0.4) return { axis, eighths: -eighths };
  if (kind < 0.7) return { axis: otherAxis(axis), eighths };
  const half = Math.trunc(eighths / 2);
  return kind < 0.85 && half !== 0 ? { axis, eighths: half } : { axis, eighths: 2 * eighths };
}

/** How near to the middle of the band a detector sets itself, dB: an estimate of our own, no source. */
const OWN_SD_DB = 0.3;

/** A hand sets a reading within about a tenth of a decibel; without a target it turns to full. */
function changeGain(crew: Crew, action: Extract<Action, { kind: 'gain' }>, rng: Rng): Done {
  const at = crew.at + MOVE_MS;
  const { meter } = crew.pair.spec;
  if (meter.gain === 'automatic') {
    const pair = setGain(
      crew.pair,
      gainFor(crew.pair, midBand(meter), crew.at) + OWN_SD_DB * normal(rng),
      at,
    );
    return say({ ...crew, at, pair }, [
      { type: 'gain', change: action.change === 'lower' ? 'lowered' : 'raised' },
    ]);
  }
  if (action.change === 'lower' && action.toward === undefined) return dim(crew, rng);
  const wanted =
    action.toward === undefined ? 0 : gainFor(crew.pair, action.toward, crew.at) + 0.3 * normal(rng);
  const change = action.change === 'full' ? 'full' : action.change === 'lower' ? 'lowered' : 'raised';
  return say({ ...crew, at, pair: setGain(crew.pair, wanted, at) }, [{ type: 'gain', change }]);
}

/** Lowers the gain until it is no longer too strong, and a little more. */
function dim(crew: Crew, rng: Rng): Done {
  const at = crew.at + MOVE_MS;
  const { saturatedAt } = crew.pair.spec.meter;
  const gainDb = gainFor(crew.pair, saturatedAt, crew.at) + between(rng, 1, 4);
  const pair = setGain(crew.pair, gainDb, at);
  return say({ ...crew, at, pair, looked: undefined }, [{ type: 'gain', change: 'lowered' }]);
}

function sayReading(crew: Crew, errors: Errors, rng: Rng): Done {
  const at = crew.at + SAY_MS;
  const shown = readMeter(crew.pair, at, rng);
  const set = ownGain(crew.pair, shown, at);
  if (set !== crew.pair) {
    const change = set.gainDb > crew.pair.gainDb ? 'lowered' : 'raised';
    return say({ ...crew, at, pair: set }, [{ type: 'gain', change }]);
  }
  const late = crew.before !== undefined && chance(rng, errors.lateReading) ? crew.before : shown;
  const reading = chance(rng, errors.misread) ? misread(late, crew.pair, rng) : late;
  return say({ ...crew, at, said: { seq: crew.nextSeq, reading } }, [{ type: 'reading', reading }]);
}

/** What a change of light is to this eye: so much is seen as often as not, dB; estimates of our own, no source. */
const EYE = { least: 0.3, most: 0.5, spread: 0.1 };

/**
 * Says what the light did against the last look. How small a change an eye tells apart differs from look to look.
 * A misread number is here a wrong word, any of the five.
 */
function sayTrend(crew: Crew, errors: Errors, rng: Rng): Done {
  const at = crew.at + SAY_MS;
  const shown = readMeter(crew.pair, at, rng);
  const isWrong = chance(rng, errors.misread);
  if (shown.kind !== 'value')
    return say({ ...crew, at, looked: undefined }, [
      isWrong ? pick(rng, WORDS) : { type: 'reading', reading: shown },
    ]);
  const db = lightDb(crew.pair, at);
  const before = crew.looked?.gainDb === crew.pair.gainDb ? crew.looked : undefined;
  const change = before ? db - before.db + EYE.spread * normal(rng) : 0;
  const isSeen = Math.abs(change) > between(rng, EYE.least, EYE.most);
  const right = !isSeen ? 'steady' : change > 0 ? 'rising' : 'falling';
  return say({ ...crew, at, looked: { db, gainDb: crew.pair.gainDb } }, [
    isWrong ? pick(rng, WORDS) : { type: 'trend', trend: right },
  ]);
}

/** All that is said where no number is read. */
const WORDS: readonly [SearchFact, ...SearchFact[]] = [
  { type: 'trend', trend: 'steady' },
  { type: 'trend', trend: 'rising' },
  { type: 'trend', trend: 'falling' },
  { type: 'reading', reading: NO_SIGNAL },
  { type: 'reading', reading: SATURATED },
];

/** The ways a number goes wrong between the meter and the log. */
function misread(reading: Reading, { spec: { meter } }: BeamPair, rng: Rng): Reading {
  if (reading.kind !== 'value') return valueReading(between(rng, meter.lostAt, meter.saturatedAt));
  const { value } = reading;
  const ways = [
    digitsSwapped(value),
    teenForTy(value),
    value + (rng() < 0.5 ? -10 : 10) * (meter.max > 10 ? 1 : 0.1),
    Math.trunc(value / 10),
    value * 10,
  ].filter((v) => v !== value && v > meter.lostAt && v < meter.saturatedAt);
  const wrong = ways[Math.floor(rng() * ways.length)];
  return wrong === undefined ? NO_SIGNAL : valueReading(wrong);
}

function digitsSwapped(value: number): number {
  const text = String(Math.trunc(Math.abs(value)));
  const swapped = Number([...text].reverse().join('')) + (Math.abs(value) - Math.trunc(Math.abs(value)));
  return Number((Math.sign(value) * swapped).toFixed(6));
}

function teenForTy(value: number): number {
  const tens = Math.trunc(value / 10);
  if (value >= 13 && value <= 19) return (value - 10) * 10;
  return value % 10 === 0 && tens >= 3 && tens <= 9 ? tens + 10 : value;
}

/** When asked, people look again, and they know what they turned. */
function answer(crew: Crew, question: Question, rng: Rng): Done {
  const { about } = question;
  const at = crew.at + 2 * SAY_MS;
  if (question.kind === 'which-move') {
    const made = crew.slips.get(about);
    const facts: SearchFact[] = made
      ? [
          { type: 'retract', target: about, why: 'correction' },
          { type: 'move', ...made, replaces: about },
        ]
      : [{ type: 'confirm', target: about }];
    return say({ ...crew, at }, facts);
  }
  if (question.kind === 'is-it-so' && question.what !== 'reading') {
    return say({ ...crew, at }, [{ type: 'confirm', target: about }]);
  }
  const heard = crew.said?.seq === about ? crew.said.reading : undefined;
  const reading = readMeter(crew.pair, at, rng);
  if (heard && agree(heard, reading, crew.pair.spec.meter)) {
    return say({ ...crew, at }, [{ type: 'confirm', target: about }]);
  }
  return say({ ...crew, at }, [
    { type: 'retract', target: about, why: 'correction' },
    { type: 'reading', reading, replaces: about },
  ]);
}
