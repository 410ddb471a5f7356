import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Uniform numbers in [0, 1). Always passed in, so that a printed seed repeats a case exactly. */
export type Rng = () => number;

export function createRng(seed: number): Rng {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}

export const between = (rng: Rng, low: number, high: number): number => low + (high - low) * rng();

/** Uniform in the logarithm: as many between 1 and 2 as between 10 and 20. */
export const logBetween = (rng: Rng, low: number, high: number): number =>
  low * Math.exp(rng() * Math.log(high / low));

export const chance = (rng: Rng, probability: number): boolean => rng() < probability;

export function pick<T>(rng: Rng, options: readonly [T, ...T[]]): T {
  return options[Math.floor(rng() * options.length)] ?? options[0];
}

/** A standard normal number, Box-Muller. */
export const normal = (rng: Rng): number =>
  Math.sqrt(-2 * Math.log(1 - rng())) * Math.cos(2 * Math.PI * rng());
