import { advice, type TimedAdvice } from './advice.ts';
import { atTheEnd } from './finish.ts';
import { isRejected, isUnproven, litPlaces } from './rejected.ts';
import type { View } from './view.ts';

/** A search that takes this long rests on an unnoticed mistake, or on a beam that is none of ours: aim again. */
export function beginAgain({ search, here }: View, now: number): TimedAdvice | undefined {
  if (!(isUnproven(search) || isRejected(search)) || atTheEnd(search, now)) return undefined;
  return advice('begin-again', { kind: 're-aim' }, [here], { places: litPlaces(search) });
}
