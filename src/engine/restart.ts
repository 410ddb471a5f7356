import { advice, type TimedAdvice } from './advice.ts';
import { atTheEnd } from './finish.ts';
import { isRejected, isUnproven, litPlaces } from './rejected.ts';
import { CAUSES } from './rules.ts';
import type { Sample } from './sample.ts';
import type { Search } from './search.ts';
import type { View } from './view.ts';

/** A search that takes this long rests on an unnoticed mistake, or on a beam that is none of ours: aim again. */
export function beginAgain({ search, here }: View, now: number): TimedAdvice | undefined {
  if (!(isUnproven(search) || isRejected(search)) || atTheEnd(search, now)) return undefined;
  return advice('begin-again', { kind: 're-aim' }, [here], { places: litPlaces(search) });
}

/**
 * A search that has not ended by then is stopped, and says what may be wrong: three times what plain practice needs in
 * 95 of 100 (measured by the bench).
 */
const MOST_TURNS = 125;

/** Who walks turns twice as often: each place is reached clockwise. */
const mostTurns = ({ walk }: Search): number => (walk ? 2 * MOST_TURNS : MOST_TURNS);

/** Too many turns since it began, or since causes were last looked into. */
export function endless({ search, here }: View, now: number): TimedAdvice | undefined {
  if (!here || search.moves - search.looked.moves < mostTurns(search) || atTheEnd(search, now))
    return undefined;
  return noSinglePeak(here);
}

export const noSinglePeak = (here: Sample): TimedAdvice =>
  advice('no-single-peak', { kind: 'check', causes: [...CAUSES.noPeak] }, [here]);
