import { type Clock, systemClock } from '../process/clock.ts';

/** A clock that runs `speed` times as fast as real time, from now on: an hour of a demo in minutes. */
export function hurriedClock(speed: number): Clock {
  const began = systemClock.now();
  return {
    now: () => Math.round(began + (systemClock.now() - began) * speed),
    after: (ms, action) => systemClock.after(ms / speed, action),
  };
}
