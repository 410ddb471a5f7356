import type { AdjusterProfile } from '../model/profile.ts';
import type { Eighths } from '../model/turns.ts';

/**
 * Backlash: on reversal a screw turns some way before the emitter follows. Where the emitter points is
 * therefore kept for each backlash the screw may have, so that the fit can tell which one it is.
 */
export const BACKLASHES: readonly number[] = [0, 0.5, 1, 1.5, 2, 3, 4, 6, 8];

/** Pointing along one axis, eighths from the start, one entry for each of `BACKLASHES`. */
export type Pointing = readonly number[];

export const START_POINTING: Pointing = BACKLASHES.map(() => 0);

/** The screw now stands at `turned`; the emitter is dragged along once the slack is taken up. */
export function follow(pointing: Pointing, turned: Eighths): Pointing {
  return BACKLASHES.map((backlash, i) => {
    const half = backlash / 2;
    return Math.max(turned - half, Math.min(turned + half, pointing[i] ?? turned));
  });
}

/** Where the screw has to go, coming from `turned`, for the emitter to point at `target`; not rounded. */
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
