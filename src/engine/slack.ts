import type { AdjusterProfile } from '../model/profile.ts';
import type { Eighths } from '../model/turns.ts';

/**
 * Backlash: after a reversal a screw turns some way before the emitter follows. So the pointing of the
 * emitter is kept for each backlash that the screw may have, and the fit can find the right one.
 */
export const BACKLASHES: readonly number[] = [0, 0.5, 1, 1.5, 2, 3, 4, 6, 8];

/** Pointing along one axis, eighths from the start, one entry for each of `BACKLASHES`. */
export type Pointing = readonly number[];

export const START_POINTING: Pointing = BACKLASHES.map(() => 0);

/** The screw is now at `turned`; the emitter follows once the slack is taken up. */
export function follow(pointing: Pointing, turned: Eighths): Pointing {
  return BACKLASHES.map((backlash, i) => {
    const half = backlash / 2;
    return Math.max(turned - half, Math.min(turned + half, pointing[i] ?? turned));
  });
}

/** Where the screw must go, from `turned`, so that the emitter points at `target`; not rounded. */
export function screwFor(target: number, pointing: number, backlash: number): number {
  if (target === pointing) return pointing;
  return target > pointing ? target + backlash / 2 : target - backlash / 2;
}

/** Index in `BACKLASHES` of the profile's figure. */
export function profileBacklash(adjusters: AdjusterProfile): number {
  const distance = (backlash: number | undefined) => Math.abs((backlash ?? 0) - adjusters.backlash);
  return BACKLASHES.reduce(
    (best, backlash, i) => (distance(backlash) < distance(BACKLASHES[best]) ? i : best),
    0,
  );
}
