import type { Voice } from '../model/voice.ts';
import type { Weighed } from './weigh.ts';

/**
 * The probability is computed from: a constant, the lead, the strain, the strain for each letter, shortness,
 * blur.
 */
export function features({ share, strain, letters, blur }: Weighed): number[] {
  const lead = Math.log(Math.max(1e-4, share) / Math.max(1e-4, 1 - share));
  return [
    1,
    lead,
    Math.min(strain, 40),
    Math.min(strain / Math.max(1, letters), 4),
    1 / Math.max(1, letters),
    Math.sqrt(Math.min(blur, 4)),
  ];
}

/** Weights of the features, fitted by `tests/bench/speech/fit.ts`. */
const WEIGHTS: readonly number[] = [4.076, 0.151, -0.152, -1.381, -2.759, -3.16];

export const probability = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds));
/** Nothing is believed quite, and nothing not at all. */
export const odds = (p: number): number => Math.log(Math.max(p, 1e-4) / Math.max(1 - p, 1e-4));

/** A curve of belief from the weights of the features. */
export const curveOf =
  (weights: readonly number[]) =>
  (weighed: Weighed): number =>
    probability(features(weighed).reduce((total, value, i) => total + value * (weights[i] ?? 0), 0));

/** Probability that the likeliest meaning is right. */
export const belief = curveOf(WEIGHTS);

/** What is believed of this voice. */
export const loweredBy = ({ shift }: Voice, believed: number): number =>
  shift < 0 ? probability(odds(believed) + shift) : believed;
