import type { MeterProfile } from '../model/profile.ts';
import { Equations, type Solution } from './leastsq.ts';
import { lostDb, saturatedDb } from './level.ts';
import {
  coefficientsAt,
  crossOf,
  curvatureOf,
  dot,
  heightsAt,
  parametersOf,
  pointingOf,
  row,
  slopesOf,
  strayDb,
  strayedBy,
  together,
} from './parabola.ts';
import type { PerAxis, Sample } from './sample.ts';
import { type Shape, straighten, straightSd } from './shape.ts';

/** The parameters of the parabola that lies nearest to the readings, by weighted least squares. */

export interface Estimate {
  readonly value: number;
  readonly sd: number;
}

/**
 * What is assumed before any reading, and how firmly. A half-power half-width of seven eighths of a turn,
 * within a factor of two; slopes as of a beam a few turns away; both adjusters alike, and the beam not turned against
 * them, until the readings say otherwise. Common practice, no source; a few readings count more.
 */
const CURVATURE = { value: 0.06, sd: 0.06 };
const ALIKE = 0.4;
const TURNED = 0.15;
const SLOPE_SD = 3;
const HEIGHT_SD = 25;

/**
 * Readings far below the peak say less about it: no beam is a parabola all the way down. On a meter of
 * unknown law only the readings next to the peak form a parabola, whatever the law. dB.
 */
export const shapeSd = (dropDb: number, meter: MeterProfile): number =>
  0.03 + (meter.law === 'unknown' ? 0.3 : 0.06) * Math.max(0, dropDb);

/** How firmly a censored reading on the wrong side of its limit is held to the limit. dB. */
const CENSOR_SD = 0.7;

/** The fit uses only this many of the newest readings, so that a decision has a limited cost. */
const LOOKED_AT = 28;
/** Censored readings and straightened drops depend on the fit, so it is repeated until it no longer changes. */
const PASSES = 10;
const STANDS = 0.01;

/** What the parameters of a fit are counted from. */
export interface Frame {
  /** Turns of each screw before the newest reading: the fit holds for the screws as they stand since then. */
  readonly turns: PerAxis<number>;
  readonly origin: PerAxis<number>;
  readonly gains: readonly number[];
}

/** A reading where the fit looks at it. */
interface Point {
  readonly s: Sample;
  /** Which of the fit's gains. */
  readonly gain: number;
  readonly coefficients: ArrayLike<number>;
  readonly strayed: PerAxis<number>;
}

/** The parameters of a beam of one shape: what it takes to compare it with others, before it is described. */
export interface Solved {
  readonly solution: Solution;
  /** As of the beam. */
  readonly chi2: number;
  readonly points: readonly Point[];
  /** Of each gain, the highest that was read. */
  readonly tops: readonly number[];
  readonly frame: Frame;
  readonly meter: MeterProfile;
  readonly backlash: PerAxis<number>;
  readonly shape: Shape;
}

/** Fits a beam of one shape; undefined without any level. */
export function solveShape(
  all: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  shape: Shape,
): Solved | undefined {
  const samples = all.slice(-LOOKED_AT);
  const best = samples.reduce<Sample | undefined>((top, s) => (height(s) > height(top) ? s : top), undefined);
  if (!best || height(best) === Number.NEGATIVE_INFINITY) return undefined;
  const gains = [...new Set(samples.map((s) => s.gain))];
  const origin = {
    horizontal: pointingOf(best, 'horizontal', backlash),
    vertical: pointingOf(best, 'vertical', backlash),
  };
  const tops = gains.map((gain) => topOf(samples, gain));
  const { turns } = samples[samples.length - 1] ?? best;
  const points = samples.map((s) => ({
    s,
    gain: gains.indexOf(s.gain),
    coefficients: coefficientsAt(s, backlash, origin, gains),
    strayed: strayedBy(s, turns),
  }));
  const limits = { above: saturatedDb(meter), below: lostDb(meter) };

  const believed = assumed(gains.length);
  const equations = new Equations(parametersOf(gains.length), believed.length + points.length);
  const { x } = equations;
  let before: number | undefined;
  let curve: Estimate = CURVATURE;
  let [unlike, turned] = [0, TURNED * CURVATURE.sd];
  for (let pass = 0; pass < PASSES; pass++) {
    const isFirst = before === undefined;
    equations.clear();
    const prior = priorOf(gains.length, curve, unlike, turned, height(best));
    for (const [i, { value, sd }] of prior.entries())
      equations.add(believed[i] as ArrayLike<number>, value, sd);
    const peaks = isFirst ? tops : heightsAt(x, tops);
    const slopes = isFirst ? undefined : slopesOf(x, gains.length);
    for (const { s, gain, coefficients, strayed } of points) {
      const top = peaks[gain] as number;
      const unsure = slopes ? strayDb(coefficients, strayed, slopes) : 0;
      if (s.level.kind === 'level') {
        const drop = top - s.level.db;
        const sd = together(s.level.sd, shapeSd(drop, meter));
        const value = top - straighten(drop, shape);
        equations.add(coefficients, value, together(straightSd(drop, sd, shape), unsure));
      } else if (!isFirst) {
        const predicted = dot(coefficients, x);
        const drop = Math.max(0, top - limits[s.level.kind]);
        const limit = top - straighten(drop, shape);
        const isWrong = s.level.kind === 'above' ? predicted < limit : predicted > limit;
        const sd = together(CENSOR_SD, shapeSd(drop, meter));
        if (isWrong) equations.add(coefficients, limit, together(straightSd(drop, sd, shape), unsure));
      }
    }
    if (!equations.solve()) return undefined;
    const { chi2 } = equations;
    if (before !== undefined && Math.abs(chi2 - before) < STANDS * (1 + before) && pass > 1) break;
    before = chi2;
    const [h, v] = [curvatureOf(x, 'horizontal'), curvatureOf(x, 'vertical')];
    curve = { value: CURVATURE.value, sd: Math.max(CURVATURE.sd, (h + v) / 4) };
    unlike = h - v;
    // Of a wide beam all that bends is small, the cross term too.
    turned = together(TURNED * Math.min(curve.sd, (h + v) / 2), crossOf(x, gains.length));
  }
  const frame = { turns, origin, gains };
  const solution = equations.solution();
  return { solution, chi2: solution.chi2, points, tops, frame, meter, backlash, shape };
}

const height = (s: Sample | undefined): number =>
  s?.level.kind === 'level' ? s.level.db : Number.NEGATIVE_INFINITY;

const topOf = (samples: readonly Sample[], gain: number): number =>
  samples.reduce((top, s) => (s.gain === gain ? Math.max(top, height(s)) : top), Number.NEGATIVE_INFINITY);

/** What is assumed before any reading, as rows of the same system: of what. `priorOf` says how much. */
const assumed = (gains: number): ArrayLike<number>[] => [
  row(gains, [1], -1, 0),
  row(gains, [0, 1], -1, 0),
  row(gains, [0, 0, 1], -1, 0),
  row(gains, [0, 0, 0, 1], -1, 0),
  row(gains, [0, 0, 1, -1], -1, 0),
  ...Array.from({ length: gains }, (_, gain) => row(gains, [], gain, 0)),
  row(gains, [], -1, 1),
];

/**
 * Its values, in the order of `assumed`. That both adjusters are alike is believed only until
 * the readings say otherwise (a heavy tail, as of Cauchy's distribution): `unlike` is by how much they do.
 */
const priorOf = (gains: number, curve: Estimate, unlike: number, turned: number, top: number): Estimate[] => [
  { value: 0, sd: SLOPE_SD },
  { value: 0, sd: SLOPE_SD },
  curve,
  curve,
  { value: 0, sd: together(ALIKE * curve.sd, unlike) },
  ...Array.from({ length: gains }, () => ({ value: top, sd: HEIGHT_SD })),
  { value: 0, sd: turned },
];
