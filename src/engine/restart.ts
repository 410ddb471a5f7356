import { advice, type TimedAdvice } from './advice.ts';
import { atTheEnd } from './finish.ts';
import type { View } from './view.ts';

/** This many places with light and no proof: more than 99 of 100 careful searches need (measured by the bench). */
const MOST_PLACES = 50;

/** A search that takes this long rests on an unnoticed mistake: what is remembered is no longer trusted. */
export function beginAgain({ search, here }: View, now: number): TimedAdvice | undefined {
  const lit = search.samples.findIndex((s) => s.level.kind !== 'below');
  const places = lit < 0 ? 0 : search.samples.length - lit;
  if (places < MOST_PLACES || atTheEnd(search, now)) return undefined;
  return advice('begin-again', { kind: 're-aim' }, [here], { places });
}
