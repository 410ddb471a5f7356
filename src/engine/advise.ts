import type { Advice } from '../model/advice.ts';
import { advice, type TimedAdvice } from './advice.ts';
import { locate, prove, returnToPeak } from './aim.ts';
import { adviseByTrends } from './by-trends.ts';
import { doubt, readAgain, readTwice } from './doubt.ts';
import { forgottenLight, secondPeak } from './explore.ts';
import { blockingCheck, finished, holdSteady, offer, reflected } from './finish.ts';
import { plainSearch } from './floor.ts';
import { flooded, outOfBand, ownGainAtPeak, peakOutOfBand } from './gain.ts';
import { hindered } from './hindered.ts';
import { aimFirst, nothingThere, recoverSignal } from './hunt.ts';
import { beginAgain, endless } from './restart.ts';
import type { Search } from './search.ts';
import { look, type View } from './view.ts';
import { coveredPath, unsettled } from './waiting.ts';

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
  peakOutOfBand,
  beginAgain,
  locate,
  secondPeak,
  ownGainAtPeak,
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

/**
 * The next thing to do, and when to ask again if nothing happens. Depends only on the events and the time, so
 * that a replay gives the same advice.
 */
export function advise(search: Search, now: number): { advice: Advice; wakeAt?: number } {
  if (search.looks) return adviseByTrends(search, now);
  const view = look(search);
  for (const step of search.floor ? PLAIN_STEPS : STEPS) {
    const given = step(view, now);
    if (given) return given;
  }
  return advice('read', { kind: 'read' }, [view.here]);
}
