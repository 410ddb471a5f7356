import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
import type { PairSpec } from '../../src/simulator/pair.ts';
import type { Plant } from '../../src/simulator/plants.ts';
import { playVisit } from '../../src/simulator/visit.ts';
import { COUNTS } from '../conversation/table.ts';
import { PLAN } from '../visit/bench.ts';

export const SETUP: JobSetup = {
  site: 'Hollin Bridge sorting hall',
  pair: 'North aisle',
  meter: COUNTS,
  adjusters: NEUTRAL_ADJUSTERS,
  scope: 'commissioning',
  plan: { ...PLAN, pathLength: 62 },
};

/** A pair with little noise, so that only planted faults are found. */
export const SPEC: PairSpec = calmPair(COUNTS, { horizontal: 5, vertical: -4 });

/** 2026-03-03 08:30 UTC. */
const FROM = Date.UTC(2026, 2, 3, 8, 30);

export const playedVisit = (plants: readonly Plant[] = [], seed = 1, setup = SETUP, spec = SPEC) =>
  playVisit({ job: `visit-${seed}`.padEnd(10, '0'), setup, spec, from: FROM, seed, plants });
