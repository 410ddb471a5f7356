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
  readonly peak: PerAxis<Estimate>;
  /** Fall from the peak, dB per eighth squared. */
  readonly curvature: PerAxis<Estimate>;
  /** Height of the peak at each gain setting, dB. */
  readonly heights: ReadonlyMap<number, Estimate>;
  /** Index in `LASHES` the pointings were taken with. */
  readonly lash: PerAxis<number>;
  /** Readings brighter than this beam can make them where they were taken: light from elsewhere. */
  readonly otherLight: readonly Sample[];
  /** Weighted sum of squared residuals: the worse, the less the readings look like one beam. */
  readonly chi2: number;
  readonly fit: Fit;
}

export interface Estimate {
  readonly value: number;
  readonly sd: number;
}

/** The fitted parameters, enough to predict a reading anywhere. */
interface Fit {
  readonly solution: Solution;
  readonly origin: PerAxis<number>;
  readonly gains: readonly number[];
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

/** Readings far below the peak tell less about it: no beam is a parabola all the way down. dB. */
const shapeSd = (dropDb: number): number => 0.03 + 0.06 * Math.max(0, dropDb);

/** A censored reading on the wrong side of its limit is held to it this firmly. dB. */
const CENSOR_SD = 0.7;

/** Light from elsewhere: this much brighter than predicted, at least this far below the peak. dB. */
const OTHER_LIGHT = { excess: 3, below: 4, levels: 5 };

/** The fit looks at no more than the newest of the readings: a decision's cost is bounded. */
const LOOKED_AT = 28;
const PASSES = 3;

// Parameters: slope and curvature of each adjuster at the origin, then one height a gain setting.
const SLOPE = { horizontal: 0, vertical: 1 } as const;
const CURVE = { horizontal: 2, vertical: 3 } as const;
const HEIGHTS = 4;

export const pointingOf = (s: Sample, axis: Axis, lash: PerAxis<number>): number =>
  s.pointing[axis][lash[axis]] ?? s.turned[axis];

/** Fits the beam; undefined without a single level to hang it on. */
export function fitBeam(
  all: readonly Sample[],
  meter: MeterProfile,
  lash: PerAxis<number>,
): Beam | undefined {
  const samples = all.slice(-LOOKED_AT);
  const best = samples.reduce<Sample | undefined>((top, s) => (height(s) > height(top) ? s : top), undefined);
  if (!best || height(best) === Number.NEGATIVE_INFINITY) return undefined;
  const gains = [...new Set(samples.map((s) => s.gain))];
  const origin = {
    horizontal: pointingOf(best, 'horizontal', lash),
    vertical: pointingOf(best, 'vertical', lash),
  };
  const points = samples.map((s) => ({ s, coefficients: coefficientsAt(s, lash, origin, gains) }));
  const levels = samples.filter((s) => s.level.kind === 'level').length;
  const otherLight = new Set<Sample>();
  const limits = { above: saturatedDb(meter), below: lostDb(meter) };

  let solution: Solution | undefined;
  let curve: Estimate = CURVATURE;
  for (let pass = 0; pass < PASSES; pass++) {
    const rows: Row[] = prior(gains.length, curve, height(best));
    for (const { s, coefficients } of points) {
      const predicted = solution && dot(coefficients, solution.x);
      const top = solution ? peakHeight(solution.x, gains.indexOf(s.gain)) : topOf(samples, s.gain);
      if (s.level.kind === 'level') {
        const { db } = s.level;
        const sd = Math.hypot(s.level.sd, shapeSd(top - db));
        const excess = predicted === undefined ? 0 : db - predicted;
        const isOther =
          levels >= OTHER_LIGHT.levels &&
          s !== best &&
          top - db > OTHER_LIGHT.below &&
          excess > OTHER_LIGHT.excess + 3 * sd;
        if (isOther) otherLight.add(s);
        else rows.push({ coefficients, value: db, sd });
      } else if (predicted !== undefined) {
        const limit = limits[s.level.kind];
        const isWrong = s.level.kind === 'above' ? predicted < limit : predicted > limit;
        if (isWrong)
          rows.push({ coefficients, value: limit, sd: Math.hypot(CENSOR_SD, shapeSd(top - limit)) });
      }
    }
    solution = leastSquares(rows);
    if (!solution) return undefined;
    const typical = (curvatureOf(solution.x, 'horizontal') + curvatureOf(solution.x, 'vertical')) / 2;
    curve = { value: CURVATURE.value, sd: Math.max(CURVATURE.sd, typical / 2) };
  }
  if (!solution) return undefined;
  const fit = { solution: honest(solution, levels), origin, gains };
  return { ...describe(fit), lash, otherLight: [...otherLight], chi2: solution.chi2, fit };
}

/** The reading the beam predicts at a sample's place and gain; undefined at a gain it has not seen. */
export function predict({ fit, lash }: Beam, place: Sample): Estimate | undefined {
  const { solution, origin, gains } = fit;
  if (!gains.includes(place.gain)) return undefined;
  const a = coefficientsAt(place, lash, origin, gains);
  return { value: dot(a, solution.x), sd: Math.sqrt(Math.max(0, quadratic(a, solution.covariance))) };
}

function coefficientsAt(
  s: Sample,
  lash: PerAxis<number>,
  origin: PerAxis<number>,
  gains: readonly number[],
): number[] {
  const x = pointingOf(s, 'horizontal', lash) - origin.horizontal;
  const y = pointingOf(s, 'vertical', lash) - origin.vertical;
  return [x, y, -x * x, -y * y, ...gains.map((g) => (g === s.gain ? 1 : 0))];
}

const height = (s: Sample | undefined): number =>
  s?.level.kind === 'level' ? s.level.db : Number.NEGATIVE_INFINITY;

const topOf = (samples: readonly Sample[], gain: number): number =>
  samples.reduce((top, s) => (s.gain === gain ? Math.max(top, height(s)) : top), Number.NEGATIVE_INFINITY);

const dot = (a: readonly number[], b: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
};

const quadratic = (a: readonly number[], covariance: readonly (readonly number[])[]): number =>
  dot(
    a,
    covariance.map((row) => dot(row, a)),
  );

const curvatureOf = (x: readonly number[], axis: Axis): number =>
  Math.max(LEAST_CURVATURE, x[CURVE[axis]] ?? 0);

const offsetOf = (x: readonly number[], axis: Axis): number =>
  (x[SLOPE[axis]] ?? 0) / (2 * curvatureOf(x, axis));

function peakHeight(x: readonly number[], gain: number): number {
  const rise = (axis: Axis) => curvatureOf(x, axis) * offsetOf(x, axis) ** 2;
  return (x[HEIGHTS + gain] ?? 0) + rise('horizontal') + rise('vertical');
}

/** What is believed before any reading, as rows of the same system. */
function prior(gains: number, curve: Estimate, top: number): Row[] {
  const unit = (...entries: [number, number][]) => {
    const row = new Array<number>(HEIGHTS + gains).fill(0);
    for (const [i, value] of entries) row[i] = value;
    return row;
  };
  const { horizontal: ch, vertical: cv } = CURVE;
  return [
    { coefficients: unit([SLOPE.horizontal, 1]), value: 0, sd: SLOPE_SD },
    { coefficients: unit([SLOPE.vertical, 1]), value: 0, sd: SLOPE_SD },
    { coefficients: unit([ch, 1]), value: curve.value, sd: curve.sd },
    { coefficients: unit([cv, 1]), value: curve.value, sd: curve.sd },
    { coefficients: unit([ch, 1], [cv, -1]), value: 0, sd: ALIKE * curve.sd },
    ...Array.from({ length: gains }, (_, g) => ({
      coefficients: unit([HEIGHTS + g, 1]),
      value: top,
      sd: HEIGHT_SD,
    })),
  ];
}

/**
 * Where the readings scatter about the parabola more than their noise explains, all uncertainties grow in
 * proportion (Birge ratio, metrology textbooks).
 */
function honest(solution: Solution, levels: number): Solution {
  const ratio = Math.max(1, solution.chi2 / Math.max(1, levels - 3));
  return { ...solution, covariance: solution.covariance.map((row) => row.map((value) => value * ratio)) };
}

/** Peak, width and height from the parameters, with their uncertainties by propagation of errors. */
function describe({
  solution: { x, covariance },
  origin,
  gains,
}: Fit): Pick<Beam, 'peak' | 'curvature' | 'heights'> {
  const [h, v] = [offsetOf(x, 'horizontal'), offsetOf(x, 'vertical')];
  const along = (axis: Axis, offset: number) => {
    const curve = curvatureOf(x, axis);
    const [i, j] = [SLOPE[axis], CURVE[axis]];
    const cov = (p: number, q: number) => covariance[p]?.[q] ?? 0;
    const variance = cov(i, i) - 4 * offset * cov(i, j) + 4 * offset * offset * cov(j, j);
    return {
      peak: { value: origin[axis] + offset, sd: Math.sqrt(Math.max(0, variance)) / (2 * curve) },
      curvature: { value: curve, sd: Math.sqrt(Math.max(0, cov(j, j))) },
    };
  };
  const horizontal = along('horizontal', h);
  const vertical = along('vertical', v);
  // Second order: a peak that may lie far away may also lie high.
  const far = ({ peak, curvature }: typeof horizontal) => curvature.value * peak.sd ** 2;
  const heights = gains.map((gain, k) => {
    const gradient = [h, v, -h * h, -v * v, ...gains.map((_, g) => (g === k ? 1 : 0))];
    const first = Math.sqrt(Math.max(0, quadratic(gradient, covariance)));
    return [
      gain,
      { value: peakHeight(x, k), sd: Math.hypot(first, far(horizontal), far(vertical)) },
    ] as const;
  });
  return {
    peak: { horizontal: horizontal.peak, vertical: vertical.peak },
    curvature: { horizontal: horizontal.curvature, vertical: vertical.curvature },
    heights: new Map(heights),
  };
}

/** Decibels below the peak at a sample's place. */
export function dropAt({ peak, curvature, lash }: Beam, place: Sample): number {
  const fall = (axis: Axis) =>
    curvature[axis].value * (pointingOf(place, axis, lash) - peak[axis].value) ** 2;
  return fall('horizontal') + fall('vertical');
}
