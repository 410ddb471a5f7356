/** How the main lobe falls off the axis. Widths are eighths of a turn, powers decibels. */
export type LobeShape =
  /** `exp(-2 (r/w)^2)`: a parabola in decibels; `w` is the 1/e^2 radius (optics textbook). */
  | { kind: 'gaussian' }
  /** `cos^m`, the LED pattern of the optical wireless handbooks, scaled to the same half-power width. */
  | { kind: 'cosine'; order: number }
  /** `exp(-ln 2 (r/r_half)^4)`: flat on top, steep at the edge. */
  | { kind: 'flat-topped' };

/** One place where the light comes from, as seen by turning the emitter. */
export interface Lobe {
  shape: LobeShape;
  /** Where it peaks, eighths from the start position. */
  horizontal: number;
  vertical: number;
  /** Half-power half-width along each adjuster, eighths. */
  halfHorizontal: number;
  halfVertical: number;
  /** Power at its peak, dB below the main lobe's peak (main lobe: 0). */
  belowDb: number;
  /** Light that does not use the direct path: a board in the path does not block it. */
  reflected: boolean;
}

const HALF_POWER = Math.LN2;

/** Relative power, 0 to 1, at `r` half-power radii from the axis. */
function falloff(shape: LobeShape, r: number): number {
  switch (shape.kind) {
    case 'gaussian':
      return Math.exp(-HALF_POWER * r * r);
    case 'cosine': {
      const half = Math.acos(2 ** (-1 / shape.order));
      const angle = r * half;
      return angle >= Math.PI / 2 ? 0 : Math.cos(angle) ** shape.order;
    }
    case 'flat-topped':
      return Math.exp(-HALF_POWER * r ** 4);
  }
}

/** Power a lobe gives at a pointing of the emitter, relative to the main lobe's peak. */
export function lobePower(lobe: Lobe, horizontal: number, vertical: number): number {
  const r = Math.hypot(
    (horizontal - lobe.horizontal) / lobe.halfHorizontal,
    (vertical - lobe.vertical) / lobe.halfVertical,
  );
  return 10 ** (-lobe.belowDb / 10) * falloff(lobe.shape, r);
}
