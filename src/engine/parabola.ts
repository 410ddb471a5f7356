import type { Axis } from '../model/turns.ts';
import type { Solution } from './leastsq.ts';
import type { PerAxis, Sample } from './sample.ts';

/** The parabola that a beam is in decibels: its parameters, and what follows from them. */

// Parameters: slope and curvature of each adjuster at the origin, then one height for each gain setting; for a turned
// beam the cross term comes last.
export const SLOPE = { horizontal: 0, vertical: 1 } as const;
export const CURVE = { horizontal: 2, vertical: 3 } as const;
export const HEIGHTS = 4;
export const parametersOf = (gains: number): number => HEIGHTS + gains + 1;

export const pointingOf = (s: Sample, axis: Axis, backlash: PerAxis<number>): number =>
  s.pointing[axis][backlash[axis]] ?? s.turned[axis];

/** No beam is wider. dB per eighth squared. */
const LEAST_CURVATURE = 0.006;

/**
 * How far a hand turns from what was asked, eighths, one standard deviation: an eighth of an eighth (common practice, no
 * source). The errors add up: the older a reading, the less is known of its place.
 */
const HAND_SD = 1 / 8;

export function coefficientsAt(
  s: Sample,
  backlash: PerAxis<number>,
  origin: PerAxis<number>,
  gains: readonly number[],
): ArrayLike<number> {
  const x = pointingOf(s, 'horizontal', backlash) - origin.horizontal;
  const y = pointingOf(s, 'vertical', backlash) - origin.vertical;
  return row(gains.length, [x, y, -x * x, -y * y], gains.indexOf(s.gain), -x * y);
}

/** One row of the system: along the adjusters, at which gain (-1: at none), and the cross term. */
export function row(gains: number, along: readonly number[], gain: number, cross: number): ArrayLike<number> {
  const coefficients = new Float64Array(parametersOf(gains));
  coefficients.set(along);
  if (gain >= 0) coefficients[HEIGHTS + gain] = 1;
  coefficients[HEIGHTS + gains] = cross;
  return coefficients;
}

/** By how much the place of a reading may have strayed from the screws as they stood at `turns`, eighths. */
export const strayedBy = (s: Sample, turns: PerAxis<number>): PerAxis<number> => {
  const along = (axis: Axis) => HAND_SD * Math.sqrt(Math.abs(turns[axis] - s.turns[axis]));
  return { horizontal: along('horizontal'), vertical: along('vertical') };
};

/** What the steepness of a parabola at a place depends on. */
interface Slopes {
  readonly at: PerAxis<number>;
  readonly curvature: PerAxis<number>;
  readonly cross: number;
}

export const slopesOf = (x: ArrayLike<number>, gains: number): Slopes => ({
  at: { horizontal: x[SLOPE.horizontal] ?? 0, vertical: x[SLOPE.vertical] ?? 0 },
  curvature: { horizontal: curvatureOf(x, 'horizontal'), vertical: curvatureOf(x, 'vertical') },
  cross: crossOf(x, gains),
});

/** What that makes of the reading: the slope of the parabola there, times it. dB. */
export function strayDb(
  coefficients: ArrayLike<number>,
  strayed: PerAxis<number>,
  { at, curvature, cross }: Slopes,
): number {
  const h = coefficients[SLOPE.horizontal] as number;
  const v = coefficients[SLOPE.vertical] as number;
  return together(
    (at.horizontal - 2 * curvature.horizontal * h - cross * v) * strayed.horizontal,
    (at.vertical - 2 * curvature.vertical * v - cross * h) * strayed.vertical,
  );
}

/** Two independent standard deviations combined; `Math.hypot` is many times slower. */
export const together = (a: number, b: number): number => Math.sqrt(a * a + b * b);

export const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
};

export const quadratic = (a: ArrayLike<number>, covariance: Solution['covariance']): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * dot(covariance[i] as ArrayLike<number>, a);
  return sum;
};

export const curvatureOf = (x: ArrayLike<number>, axis: Axis): number =>
  Math.max(LEAST_CURVATURE, x[CURVE[axis]] ?? 0);

/** A beam is at most so much longer one way: nearer to one, its peak would be a ridge without end. */
const MOST_CROSS = 0.9;

export function crossOf(x: ArrayLike<number>, gains: number): number {
  const most = MOST_CROSS * 2 * Math.sqrt(curvatureOf(x, 'horizontal') * curvatureOf(x, 'vertical'));
  return Math.max(-most, Math.min(most, x[HEIGHTS + gains] ?? 0));
}

/** The inverse of the parabola's second derivatives: how far each adjuster's peak moves with each slope. */
export function inverseOf(x: ArrayLike<number>, gains: number): PerAxis<PerAxis<number>> {
  const [h, v] = [2 * curvatureOf(x, 'horizontal'), 2 * curvatureOf(x, 'vertical')];
  const c = crossOf(x, gains);
  const det = h * v - c * c;
  return {
    horizontal: { horizontal: v / det, vertical: -c / det },
    vertical: { horizontal: -c / det, vertical: h / det },
  };
}

/** From the origin to the peak, eighths. */
export function offsets(x: ArrayLike<number>, gains: number): PerAxis<number> {
  const inverse = inverseOf(x, gains);
  const along = (axis: Axis) =>
    inverse[axis].horizontal * (x[SLOPE.horizontal] ?? 0) + inverse[axis].vertical * (x[SLOPE.vertical] ?? 0);
  return { horizontal: along('horizontal'), vertical: along('vertical') };
}

/** The height of the peak at each gain; `gains`: how many there are. */
export function peakHeights(x: ArrayLike<number>, gains: number): number[] {
  const offset = offsets(x, gains);
  const rise = (axis: Axis) => ((x[SLOPE[axis]] ?? 0) * offset[axis]) / 2;
  const [h, v] = [rise('horizontal'), rise('vertical')];
  return Array.from({ length: gains }, (_, gain) => (x[HEIGHTS + gain] ?? 0) + h + v);
}

/** The same, and at least what was read there. */
export const heightsAt = (x: ArrayLike<number>, tops: readonly number[]): number[] =>
  peakHeights(x, tops.length).map((height, gain) => Math.max(tops[gain] as number, height));
