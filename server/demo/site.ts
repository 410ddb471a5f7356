import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
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

/** The pair when the crew arrives: a turn and a half off, and far too much gain at the peak. */
export const DEMO_PAIR: PairSpec = {
  ...calmPair(meter, { horizontal: 9, vertical: -5 }),
  lagMs: 900,
  noiseDb: 0.01,
  noiseUnits: 0.4,
};
