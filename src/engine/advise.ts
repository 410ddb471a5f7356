import type { Advice } from '../model/advice.ts';
import { advice, type TimedAdvice } from './advice.ts';
import { locate, prove, returnToPeak } from './aim.ts';
import { adviseByTrends } from './by-trends.ts';
import { doubt, readAgain, readTwice } from './doubt.ts';
import { forgottenLight, secondPeak } from './explore.ts';
import { blockingCheck, finished, holdSteady, offer, reflected } from './finish.ts';
import { plainSearch } from './floor.ts';
import { flooded, outOfBand, ownGainAtPeak } from './gain.ts';
import { gainAtPeak, peakFloods } from './gain-at-peak.ts';
import { hindered } from './hindered.ts';
import { aimFirst, nothingThere, recoverSignal } from './hunt.ts';
import { lostOnReturn } from './loss.ts';
import { beginAgain, endless } from './restart.ts';
import type { Search } from './search.ts';
import { look, type View } from './view.ts';
import { coveredPath, unsettled } from './waiting.ts';
import { beforeThePeak, lostOnTheWay, walkOn } from './walk.ts';

/** Asked in this order; the first rule with advice wins. */
const STEPS: readonly ((view: View, now: number) => TimedAdvice | undefined)[] = [
  finished,
  coveredPath,
  reflected,
  unsettled,
  aimFirst,
  doubt,
  readTwice,
  endless,
  nothingThere,
  recoverSignal,
  flooded,
  peakFloods,
  beginAgain,
  locate,
  secondPeak,
  gainAtPeak,
  prove,
  forgottenLight,
  returnToPeak,
  outOfBand,
  hindered,
  blockingCheck,
  holdSteady,
  offer,
];

/** The same where no model of the beam is used. */
const PLAIN_STEPS: typeof STEPS = [
  finished,
  coveredPath,
  reflected,
  unsettled,
  readAgain,
  lostOnReturn,
  endless,
  nothingThere,
  flooded,
  plainSearch,
  outOfBand,
  hindered,
  blockingCheck,
  holdSteady,
  offer,
];

/** The same for a person who walks to the meter: every number is read twice there, and each place is chosen for its trip. */
const WALKING_STEPS: typeof STEPS = [
  finished,
  coveredPath,
  reflected,
  underWay,
  unsettled,
  aimFirst,
  readAgain,
  doubt,
  endless,
  nothingThere,
  lostOnTheWay,
  flooded,
  beforeThePeak,
  beginAgain,
  walkOn,
  secondPeak,
  ownGainAtPeak,
  forgottenLight,
  outOfBand,
  hindered,
  blockingCheck,
  holdSteady,
  offer,
];

/** What may send a person to another place; the other rules keep them where they are. */
const PLACES: typeof STEPS = [nothingThere, lostOnTheWay, beginAgain, walkOn, secondPeak, forgottenLight];

const firstOf = (steps: typeof STEPS, view: View, now: number): TimedAdvice | undefined => {
  for (const step of steps) {
    const given = step(view, now);
    if (given) return given;
  }
  return undefined;
};

/**
 * On the way to the next place: it was chosen with what was known at the meter, so the same rule goes on until both
 * adjusters are there. At the peak the card goes up before the meter is read.
 */
function underWay({ search, here }: View, now: number): TimedAdvice | undefined {
  const left = search.walk?.left;
  if (!left || here || search.touched !== 'move' || search.stay.run.length > 0) return undefined;
  const then = look(left);
  const planned = firstOf(PLACES, then, now);
  if (planned?.advice.action.kind !== 'turn') return undefined;
  const { turned, pointing, lastTurn, limits, stuck } = search;
  const onTheWay = { ...then, search: { ...left, turned, pointing, lastTurn, limits, stuck } };
  const next = firstOf(PLACES, onTheWay, now);
  if (next?.advice.rule === planned.advice.rule && next.advice.action.kind === 'turn') return next;
  const isAtPeak = planned.advice.rule === 'return-to-peak' && search.blocking.seqs.length === 0;
  return isAtPeak ? advice('blocking-check', { kind: 'block' }, [then.here]) : undefined;
}

/**
 * The next thing to do, and when to ask again if nothing happens. Depends only on the events and the time, so
 * that a replay gives the same advice.
 */
export function advise(search: Search, now: number): { advice: Advice; wakeAt?: number } {
  if (search.looks) return adviseByTrends(search, now);
  const view = look(search);
  const steps = search.floor ? PLAIN_STEPS : search.walk ? WALKING_STEPS : STEPS;
  return firstOf(steps, view, now) ?? advice('read', { kind: 'read' }, [view.here]);
}
