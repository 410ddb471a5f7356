/**
 * How a beam falls off. In units of the half-power radius `r` the drop is `3 r^(2p)` dB: a Gaussian (p = 1)
 * is a parabola in decibels, a flat-topped beam (p = 2 or 3, a super-Gaussian) a parabola after its drops are
 * straightened. One exponent converts both ways. A beam that is longer one way, and turned against the adjusters, is a
 * Gaussian with a cross term.
 */
export type Shape = 1 | 2 | 3;

/** Shapes of few beams: tried where neither a Gaussian or a flat top, nor one wrong reading, explains what was read. */
export const RARE_SHAPES: readonly Shape[] = [3];

/** Where all shapes agree: half power. dB. */
const HALF_DB = 3;

/** The drop on a parabola of the same half-power width, for a drop on this shape. dB. */
export function straighten(drop: number, shape: Shape): number {
  return shape === 1 ? drop : HALF_DB * (Math.max(0, drop) / HALF_DB) ** (1 / shape);
}

/** The drop on this shape where that parabola shows `drop`. dB. */
export function bend(drop: number, shape: Shape): number {
  return shape === 1 ? drop : HALF_DB * (drop / HALF_DB) ** shape;
}

/** The uncertainty of a straightened drop: half the distance of its ends. dB. */
export const straightSd = (drop: number, sd: number, shape: Shape): number =>
  shape === 1 ? sd : (straighten(drop + sd, shape) - straighten(Math.max(0, drop - sd), shape)) / 2;

/** The uncertainty of a drop, from that of its parabola. dB. */
export const bentSd = (drop: number, sd: number, shape: Shape): number =>
  shape === 1 ? sd : (bend(Math.max(0, drop) + sd, shape) - bend(Math.max(0, drop - sd), shape)) / 2;
