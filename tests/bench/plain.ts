import { toDb } from '../../src/engine/level.ts';
import { AXES, type Axis, EIGHTH, QUARTER } from '../../src/model/turns.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import type { Outcome } from './engine-run.ts';
import { GaveUp, Hands } from './hands.ts';

/**
 * Plain practice (common practice, no source). Full gain; one adjuster at a time, in quarter turns. If the first turn
 * lowers the reading: a quarter back, then the other way. After the peak: an eighth back, or back until the highest
 * reading returns. If flooded: gain to mid-band, and go on. Both peaks are checked again at the final gain.
 */
export function plainPractice(spec: PairSpec, rng: Rng): Outcome {
  const hands = new Hands(spec, rng);
  try {
    findSignal(hands);
    for (const axis of AXES) peak(hands, axis);
    return hands.outcome(checkBothPeaks(hands));
  } catch (error) {
    if (error instanceof GaveUp) return hands.outcome(false);
    throw error;
  }
}

export function findSignal(hands: Hands): void {
  while (hands.readUnflooded() === Number.NEGATIVE_INFINITY) hands.reAim();
}

/** Peaks one adjuster. */
function peak(hands: Hands, axis: Axis): void {
  if (climb(hands, axis, 1) === 'fell-at-once') climb(hands, axis, -1);
}

function climb(hands: Hands, axis: Axis, way: 1 | -1): 'peaked' | 'fell-at-once' {
  let best = hands.readUnflooded();
  for (let steps = 0; ; steps++) {
    hands.turn(axis, way * QUARTER);
    let db = hands.read();
    if (db === Number.POSITIVE_INFINITY) {
      db = hands.readUnflooded();
      best = db;
    } else if (db < best - hands.tolerance(best)) {
      return backOff(hands, axis, way, best, steps);
    }
    best = Math.max(best, db);
  }
}

/** The reading fell: back to where it was highest. */
function backOff(
  hands: Hands,
  axis: Axis,
  way: 1 | -1,
  best: number,
  steps: number,
): 'peaked' | 'fell-at-once' {
  if (steps === 0) {
    hands.turn(axis, -way * QUARTER);
    hands.read();
    return way === 1 ? 'fell-at-once' : 'peaked';
  }
  for (let tries = 0; tries < 4; tries++) {
    hands.turn(axis, -way * EIGHTH);
    if (hands.read() >= best - hands.tolerance(best)) break;
  }
  return 'peaked';
}

/** Gain to the middle of the band, then each peak again: a lower reading a quarter or more to either side. */
export function checkBothPeaks(hands: Hands): boolean {
  for (let round = 0; round < 4; round++) {
    toBand(hands);
    if (AXES.every((axis) => checkPeak(hands, axis)) && isInBand(hands)) return true;
  }
  return false;
}

function isInBand(hands: Hands): boolean {
  const { meter } = hands.spec;
  const db = hands.read();
  return db >= toDb(meter.bandLow, meter) && db <= toDb(meter.bandHigh, meter);
}

function toBand(hands: Hands): void {
  if (!isInBand(hands)) hands.gainToMidBand();
}

/** True when both sides read lower. Else the higher place is kept, and the check must be made again. */
function checkPeak(hands: Hands, axis: Axis): boolean {
  const centre = hands.read();
  const out: number[] = [];
  for (const way of [1, -1] as const) {
    let gone = 0;
    for (;;) {
      hands.turn(axis, way * QUARTER);
      gone += way * QUARTER;
      const db = hands.read();
      if (db > centre + hands.tolerance(centre)) return false;
      if (db < centre - hands.tolerance(centre)) break;
    }
    out.push(gone);
    hands.turn(axis, -gone);
  }
  hands.read();
  return true;
}
