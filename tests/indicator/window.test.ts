import { describe, expect, it } from 'vitest';
import { teach } from '../../src/indicator/profile.ts';
import { sense } from '../../src/indicator/sense.ts';
import { toneIn } from '../../src/indicator/tone.ts';
import { type Sample, semitones, shownIn } from '../../src/indicator/window.ts';
import { createRng, normal } from '../../src/simulator/rng.ts';

const EVERY_MS = 100;
const stretch = (seconds: number, of: (at: number) => Omit<Sample, 'at'>): Sample[] =>
  Array.from({ length: (seconds * 1000) / EVERY_MS }, (_, i) => ({ at: i * EVERY_MS, ...of(i * EVERY_MS) }));

describe('a stretch of moments', () => {
  it('an octave is twelve semitones', () => {
    expect(semitones(880) - semitones(440)).toBeCloseTo(12, 10);
  });

  it('of a steady tone shows its level, its pitch, and that it does not beat', () => {
    const shown = shownIn(stretch(2, () => ({ db: -20, pitch: 70 })));
    expect(shown).toEqual({
      level: { value: -20, sd: 0 },
      pitch: { value: 70, sd: 0 },
      rate: { value: 0, sd: 0.05 },
    });
  });

  it('of a beeping tone shows what it is while it sounds, and how often it begins', () => {
    const shown = shownIn(stretch(5, (at) => (at % 500 < 250 ? { db: -20, pitch: 70 } : { db: undefined })));
    expect(shown.level?.value).toBe(-20);
    expect(shown.rate?.value).toBeCloseTo(2, 1);
  });

  it.each([
    [1, {}],
    [3, expect.objectContaining({ level: expect.anything() })],
  ])('with a tone in %d of 20 moments shows %j', (moments, shown) => {
    expect(shownIn(stretch(2, (at) => ({ db: at / EVERY_MS < moments ? -20 : undefined })))).toEqual(shown);
  });

  it('of hues on both sides of red lies at red', () => {
    const { hue } = shownIn(stretch(2, (at) => ({ db: 0, hue: at % 200 === 0 ? 355 : 5 })));
    expect(Math.min(hue?.value ?? 90, 360 - (hue?.value ?? 90))).toBeLessThan(0.01);
    expect(hue?.sd).toBeCloseTo(5, 6);
  });
});

/** From samples of sound to the words: a tone whose level, or pitch, follows the light, in the noise of a hall. */
describe('a tone in a hall, from its sound to the words', () => {
  const RATE = 16_000;
  const rng = createRng(12);
  const heard = (seconds: number, amplitude: number, frequency: number): Sample[] =>
    stretch(seconds, (at) => {
      const sound = Array.from(
        { length: 1_600 },
        (_, i) =>
          amplitude * Math.sin((2 * Math.PI * frequency * (i + (at * RATE) / 1000)) / RATE) +
          0.003 * normal(rng),
      );
      const tone = toneIn(sound, RATE);
      return tone ? { db: tone.db, pitch: semitones(tone.frequency) } : { db: undefined };
    });

  it.each([
    ['louder', (light: number) => ({ amplitude: 10 ** ((-50 + 40 * light) / 20), frequency: 880 })],
    ['higher', (light: number) => ({ amplitude: 0.05, frequency: 500 * 2 ** (2 * light) })],
  ])('that grows %s with the light', (_, sounds) => {
    const at = (light: number) => {
      const { amplitude, frequency } = sounds(light);
      return shownIn(heard(1.5, amplitude, frequency));
    };
    const profile = teach(shownIn(heard(1.5, 0, 880)), at(0.2), at(0.95));
    if (typeof profile === 'string') throw new Error(profile);
    const said: unknown[] = [];
    let before: number | undefined;
    for (const light of [0.4, 0.5, 0.5, 0.45, 0.8, 0.79, 1]) {
      const sensed = sense(profile, at(light), before);
      before = sensed?.place;
      said.push(sensed?.word);
    }
    expect(said).toEqual(['steady', 'rising', 'steady', 'falling', 'rising', 'steady', 'too-strong']);
    expect(sense(profile, shownIn(heard(1.5, 0, 880)), before)).toEqual({ word: 'nothing' });
  });
});
