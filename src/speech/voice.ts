import { LEAST_SHIFT, type Voice } from '../model/voice.ts';
import { belief, odds, probability } from './belief.ts';
import type { Weighing } from './hear.ts';
import { stretches } from './pieces.ts';
import { TO_READ } from './to-read.ts';
import { meaningOf } from './weigh.ts';

/** One digit of a reading: the probability with which the likeliest meaning was believed, and whether it was the digit. */
export interface ReadDigit {
  readonly believed: number;
  readonly right: boolean;
}

/** With fewer right it was not these ten digits in their order, or nothing can be learnt from them. Ours, no source. */
const ENOUGH_RIGHT = 6;
/** How far voices lie apart in how well they are heard: the variance of their shifts, log odds squared. From `npm run bench:speech-folds`. */
const SPREAD = 1;

/** What was heard of one digit of a reading. */
export const readDigit = ({ weighed }: Weighing, digit: string, believe = belief): ReadDigit => ({
  believed: weighed ? believe(weighed) : 0,
  right: weighed?.sentences[0]?.meaning === meaningOf(digit),
});

/** The sounds of the ten digits, in order. Undefined where there are not ten, each after a pause. */
export function tenOf(sound: Float32Array): Float32Array[] | undefined {
  const found = stretches(sound);
  return found.length === TO_READ.length ? found.map(({ from, to }) => sound.slice(from, to)) : undefined;
}

/**
 * The shift that makes what was heard of the ten digits likeliest, if shifts of voices are spread about nothing as a normal distribution, and 0
 * where that would raise what is believed. Undefined where this was not the reading.
 */
export function voiceOf(digits: readonly ReadDigit[], spread = SPREAD): Voice | undefined {
  if (digits.length !== TO_READ.length) return undefined;
  if (digits.filter(({ right }) => right).length < ENOUGH_RIGHT) return undefined;
  // The slope of the log probability falls all the way, so its zero is found by halving.
  const slope = (shift: number): number =>
    digits.reduce(
      (sum, { believed, right }) => sum + (right ? 1 : 0) - probability(odds(believed) + shift),
      -shift / spread,
    );
  if (slope(0) >= 0) return { shift: 0 };
  let [low, high] = [LEAST_SHIFT, 0];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (slope(middle) > 0) low = middle;
    else high = middle;
  }
  return { shift: Number(((low + high) / 2).toFixed(3)) };
}
