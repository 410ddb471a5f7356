import type { Action } from '../model/advice.ts';
import type { Seq } from '../model/ids.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Watched } from './watch.ts';

/** What the job asks for now: the instruction that is current on this phone. */
export interface Order {
  seq: Seq;
  kind: Action['kind'];
}

/** The number that this phone gave last, and the order that it was for. */
export interface Given {
  value: number;
  for: Seq;
}

/** While nothing should change, a change is told unasked. */
const WATCHED_OVER: ReadonlySet<Action['kind']> = new Set(['hold', 'offer-accept']);

/** Whether the settled number is to be told now: once for each order to read, and when it changes where it should stand. */
export function isDue(
  watched: Watched,
  order: Order | undefined,
  given: Given | undefined,
  { tolerance }: Pick<MeterProfile, 'tolerance'>,
): watched is Extract<Watched, { kind: 'settled' }> {
  if (watched.kind !== 'settled' || !order) return false;
  if (order.kind === 'read') return given?.for !== order.seq;
  if (!WATCHED_OVER.has(order.kind) || !given) return false;
  return Math.abs(watched.value - given.value) > tolerance + 1e-9;
}
