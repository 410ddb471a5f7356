import type { Seq } from '../model/ids.ts';
import type { Counted } from '../model/placed.ts';
import type { SensorLook } from '../model/sensor.ts';
import { countedOf, type JobState } from './state.ts';

/** A word for what the light does that counts: what the next one is held against. */
export interface LastLook {
  /** The entry of the words. */
  readonly from: Seq | undefined;
  readonly seen: 'nothing' | 'too-strong' | 'light';
}

/** The last one with nothing in the beam: what is seen behind the card is held against nothing. */
export function lastLook(counted: readonly Counted[]): LastLook | undefined {
  let isClear = true;
  let last: LastLook | undefined;
  for (const fact of counted) {
    if (fact.type === 'path') isClear = fact.state === 'clear';
    const seen = isClear ? seenIn(fact) : undefined;
    if (seen) last = { from: 'from' in fact ? fact.from : undefined, seen };
  }
  return last;
}

function seenIn(fact: Counted): LastLook['seen'] | undefined {
  if (fact.type === 'trend') return fact.trend === 'wandering' ? undefined : 'light';
  if (fact.type !== 'reading') return undefined;
  if (fact.reading.kind === 'none') return 'nothing';
  return fact.reading.kind === 'saturated' ? 'too-strong' : undefined;
}

/** Whether a phone held its word against the last one that counts, by what it is taught now, or against none. */
export function isHeldRight({ against }: SensorLook, state: JobState): boolean {
  const { taughtAt } = state;
  if (taughtAt === undefined) return false;
  return against === undefined || (against > taughtAt && against === lastLook(countedOf(state))?.from);
}
