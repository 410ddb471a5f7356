import { type MeterProfile, NEUTRAL_METERS } from '../model/profile.ts';
import type { Lobe, LobeShape } from './beam.ts';
import type { PairSpec } from './pair.ts';
import { between, chance, logBetween, normal, pick, type Rng } from './rng.ts';

/**
 * A random beam pair, as on a real site. Angles follow from an adjuster of 0.7 degrees a turn and a beam of
 * 0.35 to 1.4 degrees half-power half-width (estimates of our own, no source); an aim of 15 cm becomes the
 * angle at the pair's distance.
 */
const DEGREES_PER_EIGHTH = 0.7 / 8;

export interface CaseMix {
  /** Share of pairs whose beam has a second place the light comes from. */
  sideLobe: number;
  reflection: number;
}
export const SITE_MIX: CaseMix = { sideLobe: 0.05, reflection: 0.1 };

export function randomPair(rng: Rng, mix: CaseMix = SITE_MIX): PairSpec {
  const meter: MeterProfile = pick(rng, NEUTRAL_METERS as [MeterProfile, ...MeterProfile[]]);
  const distance = logBetween(rng, 8, 100);
  const aimRadius = (Math.atan(0.15 / distance) * 180) / Math.PI / DEGREES_PER_EIGHTH;
  const half = logBetween(rng, 0.35, 1.4) / DEGREES_PER_EIGHTH;
  // The crew aims the emitter by eye, and misses by more than it thinks.
  const off = Math.hypot(aimRadius, half) * Math.sqrt(rng()) * 1.5;
  const angle = between(rng, 0, 2 * Math.PI);
  const main: Lobe = {
    shape: pick<LobeShape>(rng, [
      { kind: 'gaussian' },
      { kind: 'gaussian' },
      { kind: 'cosine', order: logBetween(rng, 500, 5000) },
      { kind: 'flat-topped' },
    ]),
    horizontal: off * Math.cos(angle),
    vertical: off * Math.sin(angle),
    halfHorizontal: half * logBetween(rng, 0.87, 1.15),
    halfVertical: half * logBetween(rng, 0.87, 1.15),
    belowDb: 0,
    reflected: false,
  };
  const others: Lobe[] = [];
  if (chance(rng, mix.sideLobe)) others.push(elsewhere(rng, main, { near: 2.2, far: 3.2, width: 0.45 }));
  if (chance(rng, mix.reflection)) {
    others.push({ ...elsewhere(rng, main, { near: 3, far: 6, width: 1 }), reflected: true });
  }
  const stepped = chance(rng, 0.25);
  return {
    meter: stepped ? { ...meter, gain: 'stepped' } : meter,
    lobes: [main, ...others],
    peakDb: between(rng, 2, 22),
    gainRangeDb: 40,
    gainStepDb: stepped ? 1.5 : 0,
    backlash: {
      horizontal: chance(rng, 0.5) ? between(rng, 0, 1.5) : 0,
      vertical: chance(rng, 0.5) ? between(rng, 0, 1.5) : 0,
    },
    coupling: 0.02 * normal(rng),
    aimRadius,
    travel: 80,
    lagMs: between(rng, 200, 600),
    noiseDb: between(rng, 0.01, 0.03),
    noiseUnits: meter.tolerance * between(rng, 0.1, 0.3),
    driftDbPerMinute: 0.01 * normal(rng),
    vibration: { eighths: chance(rng, 0.2) ? between(rng, 0, 0.2) : 0, periodMs: between(rng, 700, 3000) },
  };
}

function elsewhere(
  rng: Rng,
  main: Lobe,
  { near, far, width }: { near: number; far: number; width: number },
): Lobe {
  const angle = between(rng, 0, 2 * Math.PI);
  const distance = between(rng, near, far);
  return {
    shape: { kind: 'gaussian' },
    horizontal: main.horizontal + distance * main.halfHorizontal * Math.cos(angle),
    vertical: main.vertical + distance * main.halfVertical * Math.sin(angle),
    halfHorizontal: main.halfHorizontal * width,
    halfVertical: main.halfVertical * width,
    belowDb: between(rng, 4, 15),
    reflected: false,
  };
}
