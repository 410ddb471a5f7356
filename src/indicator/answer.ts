import type { Advice } from '../model/advice.ts';
import type { Seq } from '../model/ids.ts';
import type { Sensed } from './sense.ts';
import type { Sensing } from './watch.ts';

/** What this phone told last: for which order, when (ms, its clock), and the word. */
export interface Told {
  readonly for: Seq;
  readonly at: number;
  readonly word: Sensed;
}

/** What it told did not count, for example because it came a moment too soon: after so long it is told again. Milliseconds. */
export const AGAIN_MS = 6_000;

/** While nothing should change, a change is told unasked. */
const isWatchedOver = (action: Advice['action']): boolean =>
  action.kind === 'offer-accept' || (action.kind === 'hold' && action.reason === 'proving-steady');

/** Whether what is sensed is to be told now: once for each order to look, and when it changes where it should stand. */
export function isDue(
  sensing: Sensing,
  order: { readonly seq: Seq; readonly advice: Advice } | undefined,
  told: Told | undefined,
  now: number,
): sensing is Extract<Sensing, { kind: 'sensed' }> {
  if (sensing.kind !== 'sensed' || !order) return false;
  const { action } = order.advice;
  const isTold = told?.for === order.seq && now - told.at < AGAIN_MS;
  if (action.kind === 'read') return action.as === 'trend' && !isTold;
  return isWatchedOver(action) && sensing.word !== 'steady' && !isTold;
}
