import type { Practice, Trouble } from '../model/practice.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../model/profile.ts';
import type { JobSetup } from '../model/setup.ts';
import { PRACTICE_PAIR, PRACTICE_SITE } from '../phrases/practice.ts';
import type { Lobe } from '../simulator/beam.ts';
import { calmPair } from '../simulator/calm-pair.ts';
import type { PairSpec } from '../simulator/pair.ts';
import { between, createRng } from '../simulator/rng.ts';

/** Quicker than most real ones, so that practice goes on. */
const METER: MeterProfile = {
  ...(NEUTRAL_METERS.find(({ unit }) => unit === 'percent') as MeterProfile),
  name: 'Practice meter',
  settleMs: 2_000,
  holdMs: 5_000,
};

/** How a job of practice is opened. */
export const practiceSetup = (practice: Practice): JobSetup => ({
  site: PRACTICE_SITE,
  pair: PRACTICE_PAIR,
  meter: METER,
  adjusters: NEUTRAL_ADJUSTERS,
  scope: 'alignment',
  practice,
});

/** Half-power half-width of the practice beam, eighths. */
const HALF = 6;

/** From the wall that shines to the receiver: no light of the one is seen at the other. Half-widths. */
const WALL_AWAY = 5;

/** Level of the peak at full gain, dB over full scale: in the band, so that nobody has to set the gain; and flooded. */
const PEAK_DB = -2.2;
const FLOODED_DB = 12;

/** The simulated pair of a practice job: the same for the same practice. */
export function practicePair({ seed, troubles }: Practice): PairSpec {
  const rng = createRng(seed);
  const has = (trouble: Trouble): boolean => troubles.includes(trouble);
  const angle = between(rng, 0, 2 * Math.PI);
  const far = between(rng, 0.7, 1.1) * HALF;
  const wallAngle = angle + Math.PI + between(rng, -0.5, 0.5);
  const at = (distance: number, direction: number) => ({
    horizontal: Math.round(distance * Math.cos(direction)),
    vertical: Math.round(distance * Math.sin(direction)),
  });
  // With a wall the first aim is on its light, and the receiver's own lies well beside it.
  const calm = calmPair(METER, has('reflection') ? at(WALL_AWAY * HALF, angle) : at(far, angle));
  const wall: Lobe = {
    ...calm.lobes[0],
    ...at(0.3 * HALF, wallAngle),
    belowDb: 1,
    reflected: true,
  };
  return {
    ...calm,
    lobes: has('reflection') ? [calm.lobes[0], wall] : calm.lobes,
    peakDb: has('flooded') ? FLOODED_DB : PEAK_DB,
    backlash: { horizontal: between(rng, 0, 0.6), vertical: between(rng, 0, 0.6) },
    aimRadius: HALF,
    vibration: { eighths: has('vibration') ? 0.6 : 0, periodMs: 1_700 },
  };
}
