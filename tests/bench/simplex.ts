import { nelderMead } from 'fmin/src/nelderMead.js';
import { AXES } from '../../src/model/turns.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import type { Outcome } from './engine-run.ts';
import { levelAtFullGain } from './golden.ts';
import { GaveUp, Hands } from './hands.ts';
import { checkBothPeaks, findSignal } from './plain.ts';

// fmin 0.0.4 does not declare a loop variable in the code that shrinks the simplex; strict mode forbids that.
Object.assign(globalThis, { i: 0 });

/** The value for no signal, dB: so low that the simplex is never drawn to it. */
const NOTHING_DB = -60;
const MOST_STEPS = 30;
/** The library makes its first simplex by stretching each coordinate, so the start must not be zero. */
const ORIGIN = 8;
const FIRST_STEP = 4;

/**
 * Nelder-Mead on both adjusters at once, from the general-purpose library fmin, with a first simplex of half a turn.
 * Places are rounded to eighths. It knows, at no cost, how far each gain change shifted the readings.
 */
export function simplex(spec: PairSpec, rng: Rng): Outcome {
  const hands = new Hands(spec, rng);
  const goTo = (place: readonly number[]) => {
    AXES.forEach((axis, i) => {
      hands.turn(axis, Math.round(place[i] ?? 0) - hands.pair.turned[axis]);
    });
  };
  try {
    findSignal(hands);
    const seen = new Map<string, number>();
    const lossAt = (place: number[]): number => {
      const key = place.map(Math.round).join();
      const known = seen.get(key);
      if (known !== undefined) return known;
      goTo(place);
      const level = levelAtFullGain(hands);
      const loss = level === Number.NEGATIVE_INFINITY ? -NOTHING_DB : -level;
      seen.set(key, loss);
      return loss;
    };
    const origin = AXES.map((axis) => hands.pair.turned[axis] - ORIGIN);
    const away = (x: readonly number[]) => x.map((value, i) => value + (origin[i] ?? 0));
    const { x } = nelderMead((x) => lossAt(away(x)), [ORIGIN, ORIGIN], {
      nonZeroDelta: 1 + FIRST_STEP / ORIGIN,
      maxIterations: MOST_STEPS,
      minErrorDelta: 0.02,
    });
    goTo(away(x));
    return hands.outcome(checkBothPeaks(hands));
  } catch (error) {
    if (error instanceof GaveUp) return hands.outcome(false);
    throw error;
  }
}
