import { describe, expect, it } from 'vitest';
import { PASS_BAND, resampler, toPcm16 } from '../../src/audio/resample.ts';

const TO = 16_000;
const RATES = [8_000, 22_050, 44_100, 48_000, 96_000];

const sine = (hz: number, rate: number, seconds: number): Float32Array =>
  Float32Array.from({ length: Math.round(rate * seconds) }, (_, n) =>
    Math.sin((2 * Math.PI * hz * n) / rate),
  );

function all(from: number, to: number, input: Float32Array, chunk = input.length): Float32Array {
  const stream = resampler(from, to);
  const parts: number[] = [];
  for (let i = 0; i < input.length; i += chunk) parts.push(...stream.push(input.subarray(i, i + chunk)));
  parts.push(...stream.flush());
  return Float32Array.from(parts);
}

/** The steady middle, without the ends, where the filter starts and stops. */
const middle = (x: Float32Array): Float32Array =>
  x.subarray(Math.floor(x.length / 4), Math.floor((x.length * 3) / 4));
const rms = (x: Float32Array): number => Math.sqrt(x.reduce((a, b) => a + b * b, 0) / x.length);
const decibels = (ratio: number): number => 20 * Math.log10(ratio);

describe('resampling captured sound to 16 kHz', () => {
  it.each(RATES)('turns a 1 kHz tone at %i Hz into the same tone, in the same place', (rate) => {
    const got = middle(all(rate, TO, sine(1000, rate, 0.5)));
    const want = middle(sine(1000, TO, 0.5)).subarray(0, got.length);
    const error = rms(got.map((x, i) => x - (want[i] as number)));
    expect(decibels(error / rms(want))).toBeLessThan(-70);
  });

  it.each([22_050, 44_100, 48_000, 96_000])(
    'keeps a tone above 8 kHz at %i Hz from folding into speech',
    (rate) => {
      const got = middle(all(rate, TO, sine(10_000, rate, 0.5)));
      expect(decibels(rms(got) / Math.SQRT1_2)).toBeLessThan(-75);
    },
  );

  it('keeps the full level up to the edge of its pass band', () => {
    const edge = 0.99 * PASS_BAND * (TO / 2);
    expect(edge).toBeGreaterThan(6500);
    const got = middle(all(48_000, TO, sine(edge, 48_000, 0.5)));
    expect(Math.abs(decibels(rms(got) / Math.SQRT1_2))).toBeLessThan(0.01);
  });

  it('gives the same samples for any size of input blocks', () => {
    const input = sine(440, 44_100, 0.2);
    const whole = all(44_100, TO, input);
    for (const chunk of [1, 128, 1000]) expect(all(44_100, TO, input, chunk)).toEqual(whole);
  });

  it.each(RATES)('keeps the length of the sound at %i Hz', (rate) => {
    expect(Math.abs(all(rate, TO, new Float32Array(rate)).length - TO)).toBeLessThanOrEqual(1);
  });

  it('leaves 16 kHz as it is', () => {
    const input = sine(1000, TO, 0.01);
    expect(all(TO, TO, input)).toEqual(input);
  });

  it('refuses a rate that is not possible', () => {
    expect(() => resampler(0, TO)).toThrow(/sample rates/);
    expect(() => resampler(44_100.5, TO)).toThrow(/sample rates/);
  });

  it('clips a sound that is too loud, and never wraps round', () => {
    expect([...toPcm16(Float32Array.from([0, 1, -1, 1.7, -2]))]).toEqual([0, 32767, -32767, 32767, -32767]);
  });
});
