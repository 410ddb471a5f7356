import { describe, expect, it } from 'vitest';
import { decide } from '../../src/conversation/decide.ts';
import { LEAST_SHIFT } from '../../src/model/voice.ts';
import { loweredBy } from '../../src/speech/belief.ts';
import { heardOf } from '../../src/speech/hear.ts';
import { TO_READ } from '../../src/speech/to-read.ts';
import { type ReadDigit, tenOf, voiceOf } from '../../src/speech/voice.ts';
import { meaningOf } from '../../src/speech/weigh.ts';

/** So many digits heard right, the others not, each believed so much. */
const reading = (right: number, believed: number, of = TO_READ.length): ReadDigit[] =>
  Array.from({ length: of }, (_, i) => ({ believed, right: i < right }));

const logit = (p: number): number => Math.log(p / (1 - p));

describe('what ten digits say of a voice', () => {
  it.each([
    ['nine digits', reading(9, 0.9, 9)],
    ['eleven digits', reading(11, 0.9, 11)],
    ['no digits: silence, or talk without pauses', []],
    ['another order, or other words', reading(0, 0.9)],
    ['five right', reading(5, 0.9)],
  ])('is nothing where there are %s', (_, digits) => {
    expect(voiceOf(digits)).toBeUndefined();
  });

  it('is something from six right on', () => {
    expect(voiceOf(reading(6, 0.9))).toBeDefined();
  });

  // Raising the belief of who is heard well made words of synthetic voices be taken wrongly: docs/speech.md.
  it.each([
    ['all right, and believed little', 10, 0.3],
    ['nine right, as many as are believed', 9, 0.9],
    ['nine right, and a little less believed', 9, 0.899],
  ])('never raises what is believed: %s', (_, right, believed) => {
    expect(voiceOf(reading(right, believed), 1)).toEqual({ shift: 0 });
  });

  it('lowers it as soon as more is believed than was right', () => {
    expect(voiceOf(reading(9, 0.92), 1)?.shift).toBeLessThan(0);
  });

  it('lowers who is heard wrong and believed too much, and no further than allowed', () => {
    expect(voiceOf(reading(8, 0.95), 1)?.shift).toBeLessThan(0);
    expect(voiceOf(reading(6, 0.9999), 100)?.shift).toBeCloseTo(LEAST_SHIFT, 2);
  });

  it.each([
    [9, 0.97, 1],
    [8, 0.95, 0.5],
    [8, 0.95, 1],
  ])('is where log probability has no slope: %d right, believed %d, spread %d', (right, believed, spread) => {
    const { shift } = voiceOf(reading(right, believed), spread) as { shift: number };
    // The derivative of the log posterior of a logistic intercept with a normal prior, set to nothing (any text on Bayesian logistic regression).
    const expected = 1 / (1 + Math.exp(-(logit(believed) + shift)));
    expect(right - 10 * expected).toBeCloseTo(shift / spread, 2);
  });
});

describe('belief in a known voice', () => {
  it.each([
    ['is what it was without a shift', 0, 0.9, 0.9],
    ['falls by the shift, in log odds', -1, 0.95, 1 / (1 + Math.exp(-(logit(0.95) - 1)))],
    ['falls by the most', -2, 0.99, 1 / (1 + Math.exp(-(logit(0.99) - 2)))],
    ['is not raised, whatever comes', 1, 0.9, 0.9],
  ])('%s', (_, shift, believed, expected) => {
    expect(loweredBy({ shift }, believed)).toBeCloseTo(expected, 9);
  });
});

describe('what is taken from a known voice', () => {
  const weighed = (...said: [string, number][]) => ({
    sentences: said.map(([text, share]) => ({ text, share, meaning: meaningOf(text) })),
    share: said[0]?.[1] ?? 0,
    strain: 0,
    letters: 6,
    blur: 0,
  });
  const free = { text: 'heard', score: -1 };
  const decision = (said: [string, number][], believed: number, shift: number, ends = false) => {
    const heard = heardOf({ free, weighed: weighed(...said) }, undefined, () => believed, { shift });
    return decide({ via: 'voice', ...heard }, { ends: () => ends }).kind;
  };

  it.each([
    ['a reading above the bar is taken', 0.93, 0, 'taken'],
    ['and asked about where the voice is heard worse than is believed', 0.93, -0.5, 'doubtful'],
    ['not where it is hardly worse', 0.93, -0.2, 'taken'],
    ['what is hardly believed is not asked about', 0.42, -0.2, 'unclear'],
  ])('%s', (_, believed, shift, kind) => {
    expect(decision([['four two', 1]], believed, shift)).toBe(kind);
  });

  it('what ends something needs more of such a voice, too', () => {
    expect(decision([['accept', 1]], 0.975, 0, true)).toBe('taken');
    expect(decision([['accept', 1]], 0.975, -0.5, true)).toBe('doubtful');
  });

  it('"stop" is taken as long as it is asked about of others', () => {
    expect(decision([['stop', 1]], 0.5, -0.2)).toBe('taken');
  });
});

describe('a reading is cut', () => {
  const RATE = 16_000;
  /** A tone of 200 Hz, piece by piece: seconds, and whether it sounds. */
  const sound = (...pieces: readonly (readonly [seconds: number, sounds: boolean])[]): Float32Array => {
    const loud = pieces.flatMap(([seconds, sounds]) =>
      Array<number>(Math.round(seconds * RATE)).fill(sounds ? 0.3 : 0.0001),
    );
    return Float32Array.from(loud, (size, i) => size * Math.sin((2 * Math.PI * 200 * i) / RATE));
  };
  const words = (count: number, pause: number): (readonly [number, boolean])[] => [
    [0.3, false],
    ...Array.from({ length: count }, () => [[0.3, true] as const, [pause, false] as const]).flat(),
  ];

  // The loudness is taken over 25 ms, so that a pause is heard about 20 ms shorter than it is. Ours, no source: 0.25 s.
  it.each([
    ['ten words with half a second between them', words(10, 0.5), 10],
    ['pauses just long enough', words(10, 0.29), 10],
    ['pauses just too short', words(10, 0.24), undefined],
    ['nine words', words(9, 0.5), undefined],
    ['eleven', words(11, 0.5), undefined],
    ['a click after the tenth', [...words(10, 0.5), [0.04, true], [0.3, false]] as const, 10],
    ['a cough after the tenth', [...words(10, 0.5), [0.12, true], [0.3, false]] as const, undefined],
    ['nothing', [[1, false]] as const, undefined],
  ])('%s', (_, pieces, count) => {
    expect(tenOf(sound(...(pieces as (readonly [number, boolean])[])))?.length).toBe(count);
  });

  it('so that each piece holds its word and a little before and after it', () => {
    for (const piece of tenOf(sound(...words(10, 0.5))) ?? []) {
      expect(piece.length / RATE).toBeGreaterThan(0.45);
      expect(piece.length / RATE).toBeLessThan(0.6);
    }
  });

  it('is no reading where nothing is heard at all', () => {
    expect(tenOf(new Float32Array(0))).toBeUndefined();
  });
});
