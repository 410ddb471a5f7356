import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../model/profile.ts';
import type { Axis } from '../model/turns.ts';
import type { PairSpec } from './pair.ts';

/**
 * A well-made pair in a quiet hall: one clean beam that peaks at `peak` (eighths from the start) and, at full
 * gain, 3 dB above what the meter can show. Change only what your case is about.
 */
export const calmPair = (meter: MeterProfile, peak: Readonly<Record<Axis, number>>): PairSpec => ({
  meter,
  lobes: [
    {
      shape: { kind: 'gaussian' },
      ...peak,
      halfHorizontal: 6,
      halfVertical: 6,
      belowDb: 0,
      reflected: false,
    },
  ],
  peakDb: 3,
  gainRangeDb: 20,
  gainStepDb: 0,
  backlash: { horizontal: 0, vertical: 0 },
  coupling: 0,
  travel: NEUTRAL_ADJUSTERS.travel,
  aimRadius: 12,
  lagMs: 300,
  noiseDb: 0.001,
  noiseUnits: 0.05,
  driftDbPerMinute: 0,
  vibration: { eighths: 0, periodMs: 1_000 },
});
