import type { AdjusterProfile } from '../model/profile.ts';
import type { Eighths } from '../model/turns.ts';

/**
 * Lash: on reversal a screw turns some way before the emitter follows. Where the emitter points is
 * therefore kept for each lash the screw may have, so that the fit can tell which one it is.
 */
export const LASHES: readonly number[] = [0, 0.5, 1, 1.5, 2, 3, 4, 6, 8];

/** Pointing along one axis, eighths from the start, one entry for each of `LASHES`. */
export type Pointing = readonly number[];

export const START_POINTING: Pointing = LASHES.map(() => 0);

/** The screw now stands at `turned`; the emitter is dragged along once the slack is taken up. */
export function follow(pointing: Pointing, turned: Eighths): Pointing {
  return LASHES.map((lash, i) => {
    const half = lash / 2;
    return Math.max(turned - half, Math.min(turned + half, pointing[i] ?? turned));
  });
}

/** Where the screw has to go, coming from `turned`, for the emitter to point at `target`; not rounded. */
export function screwFor(target: number, pointing: number, lash: number): number {
  if (target === pointing) return pointing;
  return target > pointing ? target + lash / 2 : target - lash / 2;
}

/** Index in `LASHES` of the profile's figure. */
export function profileLash(adjusters: AdjusterProfile): number {
  const distance = (lash: number | undefined) => Math.abs((lash ?? 0) - adjusters.lash);
  return LASHES.reduce((best, lash, i) => (distance(lash) < distance(LASHES[best]) ? i : best), 0);
}
