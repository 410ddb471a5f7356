import type { Seq } from '../model/ids.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { CannotWhy } from '../model/reports.ts';
import { type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import { missingForAccept } from './accept.ts';
import { DARK_DB, isStillDark } from './behind.ts';
import { inGain } from './bridged.ts';
import { REMEMBERED } from './came-back.ts';
import { mustRestart } from './doubt.ts';
import { counting, rewrites, type SearchEvent } from './history.ts';
import { missingToKeep } from './kept.ts';
import { isLost, toLevel } from './level.ts';
import { type Look, maySee, type Seen } from './looks.ts';
import { withLook } from './proven.ts';
import { begun } from './rejected.ts';
import type { Sample, Turn } from './sample.ts';
import { begunAs, NONE_STUCK, type Search, sampleHere, startSearch } from './search.ts';
import { follow } from './slack.ts';
import { heard, newStay, type Stay, settled } from './stay.ts';

/** The fit and the brackets use at most this many settled readings, so that a decision has a limited cost. */
const SAMPLES_KEPT = 60;
const CONFIRMED_KEPT = 40;

/** The search after one more event. Pure; takes any event in any order and never throws. */
export function observe(search: Search, event: SearchEvent): Search {
  const history = { event, before: search.history };
  const next = rewrites(event)
    ? counting(history).reduce(apply, startSearch(search.meter, search.adjusters, begunAs(search)))
    : apply(search, event);
  return { ...next, history };
}

/** Ends the stay: what it settled on becomes a sample, and a new stay begins. */
function leave(search: Search, at: number): Search {
  const sample = sampleHere(search);
  const samples = sample ? [...search.samples, sample].slice(-SAMPLES_KEPT) : search.samples;
  const walk = search.walk && sample ? { left: { ...search, walk: { left: undefined } } } : search.walk;
  return { ...search, samples, walk, stay: newStay(at) };
}

const GAIN_WAY = { full: 1, raised: 1, lowered: -1, set: 0 } as const;

const undone = { blocking: { seqs: [] }, accepted: undefined };

function apply(search: Search, { seq, at, fact }: SearchEvent): Search {
  switch (fact.type) {
    case 'reading': {
      if (search.looks && fact.reading.kind !== 'value')
        return seen(search, fact.reading.kind === 'none' ? 'nothing' : 'too-strong', seq, at);
      const stay = heard(search.stay, { seq, at, reading: fact.reading }, search.meter);
      if (search.path === 'clear') {
        const checks = isLost(fact.reading, search.meter) ? search.checks : 0;
        const next = { ...search, stay, checks };
        // A corrected reading was read twice.
        return fact.replaces === undefined ? next : sure(next, seq);
      }
      const dark = behindCard(search, stay);
      const seqs = [...search.blocking.seqs, seq];
      const { before } = search.blocking;
      const { turned, pointing, turns, lastMove: move, gain } = search;
      const shown = search.walk && settled(stay, search.meter);
      const behind = shown && { ...shown, turned, pointing, turns, move, gain };
      const blocking = {
        seqs,
        ...(before && { before }),
        ...(dark !== undefined && { dark }),
        ...(behind && { behind }),
      };
      return { ...search, stay, blocking };
    }
    case 'trend':
      if (search.looks) {
        if (fact.trend !== 'wandering') return seen(search, fact.trend, seq, at, fact.first);
        return { ...search, wavered: search.wavered + 1, stay: newStay(at) };
      }
      // "Steady" confirms what was read; "rising" or "falling" says that it has not settled yet.
      return { ...search, stay: fact.trend === 'steady' ? { ...search.stay, since: 0 } : newStay(at) };
    case 'move': {
      const turned = { ...search.turned, [fact.axis]: search.turned[fact.axis] + fact.eighths };
      const pointing = {
        ...search.pointing,
        [fact.axis]: follow(search.pointing[fact.axis], turned[fact.axis]),
      };
      const way = Math.sign(fact.eighths) as -1 | 0 | 1;
      const turn = { axis: fact.axis, eighths: fact.eighths };
      return {
        ...leave(search, at),
        ...undone,
        ...(isStillDark(search, turned) && { blocking: search.blocking }),
        turned,
        pointing,
        stuck: { ...search.stuck, [fact.axis]: false },
        lastTurn: way === 0 ? search.lastTurn : { ...search.lastTurn, [fact.axis]: way },
        axis: fact.axis,
        moves: search.moves + 1,
        turns: { ...search.turns, [fact.axis]: search.turns[fact.axis] + 1 },
        lastMove: { seq, turn },
        made: [{ seq, turn, corrected: fact.replaces !== undefined }, ...search.made].slice(0, REMEMBERED),
        touched: 'move',
      };
    }
    case 'gain':
      return {
        ...leave(search, at),
        ...undone,
        // What was dark behind the card is judged anew at the new gain.
        ...(search.blocking.behind && { blocking: search.blocking }),
        gain: search.gain + 1,
        gainFull: fact.change === 'full',
        gainWay: GAIN_WAY[fact.change],
        gainStuck: 0,
        touched: 'gain',
      };
    case 'path': {
      const left = leave(search, at);
      if (fact.state === 'clear') return { ...left, path: 'clear', touched: 'other' };
      const before = sampleHere(search) ?? search.blocking.before;
      const blocking = { ...(before ? { before } : {}), seqs: [seq] };
      return { ...left, path: fact.state, blocking };
    }
    case 're-aimed':
      return { ...startAgain(search, seq, at), ...begun(search), aims: search.aims + 1 };
    case 'disturbed':
      // Zero is no longer where the eye aimed.
      return {
        ...startAgain(search, seq, at),
        stuck: search.stuck,
        restarts: search.restarts + 1,
        floor: search.floor && { since: seq },
      };
    case 'choice':
      return { ...search, axis: fact.axis };
    case 'cannot':
      if (fact.turn) return hindered(search, fact.why, fact.turn);
      if (fact.gain) return { ...search, gainStuck: fact.gain === 'lower' ? -1 : 1 };
      return isOfFirstAim(search, fact.order) ? { ...search, unaimed: true } : search;
    case 'checked':
      // Somebody tried to free it, so it is asked for again.
      return {
        ...search,
        checks: search.checks + 1,
        stuck: NONE_STUCK,
        gainStuck: 0,
        wavered: 0,
        looked: { moves: search.moves, behindCard: 0 },
        stay: newStay(at),
        // What disturbed the plain search may be gone: it begins anew, and nothing read before counts.
        ...(search.floor ? { floor: { since: seq } } : {}),
      };
    case 'confirm':
      return sure(search, fact.target);
    case 'accept': {
      const missing = fact.kept ? missingToKeep(search, fact.kept, at) : missingForAccept(search, at);
      const reason = fact.override?.reason;
      return {
        ...search,
        accepted: {
          seq,
          reading: fact.reading,
          backed: missing.length === 0 && reason === undefined,
          missing,
          ...(reason === undefined ? {} : { reason }),
        },
      };
    }
    case 'item':
      // Hands were on the windows: what was settled before says nothing of now.
      return fact.item === 'optics-cleaned' && fact.done ? { ...search, stay: newStay(at) } : search;
    case 'panel':
    case 'retract':
      return search;
  }
}

/**
 * The light was looked at: before it has settled after the hands were off, it tells nothing yet. Behind a cover only the dark counts at once: light that stays must be seen twice, for it is
 * a reflection. Once the path is free again, the light must be as it was before it was covered.
 */
function seen(before: Search, what: Seen, seq: Seq, at: number, first?: true): Search {
  if (!maySee(before, at)) return before;
  const search = { ...before, wavered: 0 };
  const looks = search.looks ?? [];
  if (search.path !== 'clear') {
    const { seqs } = search.blocking;
    const blocking = { ...search.blocking, seqs: [...seqs, seq] };
    if (what === 'nothing') return { ...search, blocking: { ...blocking, dark: true } };
    return { ...search, blocking: seqs.length < 2 ? blocking : { ...blocking, dark: false } };
  }
  const { turned, pointing, gain } = search;
  const look: Look = { seq, at, seen: what, turned, pointing, gain, ...(first && { first }) };
  const isBack = search.blocking.seqs.length === 0 || (what === 'steady' && !first);
  return {
    ...search,
    looks: withLook(looks, look),
    checks: what === 'nothing' ? search.checks : 0,
    ...(isBack ? {} : { blocking: { seqs: [] } }),
  };
}

/**
 * An entry is confirmed. If it still does not fit, and the reading before it did not fit either, what was
 * known before the two is no longer valid: one may be light from elsewhere, two are a mistake.
 */
function sure(search: Search, target: Seq): Search {
  const confirmed = [...search.confirmed, target].slice(-CONFIRMED_KEPT);
  const seen = { ...search, confirmed };
  if (search.floor || !mustRestart(seen)) return seen;
  const next = { ...seen, oddities: search.oddities + 1 };
  const before = search.samples[search.samples.length - 1];
  const isSecond = search.odd !== undefined && before?.seqs.includes(search.odd);
  if (!isSecond) return { ...next, odd: target };
  return { ...next, odd: undefined, restartedAt: before?.seqs[0] ?? target, restarts: search.restarts + 1 };
}

/**
 * Is the light gone behind the card? A person who walks puts it up before the place was read without it: then the brightest
 * reading stands for it, which is no brighter than this place, so that dark is dark, and light left behind is not known to be
 * too much.
 */
function behindCard(search: Search, stay: Stay): boolean | undefined {
  const { before } = search.blocking;
  if (before || !search.walk) return darkness(stay, before, search.meter);
  return darkness(stay, brightest(search), search.meter) || undefined;
}

const brightest = ({ samples, gain }: Search): Sample | undefined =>
  inGain(samples, gain).reduce<Sample | undefined>(
    (best, s) =>
      s.level.kind === 'level' && s.level.db > (best?.level.db ?? Number.NEGATIVE_INFINITY) ? s : best,
    undefined,
  );

/**
 * No signal is dark at once. A number counts, as dark or as light that stayed, only if it was read twice: one
 * wrong reading must not hide a reflection.
 */
function darkness(stay: Stay, before: Sample | undefined, meter: MeterProfile): boolean | undefined {
  const last = stay.run[stay.run.length - 1];
  if (!last || isLost(last.reading, meter)) return true;
  if (stay.run.length < 2 || settled(stay, meter) === undefined) return undefined;
  const left = toLevel(last.reading, meter);
  return before?.level.kind === 'level' && left.kind === 'level' && before.level.db - left.db > DARK_DB;
}

/** The emitter is no longer where it was: nothing read before counts, but what was done, set and confirmed is not forgotten. */
const startAgain = (search: Search, seq: Seq, at: number): Search => ({
  ...startSearch(search.meter, search.adjusters, begunAs(search)),
  moves: search.moves,
  gain: search.gain,
  gainFull: search.gainFull,
  gainWay: search.gainWay,
  gainStuck: search.gainStuck,
  stay: newStay(at),
  aims: search.aims,
  unaimed: search.unaimed,
  checks: search.checks,
  confirmed: search.confirmed,
  restartedAt: seq,
  looked: {
    ...search.looked,
    behindCard: search.looked.behindCard + (search.blocking.dark === false ? 1 : 0),
  },
  touched: 'other',
});

/** Nobody can aim, and nothing was turned yet. Older logs do not say what could not be done: then it was the aim. */
const isOfFirstAim = ({ moves, aims }: Search, order: string | undefined): boolean =>
  moves === 0 && aims === 0 && (order === undefined || order === 're-aim');

/** A screw at its end goes no further that way; one that is stuck or out of reach goes no way at all. */
function hindered(search: Search, why: CannotWhy, { axis, eighths }: Turn): Search {
  return why === 'end-of-travel'
    ? { ...search, limits: limited(search, axis, eighths) }
    : { ...search, stuck: { ...search.stuck, [axis]: true }, axis: otherAxis(axis) };
}

/** A screw that does not turn further in one direction is at its limit. */
function limited(search: Search, axis: Axis, eighths: Eighths): Search['limits'] {
  const side = eighths > 0 ? 'high' : 'low';
  return { ...search.limits, [axis]: { ...search.limits[axis], [side]: search.turned[axis] } };
}
