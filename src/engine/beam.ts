import type { MeterProfile } from '../model/profile.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { Equations, type Solution } from './leastsq.ts';
import { lostDb, saturatedDb } from './level.ts';
import type { PerAxis, Sample } from './sample.ts';
import { bend, bentSd, RARE_SHAPES, type Shape, straighten, straightSd } from './shape.ts';

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

export interface Estimate {
  readonly value: number;
  readonly sd: number;
}

/** The fitted parameters, enough to predict a reading anywhere. */
interface Fit {
  readonly solution: Solution;
  /** Turns of each screw before the newest reading: the fit holds for the screws as they stand since then. */
  readonly turns: PerAxis<number>;
  readonly origin: PerAxis<number>;
  readonly gains: readonly number[];
}

/**
 * What is assumed before any reading, and how firmly. A half-power half-width of seven eighths of a turn,
 * within a factor of two; slopes as of a beam a few turns away; both adjusters alike, and the beam not turned against
 * them, until the readings say otherwise. Common practice, no source; a few readings count more.
 */
const CURVATURE = { value: 0.06, sd: 0.06 };
const ALIKE = 0.4;
const TURNED = 0.15;
const LEAST_CURVATURE = 0.006;
const SLOPE_SD = 3;
const HEIGHT_SD = 25;

/**
 * Readings far below the peak say less about it: no beam is a parabola all the way down. On a meter of
 * unknown law only the readings next to the peak form a parabola, whatever the law. dB.
 */
const shapeSd = (dropDb: number, meter: MeterProfile): number =>
  0.03 + (meter.law === 'unknown' ? 0.3 : 0.06) * Math.max(0, dropDb);

/**
 * How far a hand turns from what was asked, eighths, one standard deviation: an eighth of an eighth (common practice, no
 * source). The errors add up: the older a reading, the less is known of its place.
 */
const HAND_SD = 1 / 8;

/** How firmly a censored reading on the wrong side of its limit is held to the limit. dB. */
const CENSOR_SD = 0.7;

/** Light from elsewhere: this much brighter than predicted, dB and standard deviations, this far below the peak, dB. */
const OTHER_LIGHT = { excess: 3, sds: 2.5, below: 4, levels: 5, suspect: 0.7, most: 12 };

/** The fit uses only this many of the newest readings, so that a decision has a limited cost. */
const LOOKED_AT = 28;
/** Censored readings and straightened drops depend on the fit, so it is repeated until it no longer changes. */
const PASSES = 10;
const STANDS = 0.01;

/** A reading that alone sets a parameter has a leverage of one: it agrees with anything. */
const MOST_LEVERAGE = 0.98;

// Parameters: slope and curvature of each adjuster at the origin, then one height for each gain setting; for a turned
// beam the cross term comes last.
const SLOPE = { horizontal: 0, vertical: 1 } as const;
const CURVE = { horizontal: 2, vertical: 3 } as const;
const HEIGHTS = 4;
const parametersOf = (gains: number): number => HEIGHTS + gains + 1;

export const pointingOf = (s: Sample, axis: Axis, backlash: PerAxis<number>): number =>
  s.pointing[axis][backlash[axis]] ?? s.turned[axis];

/** Another shape is used only if it explains the readings better than a Gaussian by this much. */
const FLATTER_BY = 6;

/**
 * Fits the beam; undefined without any level. Readings too far above what the others predict are light from
 * elsewhere: they are named and left out. Several of them hide each other, so the brightest are first set
 * aside one by one, and those that the rest can explain come back. `rare`: with the shapes that few beams have, too.
 */
export function fitBeam(
  samples: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  rare = false,
): Beam | undefined {
  const whole = fitBestShape(samples, meter, backlash, rare);
  // With an unknown law, a low reading cannot be told from light from elsewhere.
  if (!whole || meter.law === 'unknown') return whole;
  let [beam, rest]: [Beam | undefined, readonly Sample[]] = [whole, samples];
  const suspects: Sample[] = [];
  while (beam && suspects.length < OTHER_LIGHT.most) {
    const suspect = brightest(beam, rest);
    if (!suspect) break;
    suspects.push(suspect);
    rest = rest.filter((s) => s !== suspect);
    beam = fitBestShape(rest, meter, backlash, rare);
  }
  if (!beam || suspects.length === 0) return whole;
  const found = beam;
  const otherLight = suspects.filter((s) => isFromElsewhere(found, s, meter));
  if (otherLight.length === 0) return whole;
  if (otherLight.length === suspects.length) return { ...beam, otherLight };
  const own = fitBestShape(
    samples.filter((s) => !otherLight.includes(s)),
    meter,
    backlash,
    rare,
  );
  return own && { ...own, otherLight };
}

/** Too bright for the beam at its place; false at a gain whose height is not known. */
export function isFromElsewhere(beam: Beam, s: Sample, meter: MeterProfile): boolean {
  const expected = predict(beam, s);
  if (!expected || s.level.kind === 'below') return false;
  const sd = Math.hypot(expected.sd, shapeSd(dropAt(beam, s), meter));
  return s.level.db - expected.value > Math.max(OTHER_LIGHT.excess, OTHER_LIGHT.sds * sd);
}

/** The reading that is highest above what the others predict, among those too low to be near the peak. */
function brightest(beam: Beam, samples: readonly Sample[]): Sample | undefined {
  if (samples.filter((s) => s.level.kind === 'level').length < OTHER_LIGHT.levels) return undefined;
  const excess = (s: Sample): number => {
    const top = beam.heights.get(s.gain);
    if (s.level.kind !== 'level' || !top) return 0;
    return top.value - s.level.db > OTHER_LIGHT.below ? (beam.excess.get(s) ?? 0) : 0;
  };
  return samples.reduce<Sample | undefined>(
    (best, s) => (excess(s) > (best ? excess(best) : OTHER_LIGHT.suspect) ? s : best),
    undefined,
  );
}

function fitBestShape(
  samples: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  rare: boolean,
): Beam | undefined {
  const solved = solveBestShape(samples, meter, backlash, rare);
  return solved && beamOf(solved);
}

function solveBestShape(
  samples: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  rare: boolean,
): Solved | undefined {
  const gaussian = solveShape(samples, meter, backlash, 1);
  const levels = samples.filter((s) => s.level.kind === 'level').length;
  const enough = levels + FLATTER_BY;
  if (!gaussian || levels < OTHER_LIGHT.levels || gaussian.chi2 < enough) return gaussian;
  const flat = solveShape(samples, meter, backlash, 2);
  const usual = flat && flat.chi2 + FLATTER_BY < gaussian.chi2 ? flat : gaussian;
  if (!rare || usual.chi2 < enough) return usual;
  return RARE_SHAPES.reduce<Solved>((best, shape) => {
    const other = solveShape(samples, meter, backlash, shape);
    // It must explain the readings wholly: else it would explain a slip, too.
    const isGood = other && other.chi2 < enough;
    return isGood && other.chi2 + FLATTER_BY < best.chi2 ? other : best;
  }, usual);
}

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
  readonly place: Pick<Fit, 'turns' | 'origin' | 'gains'>;
  readonly meter: MeterProfile;
  readonly backlash: PerAxis<number>;
  readonly shape: Shape;
}

/** The first half of `fitShape`. */
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
  const place = { turns, origin, gains };
  const solution = equations.solution();
  return { solution, chi2: solution.chi2, points, tops, place, meter, backlash, shape };
}

/** The second half of `fitShape`. */
export function beamOf({ solution, chi2, points, tops, place, meter, backlash, shape }: Solved): Beam {
  const { x, covariance } = solution;
  const levels = points.filter(({ s }) => s.level.kind === 'level').length;
  const fit = { ...place, solution: honest(solution, levels) };
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

function coefficientsAt(
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
function row(gains: number, along: readonly number[], gain: number, cross: number): ArrayLike<number> {
  const coefficients = new Float64Array(parametersOf(gains));
  coefficients.set(along);
  if (gain >= 0) coefficients[HEIGHTS + gain] = 1;
  coefficients[HEIGHTS + gains] = cross;
  return coefficients;
}

/** By how much the place of a reading may have strayed from the screws as they stood at `turns`, eighths. */
const strayedBy = (s: Sample, turns: PerAxis<number>): PerAxis<number> => {
  const along = (axis: Axis) => HAND_SD * Math.sqrt(Math.abs(turns[axis] - s.turns[axis]));
  return { horizontal: along('horizontal'), vertical: along('vertical') };
};

/** What the steepness of a parabola at a place depends on. */
interface Slopes {
  readonly at: PerAxis<number>;
  readonly curvature: PerAxis<number>;
  readonly cross: number;
}

const slopesOf = (x: ArrayLike<number>, gains: number): Slopes => ({
  at: { horizontal: x[SLOPE.horizontal] ?? 0, vertical: x[SLOPE.vertical] ?? 0 },
  curvature: { horizontal: curvatureOf(x, 'horizontal'), vertical: curvatureOf(x, 'vertical') },
  cross: crossOf(x, gains),
});

/** What that makes of the reading: the slope of the parabola there, times it. dB. */
function strayDb(
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

const height = (s: Sample | undefined): number =>
  s?.level.kind === 'level' ? s.level.db : Number.NEGATIVE_INFINITY;

const topOf = (samples: readonly Sample[], gain: number): number =>
  samples.reduce((top, s) => (s.gain === gain ? Math.max(top, height(s)) : top), Number.NEGATIVE_INFINITY);

/** Two independent standard deviations combined; `Math.hypot` is many times slower. */
const together = (a: number, b: number): number => Math.sqrt(a * a + b * b);

const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
};

const quadratic = (a: ArrayLike<number>, covariance: Solution['covariance']): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * dot(covariance[i] as ArrayLike<number>, a);
  return sum;
};

const curvatureOf = (x: ArrayLike<number>, axis: Axis): number =>
  Math.max(LEAST_CURVATURE, x[CURVE[axis]] ?? 0);

/** A beam is at most so much longer one way: nearer to one, its peak would be a ridge without end. */
const MOST_CROSS = 0.9;

function crossOf(x: ArrayLike<number>, gains: number): number {
  const most = MOST_CROSS * 2 * Math.sqrt(curvatureOf(x, 'horizontal') * curvatureOf(x, 'vertical'));
  return Math.max(-most, Math.min(most, x[HEIGHTS + gains] ?? 0));
}

/** The inverse of the parabola's second derivatives: how far each adjuster's peak moves with each slope. */
function inverseOf(x: ArrayLike<number>, gains: number): PerAxis<PerAxis<number>> {
  const [h, v] = [2 * curvatureOf(x, 'horizontal'), 2 * curvatureOf(x, 'vertical')];
  const c = crossOf(x, gains);
  const det = h * v - c * c;
  return {
    horizontal: { horizontal: v / det, vertical: -c / det },
    vertical: { horizontal: -c / det, vertical: h / det },
  };
}

/** From the origin to the peak, eighths. */
function offsets(x: ArrayLike<number>, gains: number): PerAxis<number> {
  const inverse = inverseOf(x, gains);
  const along = (axis: Axis) =>
    inverse[axis].horizontal * (x[SLOPE.horizontal] ?? 0) + inverse[axis].vertical * (x[SLOPE.vertical] ?? 0);
  return { horizontal: along('horizontal'), vertical: along('vertical') };
}

/** The height of the peak at each gain; `gains`: how many there are. */
function peakHeights(x: ArrayLike<number>, gains: number): number[] {
  const offset = offsets(x, gains);
  const rise = (axis: Axis) => ((x[SLOPE[axis]] ?? 0) * offset[axis]) / 2;
  const [h, v] = [rise('horizontal'), rise('vertical')];
  return Array.from({ length: gains }, (_, gain) => (x[HEIGHTS + gain] ?? 0) + h + v);
}

/** The same, and at least what was read there. */
const heightsAt = (x: ArrayLike<number>, tops: readonly number[]): number[] =>
  peakHeights(x, tops.length).map((height, gain) => Math.max(tops[gain] as number, height));

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
