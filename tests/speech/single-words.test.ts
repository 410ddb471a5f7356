import { describe, expect, it } from 'vitest';
import { type SingleWordModel, spot, spotted } from '../../src/speech/single-words.ts';

const WORDS = ['five', 'eight', 'zero', 'yes', 'oh'];
const TOKENS = WORDS.length + 1;
const FIVE = 1;
const EIGHT = 2;
const RATE = 16_000;

/** Probability of 0.9 for one token; the others share the rest. */
const row = (token: number): number[] =>
  Array.from({ length: TOKENS }, (_, i) => Math.log(i === token ? 0.9 : 0.1 / (TOKENS - 1)));
const rows = (...tokens: number[]): Float64Array => Float64Array.from(tokens.flatMap(row));

describe('what single words say', () => {
  // Three places: the first half of the sound is "five", the second "eight", and the whole is no single word.
  const arcs = [
    { from: 0, to: 1 },
    { from: 1, to: 2 },
    { from: 0, to: 2 },
  ];
  const gaps = [
    [0, -8, -16],
    [0, 0, -8],
    [0, 0, 0],
  ];
  const { score, rivals } = spotted(WORDS, arcs, rows(FIVE, EIGHT, 0), gaps);

  it('adds up the words along the sound', () => {
    expect(score('five eight')).toBeCloseTo(2 * Math.log(0.9), 10);
  });

  it('makes words that leave out speech pay for it', () => {
    const { score } = spotted(WORDS, arcs.slice(0, 2), rows(FIVE, EIGHT), gaps);
    expect(score('eight')).toBeCloseTo(Math.log(0.9) - 8, 10);
    expect(score('five')).toBeCloseTo(Math.log(0.9) - 8, 10);
  });

  it('tells how much speech they leave out', () => {
    const { leftOut } = spotted(WORDS, arcs.slice(0, 2), rows(FIVE, EIGHT), gaps);
    // 8 is what leaving out one half costs; 10 ms of speech cost 0.4.
    expect(leftOut('eight')).toBeCloseTo(20, 9);
    expect(leftOut('five eight')).toBeCloseTo(0, 9);
    expect(leftOut('five eight five')).toBeUndefined();
    expect(leftOut('turns')).toBeUndefined();
  });

  it('makes two words that are taken for one pay for it', () => {
    expect(score('eight')).toBeCloseTo(Math.log(0.02), 10);
  });

  it('finds no room for more words than there are pieces', () => {
    expect(score('five eight five')).toBe(Number.NEGATIVE_INFINITY);
  });

  it('says nothing of words that it does not know', () => {
    expect(score('five turns')).toBeUndefined();
  });

  it('takes other wordings for the word that sounds the same', () => {
    expect(score('fife ate')).toBe(score('five eight'));
  });

  it('names what explains the sound best first', () => {
    expect(rivals[0]).toEqual({ text: 'five eight', score: score('five eight') });
    expect(rivals.map(({ text }) => text)).toContain('eight');
  });

  it('names words that are no figures alone only', () => {
    const { rivals } = spotted(WORDS, arcs, rows(4, EIGHT, 4), gaps);
    expect(rivals[0]?.text).toBe('yes');
    expect(rivals.filter(({ text }) => text.includes('yes'))).toHaveLength(1);
  });
});

describe('listening for single words', () => {
  /** Hears "five" in windows with a low tone only, "eight" with a high one only, and no word where both are. */
  const byPitch: SingleWordModel = {
    words: WORDS,
    async logits(windows) {
      const crossings = windows.map((window) => {
        const loud = window.filter((x) => x !== 0);
        return loud.reduce((sum, x, i) => sum + Number(x * (loud[i - 1] ?? x) < 0), 0) / loud.length;
      });
      const tokens = crossings.map((share) => (share < 0.04 ? FIVE : share > 0.16 ? EIGHT : 0));
      return { data: Float32Array.from(rows(...tokens)), frames: windows.length, tokens: TOKENS };
    },
  };
  const tone = (pitch: number, db: number): number[] =>
    Array.from(
      { length: 0.35 * RATE },
      (_, i) => 10 ** (db / 20) * Math.sin((2 * Math.PI * pitch * i) / RATE),
    );
  const silence = (seconds: number): number[] => Array<number>(seconds * RATE).fill(0);
  const said = (five: number, pause: number): Float32Array =>
    Float32Array.from([
      ...silence(0.25),
      ...tone(200, five),
      ...silence(pause),
      ...tone(1500, -10),
      ...silence(0.25),
    ]);

  // "58" was once taken as "eight": up to 9 dB between two digits, and any pause.
  it.each([
    [-10, 0.3],
    [-19, 0.3],
    [-19, 0.05],
    [-30, 0.1],
  ])('hears a digit at %d dB before one at -10 dB, with %d s between them', async (level, pause) => {
    const heard = await spot(byPitch, said(level, pause));
    expect(heard?.rivals[0]?.text).toBe('five eight');
    expect(heard?.score('eight')).toBeLessThan((heard?.score('five eight') ?? 0) - 3);
  });

  it('does not look for a word in what is 40 dB quieter than the rest', async () => {
    const heard = await spot(byPitch, said(-50, 0.1));
    expect(heard?.rivals[0]?.text).toBe('eight');
  });

  it('hears nothing in a sound that is too short for a word', async () => {
    expect(await spot(byPitch, Float32Array.from(tone(200, -10).slice(0, 1000)))).toBeUndefined();
  });
});
