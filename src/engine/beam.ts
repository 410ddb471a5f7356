import type { MeterProfile } from '../model/profile.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { type Estimate, type Frame, type Solved, shapeSd, solveShape } from './fit.ts';
import type { Solution } from './leastsq.ts';
import {
  CURVE,
  coefficientsAt,
  crossOf,
  curvatureOf,
  dot,
  heightsAt,
  inverseOf,
  offsets,
  peakHeights,
  pointingOf,
  quadratic,
  slopesOf,
  strayDb,
  strayedBy,
  together,
} from './parabola.ts';
import type { PerAxis, Sample } from './sample.ts';
import { bend, bentSd, type Shape, straighten, straightSd } from './shape.ts';

/**
 * The beam as its readings show it: in decibels a parabola along each adjuster, with one height for each gain
 * setting (Gaussian beam, `P = P0 exp(-2 theta^2 / w^2)`, optics textbook). Positions are pointings, eighths.
 */
export interface Beam {
  readonly peak: PerAxis<Estimate>;
  /** Fall from the peak, dB per eighth squared. */
  readonly curvature: PerAxis<Estimate>;
  /** Fall from the peak per eighth of both adjusters, dB: not zero where the beam is longer one way and turned. */
  readonly cross: number;
  /** Height of the peak at each gain setting, dB. */
  readonly heights: ReadonlyMap<number, Estimate>;
  readonly shape: Shape;
  /** The index in `BACKLASHES` used for the pointings. */
  readonly backlash: PerAxis<number>;
  /** Readings that are too bright for this beam at their places: light from elsewhere. */
  readonly otherLight: readonly Sample[];
  /**
   * How far each reading is above what the others predict at its place, dB: its residual divided by one minus
   * its leverage (deleted residual, regression textbooks). A far reading pulls the beam towards itself, so
   * its plain residual is too small.
   */
  readonly excess: ReadonlyMap<Sample, number>;
  /** How far below the peak levels were read, dB: the shape is known down to there. */
  readonly readDownTo: number;
  /** Weighted sum of squared residuals: the larger, the less the readings look like one beam. */
  readonly chi2: number;
  readonly fit: Fit;
}

/** The fitted parameters, enough to predict a reading anywhere. */
interface Fit extends Frame {
  readonly solution: Solution;
}

/** A reading that alone sets a parameter has a leverage of one: it agrees with anything. */
const MOST_LEVERAGE = 0.98;

/** Fits a beam of one shape. */
export function fitShape(
  all: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  shape: Shape,
): Beam | undefined {
  const solved = solveShape(all, meter, backlash, shape);
  return solved && beamOf(solved);
}

/** Describes what was solved. */
export function beamOf({ solution, chi2, points, tops, frame, meter, backlash, shape }: Solved): Beam {
  const { x, covariance } = solution;
  const levels = points.filter(({ s }) => s.level.kind === 'level').length;
  const fit = { ...frame, solution: honest(solution, levels) };
  const found = { ...describe(fit), backlash, shape };
  const drops = points.map(({ s }) => (s.level.kind === 'level' ? dropAt(found, s) : 0));
  const peaks = heightsAt(x, tops);
  const slopes = slopesOf(x, tops.length);
  const excess = new Map<Sample, number>();
  for (const { s, gain, coefficients, strayed } of points) {
    if (s.level.kind !== 'level') continue;
    const top = peaks[gain] as number;
    const drop = top - s.level.db;
    const read = straightSd(drop, together(s.level.sd, shapeSd(drop, meter)), shape);
    const sd = together(read, strayDb(coefficients, strayed, slopes));
    const leverage = Math.min(MOST_LEVERAGE, quadratic(coefficients, covariance) / sd ** 2);
    const residual = top - straighten(drop, shape) - dot(coefficients, x);
    const others = Math.max(0, straighten(drop, shape) + residual / (1 - leverage));
    excess.set(s, bend(others, shape) - drop);
  }
  return { ...found, otherLight: [], readDownTo: Math.max(...drops), excess, chi2, fit };
}

/** The reading that the beam predicts at a sample's place and gain; undefined at a gain without readings. */
export function predict({ fit, backlash, shape, heights }: Beam, place: Sample): Estimate | undefined {
  const { solution, turns, origin, gains } = fit;
  const top = heights.get(place.gain);
  if (!top) return undefined;
  const a = coefficientsAt(place, backlash, origin, gains);
  const drop = Math.max(0, top.value - dot(a, solution.x));
  const strayed = strayDb(a, strayedBy(place, turns), slopesOf(solution.x, gains.length));
  const sd = together(Math.sqrt(Math.max(0, quadratic(a, solution.covariance))), strayed);
  return { value: top.value - bend(drop, shape), sd: bentSd(drop, sd, shape) };
}

/**
 * If the readings scatter around the parabola more than their noise explains, all uncertainties grow in
 * proportion (Birge ratio, metrology textbooks).
 */
function honest(solution: Solution, levels: number): Solution {
  const ratio = Math.max(1, solution.chi2 / Math.max(1, levels - 3));
  const covariance = solution.covariance.map((row) => Float64Array.from(row, (value) => value * ratio));
  return { ...solution, covariance };
}

/** Peak, width and height from the parameters, with their uncertainties by propagation of errors. */
function describe({
  solution: { x, covariance },
  origin,
  gains,
}: Fit): Pick<Beam, 'peak' | 'curvature' | 'cross' | 'heights'> {
  const { horizontal: h, vertical: v } = offsets(x, gains.length);
  const inverse = inverseOf(x, gains.length);
  const sdOf = (gradient: readonly number[]) => Math.sqrt(Math.max(0, quadratic(gradient, covariance)));
  const along = (axis: Axis) => {
    const { horizontal: toH, vertical: toV } = inverse[axis];
    const cross = -toH * v - toV * h;
    const gradient = [toH, toV, -2 * h * toH, -2 * v * toV, ...gains.map(() => 0), cross];
    const j = CURVE[axis];
    return {
      peak: { value: origin[axis] + (axis === 'horizontal' ? h : v), sd: sdOf(gradient) },
      curvature: { value: curvatureOf(x, axis), sd: Math.sqrt(Math.max(0, covariance[j]?.[j] ?? 0)) },
    };
  };
  const horizontal = along('horizontal');
  const vertical = along('vertical');
  // Second order: a peak that may be far away may also be high.
  const peaks = peakHeights(x, gains.length);
  const far = ({ peak, curvature }: typeof horizontal) => curvature.value * peak.sd ** 2;
  const heights = gains.map((gain, k) => {
    const gradient = [h, v, -h * h, -v * v, ...gains.map((_, g) => (g === k ? 1 : 0)), -h * v];
    const sd = Math.hypot(sdOf(gradient), far(horizontal), far(vertical));
    return [gain, { value: peaks[k] as number, sd }] as const;
  });
  return {
    peak: { horizontal: horizontal.peak, vertical: vertical.peak },
    curvature: { horizontal: horizontal.curvature, vertical: vertical.curvature },
    cross: crossOf(x, gains.length),
    heights: new Map(heights),
  };
}

type Form = Pick<Beam, 'peak' | 'curvature' | 'cross' | 'backlash' | 'shape'>;

/** Decibels below the peak at a sample's place. */
export function dropAt(beam: Form, place: Sample): number {
  const [h, v] = [offPeak(beam, place, 'horizontal'), offPeak(beam, place, 'vertical')];
  const { horizontal, vertical } = beam.curvature;
  const straight = horizontal.value * h * h + vertical.value * v * v + beam.cross * h * v;
  return bend(Math.max(0, straight), beam.shape);
}

/**
 * Decibels lost by being off one adjuster's peak, with the other at its own. Computed for a Gaussian whatever
 * the shape: next to the peak that is the most it can be, and readings that no single beam explains look
 * flat-topped.
 */
export const lossDb = (beam: Form, place: Sample, axis: Axis): number =>
  beam.curvature[axis].value * offPeak(beam, place, axis) ** 2;

/** Decibels that an adjuster's peak may cost because it is not known better. */
export const doubtDb = ({ curvature, peak, shape }: Form, axis: Axis): number =>
  bend(curvature[axis].value * peak[axis].sd ** 2, shape);

/** Half-power half-width, eighths. */
export const halfWidth = ({ curvature }: Form, axis: Axis): number => Math.sqrt(3 / curvature[axis].value);

const offPeak = ({ peak, backlash }: Form, place: Sample, axis: Axis): number =>
  pointingOf(place, axis, backlash) - peak[axis].value;

/** How far the other adjuster may be off its peak while this one is judged, eighths. */
export const nearPeak = (beam: Form | undefined, axis: Axis): number =>
  beam ? Math.max(1, halfWidth(beam, axis) / 3) : 1;

/**
 * How far from the peak its sides are read: as far as one turn of the hand, so that a higher peak nearby
 * would show, even if this one is narrow; on a very wide beam, far enough to see it fall. Eighths.
 */
export const sideDistance = (beam: Form | undefined, axis: Axis, maxStep: Eighths): number =>
  beam ? Math.max(maxStep, Math.round(halfWidth(beam, axis) / 2)) : 2;

/** A side reading must be taken at this share of that distance or more. */
const REACHED = 0.6;

/** Rounding and a better fit may move the peak a little after its sides were read: so far from it they count. Eighths. */
export const sideReach = (beam: Form | undefined, axis: Axis, maxStep: Eighths): number =>
  REACHED * sideDistance(beam, axis, maxStep);

/** Nearer than this is on the peak, not next to it. Eighths. */
export const CLOSE = 2;

/** How much higher than a place the fitted peak may be, uncertainty included, whatever the shape. dB. */
export function shortfallDb(beam: Form, place: Sample): number {
  const worst = (axis: Axis) =>
    lossDb(beam, place, axis) + beam.curvature[axis].value * beam.peak[axis].sd ** 2;
  const both = offPeak(beam, place, 'horizontal') * offPeak(beam, place, 'vertical');
  const unsure = beam.peak.horizontal.sd * beam.peak.vertical.sd;
  return (
    worst('horizontal') + worst('vertical') + Math.max(0, beam.cross * both) + Math.abs(beam.cross) * unsure
  );
}
