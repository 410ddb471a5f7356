import type { JobSetup } from '../../src/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/profile.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import type { Plant } from '../../src/simulator/plants.ts';
import { playVisit } from '../../src/simulator/visit.ts';
import { PLAN } from '../commission/bench.ts';
import { COUNTS } from '../job/table.ts';

export const SETUP: JobSetup = {
  site: 'Hollin Bridge sorting hall',
  pair: 'North aisle',
  meter: COUNTS,
  adjusters: NEUTRAL_ADJUSTERS,
  scope: 'commissioning',
  plan: { ...PLAN, pathLength: 62 },
};

/** A pair with little noise, so that what is found is what was planted. */
export const SPEC: PairSpec = {
  meter: COUNTS,
  lobes: [
    {
      shape: { kind: 'gaussian' },
      horizontal: 5,
      vertical: -4,
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
  lagMs: 300,
  noiseDb: 0.001,
  noiseUnits: 0.05,
  driftDbPerMinute: 0,
  vibration: { eighths: 0, periodMs: 1_000 },
};

/** 2026-03-03 08:30 UTC. */
const FROM = Date.UTC(2026, 2, 3, 8, 30);

export const visit = (plants: readonly Plant[] = [], seed = 1, setup = SETUP, spec = SPEC) =>
  playVisit({ job: `visit-${seed}`.padEnd(10, '0'), setup, spec, from: FROM, seed, plants });
