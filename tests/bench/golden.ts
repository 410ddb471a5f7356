import { AXES, type Axis, QUARTER } from '../../src/model/turns.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import type { Rng } from '../../src/simulator/rng.ts';
import type { Outcome } from './engine-run.ts';
import { GaveUp, Hands } from './hands.ts';
import { checkBothPeaks, findSignal } from './plain.ts';

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Golden-section search, one adjuster after the other (textbook): step out with growing steps until the reading
 * falls, then shrink the bracket by 0.618 a reading down to a quarter turn. It knows, at no cost, how far each gain
 * change shifted the readings.
 */
export function goldenSection(spec: PairSpec, rng: Rng): Outcome {
  const hands = new Hands(spec, rng);
  try {
    findSignal(hands);
    for (const axis of AXES) search(hands, axis);
    return hands.outcome(checkBothPeaks(hands));
  } catch (error) {
    if (error instanceof GaveUp) return hands.outcome(false);
    throw error;
  }
}

function search(hands: Hands, axis: Axis): void {
  const seen = new Map<number, number>();
  const valueAt = (place: number): number => {
    const known = seen.get(place);
    if (known !== undefined) return known;
    hands.turn(axis, place - hands.pair.turned[axis]);
    const value = levelAtFullGain(hands);
    seen.set(place, value);
    return value;
  };
  let [low, high] = bracket(valueAt, hands.pair.turned[axis]);
  while (high - low > QUARTER) {
    const inner = Math.max(1, Math.round((1 - GOLDEN) * (high - low)));
    const [left, right] = [low + inner, Math.max(low + inner + 1, high - inner)];
    if (right >= high) break;
    if (valueAt(left) < valueAt(right)) low = left;
    else high = right;
  }
  const best = [...seen].reduce((a, b) => (b[1] > a[1] ? b : a))[0];
  hands.turn(axis, best - hands.pair.turned[axis]);
}

/** Makes readings at different gains comparable. */
export function levelAtFullGain(hands: Hands): number {
  const db = hands.readUnflooded();
  return db + hands.pair.gainDb;
}

/** Three places with the middle one highest, stepping out by the golden ratio from a half turn. */
function bracket(valueAt: (place: number) => number, start: number): [number, number] {
  let [a, b] = [start, start + 4];
  if (valueAt(b) < valueAt(a)) [a, b] = [b, a];
  for (let step = b - a; ; ) {
    step = Math.round(step / GOLDEN);
    const c = b + step;
    if (valueAt(c) < valueAt(b)) return a < c ? [a, c] : [c, a];
    [a, b] = [b, c];
  }
}
