/**
 * How a beam falls off. In units of the half-power radius `r` the drop is `3 r^(2p)` dB: a Gaussian (p = 1)
 * is a parabola in decibels, a flat-topped beam (p = 2, a super-Gaussian) a parabola after its drops are
 * straightened. One exponent converts both ways.
 */
export type Exponent = 1 | 2;

/** Where all shapes agree: half power. dB. */
const HALF_DB = 3;

/** The drop on a parabola of the same half-power width, for a drop on this shape. dB. */
export const straighten = (drop: number, p: Exponent): number =>
  p === 1 ? drop : HALF_DB * Math.sqrt(Math.max(0, drop) / HALF_DB);

/** The drop on this shape where that parabola shows `drop`. dB. */
export const bend = (drop: number, p: Exponent): number => (p === 1 ? drop : drop ** 2 / HALF_DB);

/** The uncertainty of a straightened drop: half the distance of its ends. dB. */
export const straightSd = (drop: number, sd: number, p: Exponent): number =>
  p === 1 ? sd : (straighten(drop + sd, p) - straighten(Math.max(0, drop - sd), p)) / 2;

/** The uncertainty of a drop, from that of its parabola. dB. */
export const bentSd = (drop: number, sd: number, p: Exponent): number =>
  p === 1 ? sd : (bend(Math.max(0, drop) + sd, p) - bend(Math.max(0, drop - sd), p)) / 2;
