import { type MeterProfile, NEUTRAL_METERS } from '../model/profile.ts';
import { type Lobe, type LobeShape, lobePower } from './beam.ts';
import { type WallLight, wallLight } from './fresnel.ts';
import type { PairSpec } from './pair.ts';
import { between, chance, logBetween, pick, type Rng } from './rng.ts';

/**
 * Beam pairs from physics and not from what the engine fits: one family for each thing that makes a search hard, so
 * that none hides behind the others. The sizes are estimates of our own, no source.
 */
export const FAMILIES = [
  'Gaussian, unequal widths',
  'diffraction at a round opening',
  'wide cosine lobe',
  'flat top, steep edge',
  'ring with a dip in the middle',
  'ellipse, turned 20 to 40 degrees',
  'lens partly covered by steelwork',
  'reflection, covered in the line',
  'reflection, covered at an end',
  'own gain',
  'meter of 0 to 8 steps',
  'fog',
  'sway',
  'drift of 0.1 dB a minute',
  'backlash of 2 to 5 eighths',
] as const;
export type Family = (typeof FAMILIES)[number];

const DEGREES_PER_EIGHTH = 0.7 / 8;
const eighths = (radians: number): number => (radians * 180) / Math.PI / DEGREES_PER_EIGHTH;

/** A hand errs by an eighth of an eighth. */
const HAND_SD = 1 / 8;
/** Glossy paint and glass. */
const WALL_INDEX = 1.5;
/** What a rough wall scatters away, up to, dB. */
const ROUGH_DB = 8;
/** Where a card is held in the line, metres from the emitter, and half its width. */
const CARD = { out: 3, half: 0.1 };

const STEPS_METER: MeterProfile = {
  name: 'Eight steps',
  unit: 'steps',
  min: 0,
  max: 8,
  resolution: 1,
  law: 'linear',
  saturatedAt: 8,
  lostAt: 0,
  bandLow: 4,
  bandHigh: 6,
  tolerance: 0.5,
  settleMs: 4_000,
  holdMs: 10_000,
  gain: 'continuous',
};

const WELL_MADE = { softness: 0.12, dip: 0, hole: 0.5, defocus: 0.2, clipped: 0 };

function shapeOf(family: Family, rng: Rng): LobeShape {
  switch (family) {
    case 'wide cosine lobe':
      return { kind: 'cosine', order: logBetween(rng, 50, 500) };
    case 'diffraction at a round opening':
      return { kind: 'airy' };
    case 'flat top, steep edge':
      return {
        kind: 'lens',
        source: { ...WELL_MADE, softness: between(rng, 0.05, 0.12), defocus: between(rng, 0.05, 0.4) },
      };
    case 'ring with a dip in the middle':
      return {
        kind: 'lens',
        source: { ...WELL_MADE, dip: between(rng, 0.3, 0.6), hole: between(rng, 0.25, 0.5) },
      };
    case 'lens partly covered by steelwork':
      return {
        kind: 'lens',
        source: { ...WELL_MADE, defocus: between(rng, 0.4, 0.8), clipped: between(rng, 0.2, 0.6) },
      };
    default:
      return { kind: 'gaussian' };
  }
}

/** Half-widths along the lobe's own axes, eighths. */
function widths(family: Family, half: number, rng: Rng): [number, number] {
  switch (family) {
    case 'Gaussian, unequal widths':
    case 'ellipse, turned 20 to 40 degrees':
      return [half * logBetween(rng, 0.6, 0.8), half * logBetween(rng, 1.25, 1.7)];
    case 'wide cosine lobe':
      return [half * 3, half * 3];
    default:
      return [half, half];
  }
}

export function physicalPair(family: Family, rng: Rng): PairSpec {
  const meter = meterOf(family, rng);
  const distance = logBetween(rng, 8, 100);
  const aimRadius = eighths(Math.atan(0.15 / distance));
  const half = eighths((logBetween(rng, 0.35, 1.4) * Math.PI) / 180);
  const [halfHorizontal, halfVertical] = widths(family, half, rng);
  const off = Math.hypot(aimRadius, half) * Math.sqrt(rng()) * 1.5;
  const angle = between(rng, 0, 2 * Math.PI);
  const direct: Lobe = {
    shape: shapeOf(family, rng),
    horizontal: off * Math.cos(angle),
    vertical: off * Math.sin(angle),
    halfHorizontal,
    halfVertical,
    belowDb: 0,
    reflected: false,
    turnedBy: family.startsWith('ellipse') ? (pick(rng, [1, -1]) * between(rng, 20, 40) * Math.PI) / 180 : 0,
  };
  const lobes = family.startsWith('reflection')
    ? besideWall(family, direct, distance, rng)
    : ([direct] as const);
  const isSlack = family.startsWith('backlash');
  const slack = () => (isSlack ? between(rng, 2, 5) : between(rng, 0, 1));
  return {
    meter,
    lobes,
    best: brightest(lobes[0]),
    peakDb: between(rng, 4, 20) - (family === 'fog' ? 4 : 0),
    gainRangeDb: 40,
    gainStepDb: 0,
    backlash: { horizontal: slack(), vertical: slack() },
    coupling: 0,
    aimRadius,
    travel: 80,
    lagMs: between(rng, 200, 600),
    noiseDb: between(rng, 0.01, 0.03),
    noiseUnits: meter.tolerance * between(rng, 0.1, 0.3),
    driftDbPerMinute: family.startsWith('drift') ? pick(rng, [0.1, -0.1]) : 0,
    vibration:
      family === 'sway'
        ? { eighths: between(rng, 0.2, 0.6), periodMs: between(rng, 3_000, 8_000) }
        : { eighths: 0, periodMs: 1_000 },
    ...(family === 'fog'
      ? { fog: { db: between(rng, 0.2, 0.8), periodMs: between(rng, 60_000, 240_000) } }
      : {}),
    handSd: HAND_SD,
  };
}

function meterOf(family: Family, rng: Rng): MeterProfile {
  if (family === 'meter of 0 to 8 steps') return STEPS_METER;
  const meter: MeterProfile = pick(rng, NEUTRAL_METERS as [MeterProfile, ...MeterProfile[]]);
  return family === 'own gain' ? { ...meter, gain: 'automatic' } : meter;
}

/** A wall beside the path; a third of the starts are on its light. */
function besideWall(family: Family, direct: Lobe, distance: number, rng: Rng): readonly [Lobe, Lobe] {
  const beside = distance * Math.tan(between(rng, 0.6, 3) * (Math.PI / 180));
  const light: WallLight = wallLight(WALL_INDEX, distance, beside / 2);
  const away = { angle: between(rng, 0, 2 * Math.PI), by: eighths(light.angle) };
  const hiddenWithDirect =
    family.endsWith('end') || Math.min(CARD.out, distance / 2) * Math.tan(light.angle) < CARD.half;
  const shift = chance(rng, 1 / 3) ? away.by : 0;
  const [h, v] = [Math.cos(away.angle), Math.sin(away.angle)];
  const from = {
    ...direct,
    horizontal: direct.horizontal - shift * h,
    vertical: direct.vertical - shift * v,
  };
  const mirrored: Lobe = {
    ...from,
    horizontal: from.horizontal + away.by * h,
    vertical: from.vertical + away.by * v,
    belowDb: light.belowDb + between(rng, 0, ROUGH_DB),
    reflected: true,
    hiddenWithDirect,
  };
  return [from, mirrored];
}

type Place = NonNullable<PairSpec['best']>;

/** How fine the net is: so many meshes from the middle of the lobe to its edge. */
const NET = 24;

/** The brightest place of a lobe: a fine net over it. Eighths. */
function brightest(lobe: Lobe): Place {
  if (lobe.shape.kind !== 'lens') return { horizontal: lobe.horizontal, vertical: lobe.vertical };
  let [best, power] = [{ horizontal: lobe.horizontal, vertical: lobe.vertical }, 0];
  for (let i = -NET; i <= NET; i++)
    for (let j = -NET; j <= NET; j++) {
      const place = {
        horizontal: lobe.horizontal + (1.2 * i * lobe.halfHorizontal) / NET,
        vertical: lobe.vertical + (1.2 * j * lobe.halfVertical) / NET,
      };
      const found = lobePower(lobe, place.horizontal, place.vertical);
      if (found > power) [best, power] = [place, found];
    }
  return best;
}
