import { EIGHTHS_PER_TURN, type Eighths } from '../../src/model/turns.ts';

/** A point of the drawing; the screw's centre is the origin, y points down. */
export interface Point {
  x: number;
  y: number;
}

/** Of the arc that shows the turn. Units of the drawing. */
const RADIUS = 78;
/** After a full turn the arc goes outward, so that the overlap is visible. */
const OUTWARD_A_TURN = 17;
const STEPS_A_TURN = 48;

/** Where a turn ends: it begins at twelve o'clock; positive `eighths` are clockwise. */
export function pointAt(eighths: number, radius: number): Point {
  const angle = (eighths / EIGHTHS_PER_TURN) * 2 * Math.PI;
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

const radiusAt = (eighths: number): number =>
  RADIUS + OUTWARD_A_TURN * Math.max(0, Math.abs(eighths) / EIGHTHS_PER_TURN - 0.9);

/** The movement of the hand as an SVG path. It ends a little before the tip of the arrow. */
export function arcPath(eighths: Eighths): string {
  const end = eighths - Math.sign(eighths) * ARROW_EIGHTHS;
  const steps = Math.max(2, Math.ceil((Math.abs(end) / EIGHTHS_PER_TURN) * STEPS_A_TURN));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const at = (end * i) / steps;
    return pointAt(at, radiusAt(at));
  });
  return `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

/** The head of the arrow covers this much of the turn. */
const ARROW_EIGHTHS = 0.32;
const ARROW_HALF_WIDTH = 17;

/** The head of the arrow. Its tip is where the turn ends. */
export function arrowHead(eighths: Eighths): string {
  const sign = Math.sign(eighths);
  const radius = radiusAt(eighths);
  const base = eighths - sign * (ARROW_EIGHTHS + 0.12);
  const corners = [
    pointAt(eighths, radius),
    pointAt(base, radius + ARROW_HALF_WIDTH),
    pointAt(base, radius - ARROW_HALF_WIDTH),
  ];
  return corners.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(' ');
}
