import { describe, expect, it } from 'vitest';
import { cuttings, loudness, places, speechLevel } from '../../src/speech/pieces.ts';

const RATE = 16_000;

/** A tone of 200 Hz, piece by piece: seconds, and dB under full scale. */
function tone(...pieces: readonly (readonly [seconds: number, db: number])[]): Float32Array {
  const samples = pieces.flatMap(([seconds, db]) =>
    Array<number>(Math.round(seconds * RATE)).fill(10 ** (db / 20)),
  );
  return Float32Array.from(samples, (size, i) => size * Math.sin((2 * Math.PI * 200 * i) / RATE));
}

const QUIET = [0.3, -80] as const;
const seconds = (sound: Float32Array): number[] => places(sound).map((at) => at / RATE);

describe('where words may begin and end', () => {
  it('is where the speech begins and ends', () => {
    const [begin, end, ...more] = seconds(tone(QUIET, [0.4, -10], QUIET));
    expect(begin).toBeCloseTo(0.3, 1);
    expect(end).toBeCloseTo(0.7, 1);
    expect(more).toEqual([]);
  });

  it('is also in a pause between two words, however much quieter one of them is', () => {
    const at = seconds(tone(QUIET, [0.3, -19], [0.2, -80], [0.3, -10], QUIET));
    expect(at).toHaveLength(3);
    expect(at[1]).toBeGreaterThan(0.55);
    expect(at[1]).toBeLessThan(0.85);
  });

  // Ours, no source: 3 dB, and 28 dB under the loudest.
  it.each([
    ['less deep than 3 dB', -12.5, 2],
    ['deeper than 3 dB', -13.5, 3],
  ])('is in a dip that is %s: %d dB, %d places', (_, dip, count) => {
    expect(places(tone(QUIET, [0.2, -10], [0.1, dip], [0.2, -10], QUIET))).toHaveLength(count);
  });

  it.each([
    ['counts at 27 dB under the loudest', -37, 0.3],
    ['does not count at 29 dB under the loudest', -39, 0.7],
  ])('a quiet word %s', (_, db, begin) => {
    expect(seconds(tone(QUIET, [0.2, db], [0.2, -80], [0.3, -10], QUIET))[0]).toBeCloseTo(begin, 1);
  });

  it('keeps the deepest ten dips of a long sound', () => {
    const words = Array.from({ length: 14 }, (_, i) => [[0.2, -10] as const, [0.1, -20 - i] as const]).flat();
    expect(places(tone(QUIET, ...words, [0.2, -10], QUIET))).toHaveLength(12);
  });

  it('has a beginning and an end for silence and for less than a frame', () => {
    expect(places(new Float32Array(RATE))).toHaveLength(2);
    expect(places(new Float32Array(10))).toHaveLength(2);
  });

  it('takes noise for noise: speech must stand 6 dB out of it', () => {
    const levels = loudness(tone([0.3, -30], [0.3, -10], [0.3, -30]));
    expect(speechLevel(levels)).toBeCloseTo(-30 - 3 + 6, 0);
  });
});

describe('what may be one word', () => {
  const pieces = (sound: Float32Array): string[] =>
    cuttings(sound).arcs.map(({ from, to }) => `${from}-${to}`);

  // The loudness is taken over 25 ms, so that a pause is heard about 20 ms shorter than it is. Ours, no source.
  it.each([
    ['a pause of 0.19 s', 0.19, ['0-1', '0-2', '1-2']],
    ['a pause of 0.25 s', 0.25, ['0-1', '1-2']],
  ])('two sounds with %s between them', (_, pause, expected) => {
    expect(pieces(tone(QUIET, [0.3, -10], [pause, -80], [0.3, -10], QUIET))).toEqual(expected);
  });

  it.each([
    ['no longer than 1.2 s', 1.1, ['0-1']],
    ['longer than 1.2 s', 1.3, []],
  ])('a sound that is %s', (_, length, expected) => {
    expect(pieces(tone(QUIET, [length, -10], QUIET))).toEqual(expected);
  });

  it('counts the speech between places', () => {
    const { speech } = cuttings(tone(QUIET, [0.3, -10], [0.25, -80], [0.4, -10], QUIET));
    expect(speech[0]?.[1]).toBeGreaterThanOrEqual(30);
    expect(speech[0]?.[1]).toBeLessThan(34);
    expect(speech[1]?.[2]).toBeGreaterThanOrEqual(40);
    expect(speech[0]?.[2]).toBe((speech[0]?.[1] ?? 0) + (speech[1]?.[2] ?? 0));
  });
});
