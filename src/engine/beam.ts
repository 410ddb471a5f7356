import type { MeterProfile } from '../profile.ts';
import type { Axis } from '../turns.ts';
import { leastSquares, type Row, type Solution } from './leastsq.ts';
import { lostDb, saturatedDb } from './level.ts';
import type { PerAxis, Sample } from './search.ts';

/**
 * The beam as its readings draw it: in decibels a parabola in each adjuster, of one height a gain setting
 * (Gaussian beam, `P = P0 exp(-2 theta^2 / w^2)`, optics textbook). Positions are pointings, eighths.
 */
export interface Beam {
  readonly peak: PerAxis<{ readonly at: number; readonly sd: number }>;
  /** Fall from the peak, dB per eighth squared. */
  readonly curvature: PerAxis<{ readonly value: number; readonly sd: number }>;
  /** Height of the peak at each gain setting that gave a level. */
  readonly heights: ReadonlyMap<number, { readonly db: number; readonly sd: number }>;
  /** Index in `LASHES` the pointings were taken with. */
  readonly lash: PerAxis<number>;
  /** Weighted sum of squared residuals: the worse, the less the readings look like one beam. */
  readonly chi2: number;
}

/**
 * What is believed before any reading, and how firmly. A half-power half-width of seven eighths of a turn,
 * give or take a factor of two; both adjusters alike to a third; slopes as of a beam a few turns away.
 * Common practice, no source; a few readings outweigh it.
 */
const CURVATURE = { value: 0.06, sd: 0.06 };
const ALIKE = 0.4;
const LEAST_CURVATURE = 0.006;
const SLOPE_SD = 3;
const HEIGHT_SD = 25;

/** Readings far below the peak tell less about it: no beam is a parabola all the way down. */
const shapeSd = (dropDb: number): number => 0.03 + 0.06 * Math.max(0, dropDb);

/** A censored reading on the wrong side of its limit is held to it this firmly. */
const CENSOR_SD = 0.7;

const PASSES = 3;

// Parameters: slope and curvature of each adjuster at the origin, then one height a gain setting.
const SLOPE = { horizontal: 0, vertical: 1 } as const;
const CURVE = { horizontal: 2, vertical: 3 } as const;
const HEIGHTS = 4;

/** Fits the beam; undefined without a single level to hang it on. */
export function fitBeam(
  samples: readonly Sample[],
  meter: MeterProfile,
  lash: PerAxis<number>,
): Beam | undefined {
  const best = samples.reduce<Sample | undefined>((top, s) => (height(s) > height(top) ? s : top), undefined);
  if (!best || height(best) === Number.NEGATIVE_INFINITY) return undefined;
  const gains = [...new Set(samples.map((s) => s.gain))];
  const point = (s: Sample, axis: Axis) => s.pointing[axis][lash[axis]] ?? s.turned[axis];
  const origin = { horizontal: point(best, 'horizontal'), vertical: point(best, 'vertical') };

  const row = (s: Sample): number[] => {
    const x = point(s, 'horizontal') - origin.horizontal;
    const y = point(s, 'vertical') - origin.vertical;
    return [x, y, -x * x, -y * y, ...gains.map((g) => (g === s.gain ? 1 : 0))];
  };

  let solution: Solution | undefined;
  let curve: { value: number; sd: number } = CURVATURE;
  for (let pass = 0; pass < PASSES; pass++) {
    const known = solution;
    const rows: Row[] = prior(gains.length, curve, height(best));
    for (const s of samples) {
      const coefficients = row(s);
      const predicted = known ? dot(coefficients, known.x) : undefined;
      const top = known ? peakHeight(known.x, gains.indexOf(s.gain)) : topOf(samples, s.gain);
      if (s.level.kind === 'level') {
        const sd = Math.hypot(s.level.sd, shapeSd(top - s.level.db));
        rows.push({ coefficients, value: s.level.db, sd });
      } else if (predicted !== undefined) {
        const limit = s.level.kind === 'above' ? saturatedDb(meter) : lostDb(meter);
        const wrong = s.level.kind === 'above' ? predicted < limit : predicted > limit;
        if (wrong) rows.push({ coefficients, value: limit, sd: Math.hypot(CENSOR_SD, shapeSd(top - limit)) });
      }
    }
    solution = leastSquares(rows);
    if (!solution) return undefined;
    const typical = (curvatureOf(solution.x, 'horizontal') + curvatureOf(solution.x, 'vertical')) / 2;
    curve = { value: CURVATURE.value, sd: Math.max(CURVATURE.sd, typical / 2) };
  }
  return solution && describe(honest(solution, samples), gains, origin, lash);
}

/**
 * Where the readings scatter about the parabola more than their noise explains, all uncertainties grow in
 * proportion (Birge ratio, metrology textbooks).
 */
function honest(solution: Solution, samples: readonly Sample[]): Solution {
  const levels = samples.filter((s) => s.level.kind === 'level').length;
  const ratio = Math.max(1, solution.chi2 / Math.max(1, levels - 3));
  return { ...solution, covariance: solution.covariance.map((row) => row.map((value) => value * ratio)) };
}

const height = (s: Sample | undefined): number =>
  s?.level.kind === 'level' ? s.level.db : Number.NEGATIVE_INFINITY;

const topOf = (samples: readonly Sample[], gain: number): number =>
  samples.reduce((top, s) => (s.gain === gain ? Math.max(top, height(s)) : top), Number.NEGATIVE_INFINITY);

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);

const curvatureOf = (x: readonly number[], axis: Axis): number =>
  Math.max(LEAST_CURVATURE, x[CURVE[axis]] ?? 0);

function peakHeight(x: readonly number[], gain: number): number {
  const rise = (axis: Axis) => (x[SLOPE[axis]] ?? 0) ** 2 / (4 * curvatureOf(x, axis));
  return (x[HEIGHTS + gain] ?? 0) + rise('horizontal') + rise('vertical');
}

/** What is believed before any reading, as rows of the same system. */
function prior(gains: number, curve: { value: number; sd: number }, top: number): Row[] {
  const n = HEIGHTS + gains;
  const unit = (entries: readonly (readonly [number, number])[]) => {
    const row = new Array<number>(n).fill(0);
    for (const [i, value] of entries) row[i] = value;
    return row;
  };
  const { horizontal: ch, vertical: cv } = CURVE;
  return [
    { coefficients: unit([[SLOPE.horizontal, 1]]), value: 0, sd: SLOPE_SD },
    { coefficients: unit([[SLOPE.vertical, 1]]), value: 0, sd: SLOPE_SD },
    { coefficients: unit([[ch, 1]]), value: curve.value, sd: curve.sd },
    { coefficients: unit([[cv, 1]]), value: curve.value, sd: curve.sd },
    {
      coefficients: unit([
        [ch, 1],
        [cv, -1],
      ]),
      value: 0,
      sd: ALIKE * curve.sd,
    },
    ...Array.from({ length: gains }, (_, g) => ({
      coefficients: unit([[HEIGHTS + g, 1]]),
      value: top,
      sd: HEIGHT_SD,
    })),
  ];
}

function describe(
  { x, covariance, chi2 }: Solution,
  gains: readonly number[],
  origin: PerAxis<number>,
  lash: PerAxis<number>,
): Beam {
  const cov = (i: number, j: number) => covariance[i]?.[j] ?? 0;
  const axis = (a: Axis) => {
    const slope = x[SLOPE[a]] ?? 0;
    const curve = curvatureOf(x, a);
    const offset = slope / (2 * curve);
    // Peak = slope / (2 curvature); its variance by propagation of errors.
    const [i, j] = [SLOPE[a], CURVE[a]];
    const variance = cov(i, i) - 4 * offset * cov(i, j) + 4 * offset * offset * cov(j, j);
    return {
      peak: { at: origin[a] + offset, sd: Math.sqrt(Math.max(0, variance)) / (2 * curve) },
      curvature: { value: curve, sd: Math.sqrt(Math.max(0, cov(j, j))) },
    };
  };
  const [h, v] = [axis('horizontal'), axis('vertical')];
  const heights = gains.map((gain, k) => {
    const gradient = [...gradientOf(x), ...gains.map((_, g) => (g === k ? 1 : 0))];
    const variance = gradient.reduce(
      (sum, gi, p) => sum + gradient.reduce((inner, gj, q) => inner + gi * gj * cov(p, q), 0),
      0,
    );
    // Second order: a peak that may lie far away may also lie high.
    const far = (a: typeof h) => a.curvature.value * a.peak.sd ** 2;
    const sd = Math.hypot(Math.sqrt(Math.max(0, variance)), far(h), far(v));
    return [gain, { db: peakHeight(x, k), sd }] as const;
  });
  return {
    peak: { horizontal: h.peak, vertical: v.peak },
    curvature: { horizontal: h.curvature, vertical: v.curvature },
    heights: new Map(heights),
    lash,
    chi2,
  };
}

/** How the peak's height changes with each slope and curvature: of `b^2 / 4c`. */
function gradientOf(x: readonly number[]): number[] {
  const offset = (a: Axis) => (x[SLOPE[a]] ?? 0) / (2 * curvatureOf(x, a));
  const [h, v] = [offset('horizontal'), offset('vertical')];
  return [h, v, -h * h, -v * v];
}

/** Decibels below the peak at a pointing. */
export function dropAt(beam: Beam, point: PerAxis<number>): number {
  const fall = (a: Axis) => beam.curvature[a].value * (point[a] - beam.peak[a].at) ** 2;
  return fall('horizontal') + fall('vertical');
}
