import { describe, expect, it } from 'vitest';
import { pulseRate } from '../../src/indicator/pulses.ts';
import { createRng, normal } from '../../src/simulator/rng.ts';

const EVERY_MS = 50;

/** A lamp or a tone that goes on and off so often in a second, for so many seconds, with noise on it. */
function blinking(rate: number, seconds: number, { on = 20, noise = 0.5, duty = 0.5 } = {}) {
  const rng = createRng(3);
  return Array.from({ length: Math.round((seconds * 1000) / EVERY_MS) }, (_, i) => {
    const at = i * EVERY_MS;
    const isOn = ((at * rate) / 1000 + 0.3) % 1 < duty;
    return { at, db: (isOn ? on : 0) + noise * normal(rng) };
  });
}

describe('how often it goes on in a second', () => {
  it.each([0.8, 1, 2, 3.3, 5])('%d times', (rate) => {
    expect(pulseRate(blinking(rate, 6))).toBeCloseTo(rate, 1);
  });

  it('does not depend on how long it stays on', () => {
    expect(pulseRate(blinking(2, 6, { duty: 0.25 }))).toBeCloseTo(2, 1);
  });

  it.each([
    [5.5, 0],
    [7, 2],
  ])('on and off %d dB apart: %d', (on, rate) => {
    expect(pulseRate(blinking(2, 6, { on, noise: 0.05 }))).toBeCloseTo(rate, 1);
  });

  it('is 0 where it stays on, and not known where it went on fewer than three times', () => {
    expect(pulseRate(blinking(0, 6))).toBe(0);
    expect(pulseRate(blinking(0.3, 6))).toBeUndefined();
    expect(pulseRate([])).toBeUndefined();
  });
});
