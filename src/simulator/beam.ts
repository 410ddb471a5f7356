import { AIRY_HALF, airy } from './airy.ts';
import { type LensSource, lensPower } from './lens.ts';

/** How the main lobe falls off the axis. Widths are eighths of a turn, powers decibels. */
export type LobeShape =
  /** `exp(-2 (r/w)^2)`: a parabola in decibels; `w` is the 1/e^2 radius (optics textbook). */
  | { kind: 'gaussian' }
  /** `cos^m`, the LED pattern of the optical wireless handbooks, scaled to the same half-power width. */
  | { kind: 'cosine'; order: number }
  /** `exp(-ln 2 (r/r_half)^4)`: flat on top, steep at the edge. */
  | { kind: 'flat-topped' }
  /** Diffraction at a round opening, with its rings of side lobes. */
  | { kind: 'airy' }
  /** A glowing disc behind a lens, as a sum over rays. The half-widths are then the disc's radius. */
  | { kind: 'lens'; source: LensSource };

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
  /** Light of a reflection that the cover of the blocking check darkens too. */
  hiddenWithDirect?: boolean;
  /** How far the lobe's own axes are turned against the adjusters, radians. */
  turnedBy?: number;
}

const HALF_POWER = Math.LN2;

/** Relative power, 0 to 1, at (x, y) half-power radii from the axis. */
function falloff(shape: LobeShape, x: number, y: number): number {
  const r = Math.hypot(x, y);
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
    case 'airy':
      return airy(AIRY_HALF * r);
    case 'lens':
      return lensPower(shape.source, x, y);
  }
}

/** Power a lobe gives at a pointing of the emitter, relative to the main lobe's peak. */
export function lobePower(lobe: Lobe, horizontal: number, vertical: number): number {
  const [h, v] = [horizontal - lobe.horizontal, vertical - lobe.vertical];
  const [cos, sin] = lobe.turnedBy ? [Math.cos(lobe.turnedBy), Math.sin(lobe.turnedBy)] : [1, 0];
  const x = (cos * h + sin * v) / lobe.halfHorizontal;
  const y = (cos * v - sin * h) / lobe.halfVertical;
  return 10 ** (-lobe.belowDb / 10) * falloff(lobe.shape, x, y);
}
