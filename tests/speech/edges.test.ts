import { describe, expect, it } from 'vitest';
import { withEdges } from '../../src/speech/edges.ts';

const RATE = 16_000;
const power = (some: Float32Array): number => some.reduce((sum, x) => sum + x * x, 0) / some.length;

/** Noise of the given level, the same every time. */
function noise(length: number, level: number): Float32Array {
  let seed = 7;
  return Float32Array.from({ length }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return level * (seed / 1_073_741_823.5 - 1);
  });
}

describe('the edges of an utterance', () => {
  it('keep the sound in the middle as it is', () => {
    const sound = noise(RATE, 0.3);
    const padded = withEdges(sound);
    const edge = (padded.length - sound.length) / 2;
    expect(edge).toBe(RATE / 4);
    expect(padded.subarray(edge, edge + sound.length)).toEqual(sound);
  });

  it('are as loud as the noise around the words, not as the words', () => {
    const sound = noise(RATE, 0.1);
    sound.set(noise(RATE / 2, 0.8), RATE / 4);
    const padded = withEdges(sound);
    for (const edge of [padded.subarray(0, RATE / 4), padded.subarray(-RATE / 4)]) {
      expect(power(edge) / power(noise(RATE, 0.1))).toBeGreaterThan(0.7);
      expect(power(edge) / power(noise(RATE, 0.1))).toBeLessThan(1.3);
    }
  });

  it('are quiet around a word that was cut tight, because of the short gap in it', () => {
    const word = noise(RATE / 4, 0.8);
    word.set(noise(RATE / 32, 0.01), RATE / 8);
    expect(power(withEdges(word).subarray(0, RATE / 4))).toBeLessThan(power(word) / 1000);
  });

  it('are silent around silence', () => {
    expect(Math.max(...withEdges(new Float32Array(RATE)))).toBe(0);
  });
});
