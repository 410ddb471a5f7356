import { type Clock, systemClock } from '../process/clock.ts';

/** A clock that runs `speed` times as fast as the wall's, from now on: a demo's hour in minutes. */
export function hurriedClock(speed: number): Clock {
  const began = systemClock.now();
  return {
    now: () => Math.round(began + (systemClock.now() - began) * speed),
    after: (ms, action) => systemClock.after(ms / speed, action),
  };
}
