import type { Reading } from '../model/reading.ts';
import { type BeamPair, readMeter } from '../simulator/pair.ts';
import { createRng } from '../simulator/rng.ts';
import type { Hall } from './hall.ts';

/** What the simulated meter shows, noise and all. The same at the same moment, on every phone. `now`: ms since 1970. */
export const shownBy = (hall: Hall, now: number): Reading => shownAt(hall.pair, hall.from, now);

/** A needle is drawn anew so often. */
export const MOVES_MS = 250;

const shownAt = (pair: BeamPair, from: number, now: number): Reading => {
  const step = Math.floor((now - from) / MOVES_MS);
  return readMeter(pair, step * MOVES_MS, createRng(step));
};

/** Every reading that the meter showed between two times, with the pairs as they were. Times in ms since 1970. */
export function shownBetween(
  pairs: readonly { readonly at: number; readonly pair: BeamPair }[],
  { from, since, until }: { from: number; since: number; until: number },
): Reading[] {
  const shown: Reading[] = [];
  for (let at = since; at <= until; at += MOVES_MS) {
    const there = pairs.findLast((each) => each.at <= at) ?? pairs[0];
    if (there) shown.push(shownAt(there.pair, from, at));
  }
  return shown;
}
