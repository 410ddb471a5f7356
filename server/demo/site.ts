import type { JobSetup } from '../../src/facts.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/profile.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';

/** An invented hall and one of its pairs. */
const meter = NEUTRAL_METERS.find(({ unit }) => unit === 'counts') as MeterProfile;

export const DEMO_SETUP: JobSetup = {
  site: 'Quayside Hall 3 (invented)',
  pair: 'B2, north aisle',
  meter,
  adjusters: NEUTRAL_ADJUSTERS,
  pathLength: 62,
};

/** How that pair stands when the crew arrives: a turn and a half off, and far too much gain at the peak. */
export const DEMO_PAIR: PairSpec = {
  meter,
  lobes: [
    {
      shape: { kind: 'gaussian' },
      horizontal: 9,
      vertical: -5,
      halfHorizontal: 6,
      halfVertical: 6,
      belowDb: 0,
      reflected: false,
    },
  ],
  peakDb: 3,
  gainRangeDb: 20,
  gainStepDb: 0,
  lash: { horizontal: 0, vertical: 0 },
  coupling: 0,
  travel: NEUTRAL_ADJUSTERS.travel,
  aimRadius: 12,
  lagMs: 900,
  noiseDb: 0.01,
  noiseUnits: 0.4,
  driftDbPerMinute: 0,
  vibration: { eighths: 0, periodMs: 1_000 },
};
