import { describe, expect, it } from 'vitest';
import { type Ear, earFrom, heardAt } from '../../src/indicator/hear.ts';
import { shownIn } from '../../src/indicator/window.ts';
import { createRng, normal } from '../../src/simulator/rng.ts';

const RATE = 16_000;
/** A tenth of a second of a tone in noise; `noise` and `level`: dB of a full-scale sine. */
function sound(level: number | undefined, noise: number, { frequency = 880, seed = 1 } = {}): number[] {
  const rng = createRng(seed);
  const amplitude = level === undefined ? 0 : 10 ** (level / 20);
  // The power of a sine is half the square of its amplitude; that of noise the square of its standard deviation.
  const sd = 10 ** (noise / 20) / Math.SQRT2;
  return Array.from(
    { length: RATE / 10 },
    (_, i) => amplitude * Math.sin((2 * Math.PI * frequency * i) / RATE) + sd * normal(rng),
  );
}
const heard = (samples: number[], ear?: Ear) => heardAt(0, samples, RATE, ear);

describe('the sound around a tone', () => {
  it.each([
    [undefined, -50],
    [-20, -50],
    [-40, -50],
    [-46, -50],
  ])('of a tone of %s dB in noise of %d dB is that of the noise', (level, noise) => {
    expect(Math.abs(heard(sound(level, noise)).restDb - noise)).toBeLessThan(1.5);
  });
});

describe('a phone that listens', () => {
  /** Semitones above 1 Hz. */
  const pitch = 12 * Math.log2(880);
  const ear: Ear = { quietDb: -50, pitches: [pitch, pitch] };

  // Six dB louder than when it was taught; noise of a tenth of a second scatters by some tenths of a dB.
  it.each([
    [-45, undefined],
    [-43, 'noisy'],
    [-20, 'noisy'],
    [-60, undefined],
  ])('does not call it nothing where there is no tone in noise of %d dB: %s', (noise, doubt) => {
    expect(heard(sound(undefined, noise), ear).doubt).toBe(doubt);
  });

  it('hears the tone itself in louder noise, where it stands out', () => {
    expect(heard(sound(-20, -30), ear).doubt).toBeUndefined();
  });

  // A semitone is a factor of 2^(1/12): 932.3 Hz and 830.6 Hz from 880 Hz.
  it.each([
    [880, undefined],
    [920, undefined],
    [945, 'noisy'],
    [840, undefined],
    [820, 'noisy'],
  ])('takes a tone of %d Hz for the one of 880 that it was taught: doubt %s', (frequency, doubt) => {
    expect(heard(sound(-20, -60, { frequency }), ear).doubt).toBe(doubt);
  });

  it('takes nothing but zeros for a microphone that is off, also while it is taught', () => {
    expect(heard(new Array(1_600).fill(0)).doubt).toBe('silent');
    expect(heard(new Array(1_600).fill(0), ear).doubt).toBe('silent');
    expect(heard([...new Array(1_599).fill(0), 1e-4]).doubt).toBeUndefined();
  });

  it('keeps from the lessons how quiet none was, and the pitches, unless the pitch is what follows the light', () => {
    const none = [1, 2, 3].map((seed) => heard(sound(undefined, -55, { seed })));
    const some = shownIn([heard(sound(-40, -60))]);
    const plenty = shownIn([heard(sound(-10, -60))]);
    const learnt = earFrom(none, some, plenty, { feature: 'level' });
    expect(Math.abs(learnt.quietDb + 55)).toBeLessThan(1);
    expect(learnt.pitches?.map((pitch) => pitch.toFixed(1))).toEqual(['117.4', '117.4']);
    expect(earFrom(none, some, plenty, { feature: 'pitch' })).not.toHaveProperty('pitches');
  });
});
