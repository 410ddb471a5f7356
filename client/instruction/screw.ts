import { EIGHTHS_PER_TURN, type Eighths } from '../../src/model/turns.ts';

/** A point of the drawing; the screw's centre is the origin, y points down. */
export interface Point {
  x: number;
  y: number;
}

/** Of the arc that shows the turn. Units of the drawing. */
const RADIUS = 78;
/** More than a full turn winds outward from here to there, so that it cannot be taken for its overlap alone. */
const WINDS_FROM = 72;
const WINDS_TO = 93;
const STEPS_A_TURN = 48;

/** Where a turn ends: it begins at twelve o'clock; positive `eighths` are clockwise. */
export function pointAt(eighths: number, radius: number): Point {
  const angle = (eighths / EIGHTHS_PER_TURN) * 2 * Math.PI;
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

/** The distance from the centre at `at`, on the way to `end`. */
const radiusAt = (at: number, end: number): number =>
  winds(end) ? WINDS_FROM + (WINDS_TO - WINDS_FROM) * (at / end) : RADIUS;

/** The movement of the hand as an SVG path. It ends a little before the tip of the arrow. */
export function arcPath(eighths: Eighths): string {
  const end = eighths - Math.sign(eighths) * ARROW_EIGHTHS;
  const steps = Math.max(2, Math.ceil((Math.abs(end) / EIGHTHS_PER_TURN) * STEPS_A_TURN));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const at = (end * i) / steps;
    return pointAt(at, radiusAt(at, eighths));
  });
  return `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

/** More than a full turn: drawn thinner, so that light is seen between the windings. */
export const winds = (eighths: Eighths): boolean => Math.abs(eighths) > EIGHTHS_PER_TURN;

/** The head of the arrow covers this much of the turn. */
const ARROW_EIGHTHS = 0.32;
const ARROW_HALF_WIDTH = 17;
/** Beside another winding there is less room. */
const NARROW_HALF_WIDTH = 10;

/** The head of the arrow. Its tip is where the turn ends. */
export function arrowHead(eighths: Eighths): string {
  const sign = Math.sign(eighths);
  const radius = radiusAt(eighths, eighths);
  const base = eighths - sign * (ARROW_EIGHTHS + 0.12);
  const half = winds(eighths) ? NARROW_HALF_WIDTH : ARROW_HALF_WIDTH;
  const corners = [pointAt(eighths, radius), pointAt(base, radius + half), pointAt(base, radius - half)];
  return corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
}
