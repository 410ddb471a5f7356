import type { Entry } from '../../src/model/entry.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
import { between, createRng, pick } from '../../src/simulator/rng.ts';
import { playedVisit, SETUP } from './site.ts';

/** Thresholds in dB with what the crew owns: filters on both sides, on one, too strong, or none. */
const KITS: [Kit, ...Kit[]] = [
  [0.98, [10, 40]],
  [1.87, [20, 60]],
  [1.87, [20, 60, 99]],
  [1.87, []],
  [2.5, []],
  [3.01, [50, 60]],
  [3.98, [50, 70]],
  [6, [60, 80]],
];
type Kit = [threshold: number, filters: number[]];

/** A visit in which nothing goes wrong, on a random meter, with a random threshold, kit and way to the peak. */
export function cleanVisit(seed: number): Entry[] {
  const rng = createRng(seed);
  const meter = pick(rng, NEUTRAL_METERS as [MeterProfile, ...MeterProfile[]]);
  const [value, filters] = pick(rng, KITS);
  const alarmThreshold = { unit: 'dB', value } as const;
  const plan = { ...SETUP.plan, alarmThreshold, ...(filters.length > 0 && { filters }) } as PairPlan;
  const eighths = () => Math.round(between(rng, -8, 8));
  const peak = { horizontal: eighths(), vertical: eighths() };
  const spec = { ...calmPair(meter, peak), noiseUnits: meter.tolerance / 10 };
  return playedVisit([], seed, { ...SETUP, meter, plan }, spec);
}
