import type { Advice } from './advice.ts';
import { type AloneWay, isOnePhone, isPropped } from './alone.ts';
import type { Seat } from './facts.ts';

/**
 * Whether the person at this phone is to act on it. Alone, everything is for the phone that is carried, except what a
 * propped phone tells.
 */
export function isMine({ to, action }: Advice, seat: Seat, alone: AloneWay | undefined): boolean {
  if (isOnePhone(alone)) return true;
  if (isPropped(alone) && seat === 'emitter') return action.kind !== 'read';
  return to === 'both' || to === seat;
}
