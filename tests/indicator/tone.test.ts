import { describe, expect, it } from 'vitest';
import { amplitudeAt, toneIn } from '../../src/indicator/tone.ts';
import { createRng, normal } from '../../src/simulator/rng.ts';

const RATE = 16_000;
/** 200 ms. */
const N = 3_200;
const dbOf = (amplitude: number): number => 20 * Math.log10(amplitude);

const sine = (frequency: number, amplitude: number, n = N, phase = 0.7): number[] =>
  Array.from({ length: n }, (_, i) => amplitude * Math.sin((2 * Math.PI * frequency * i) / RATE + phase));
const noise = (sd: number, seed: number): number[] => {
  const rng = createRng(seed);
  return Array.from({ length: N }, () => sd * normal(rng));
};
const sum = (...sounds: number[][]): number[] =>
  Array.from({ length: N }, (_, i) => sounds.reduce((all, sound) => all + (sound[i] ?? 0), 0));

/** The definition of the discrete Fourier transform at one frequency, with a Hann window, and nothing clever. */
function byDefinition(samples: number[], frequency: number): number {
  let [re, im, weights] = [0, 0, 0];
  for (const [i, sample] of samples.entries()) {
    const weight = 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / samples.length);
    weights += weight;
    re += weight * sample * Math.cos((2 * Math.PI * frequency * i) / RATE);
    im += weight * sample * Math.sin((2 * Math.PI * frequency * i) / RATE);
  }
  return (2 * Math.hypot(re, im)) / weights;
}

describe('the amplitude of one frequency', () => {
  it.each([261, 440, 1000, 2731.5, 3999])(
    'is that of the transform by its definition, at %d Hz',
    (frequency) => {
      const sound = sum(sine(frequency, 0.3), sine(777, 0.2), noise(0.05, 5));
      expect(amplitudeAt(sound, frequency, RATE)).toBeCloseTo(byDefinition(sound, frequency), 9);
    },
  );
});

describe('a tone', () => {
  it.each([
    [300, 0.5],
    [440, 0.1],
    [1234.5, 0.02],
    [2900, 0.9],
    [3950, 0.005],
  ])(
    'of %d Hz and an amplitude of %d is found within a thousandth and a twentieth of a dB',
    (frequency, amplitude) => {
      const tone = toneIn(sine(frequency, amplitude), RATE);
      expect(tone?.frequency).toBeGreaterThan(frequency * 0.999);
      expect(tone?.frequency).toBeLessThan(frequency * 1.001);
      expect(Math.abs((tone?.db ?? 0) - dbOf(amplitude))).toBeLessThan(0.05);
    },
  );

  // The power of a sine is half the square of its amplitude; that of noise the square of its standard deviation.
  it.each([
    ['6 dB above the noise', 6, true],
    ['as strong as the noise', 0, true],
    ['6 dB below the noise', -6, false],
  ])('%s: found %s', (_, snr, found) => {
    const amplitude = 0.1;
    const sd = Math.sqrt(amplitude ** 2 / 2 / 10 ** (snr / 10));
    for (let seed = 1; seed <= 5; seed++) {
      const tone = toneIn(sum(sine(880, amplitude), noise(sd, seed)), RATE);
      expect(tone !== undefined && Math.abs(tone.frequency - 880) < 2, `seed ${seed}`).toBe(found);
    }
  });

  it('is none in noise, in silence, and in the rumble of a hall', () => {
    for (let seed = 1; seed <= 5; seed++) expect(toneIn(noise(0.2, seed), RATE)).toBeUndefined();
    expect(toneIn(new Float32Array(N), RATE)).toBeUndefined();
    expect(toneIn(sine(60, 0.5), RATE)).toBeUndefined();
  });

  it.each([
    [-69.9, true],
    [-70.1, false],
  ])('of %d dB is loud enough: %s', (db, found) => {
    expect(toneIn(sine(1000, 10 ** (db / 20)), RATE) !== undefined).toBe(found);
  });
});
