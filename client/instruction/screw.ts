import { EIGHTHS_PER_TURN, type Eighths } from '../../src/model/turns.ts';

/** A point of the drawing; the screw's centre is the origin, y points down. */
export interface Point {
  x: number;
  y: number;
}

/** Of the arc that is to be turned. Units of the drawing. */
const RADIUS = 78;
/** Beyond a full turn the arc winds outward, so that its overlap is seen. */
const OUTWARD_A_TURN = 17;
const STEPS_A_TURN = 48;

/** Where a turn has got to: from twelve o'clock, clockwise for positive `eighths`. */
export function pointAt(eighths: number, radius: number): Point {
  const angle = (eighths / EIGHTHS_PER_TURN) * 2 * Math.PI;
  return { x: radius * Math.sin(angle), y: -radius * Math.cos(angle) };
}

const radiusAt = (eighths: number): number =>
  RADIUS + OUTWARD_A_TURN * Math.max(0, Math.abs(eighths) / EIGHTHS_PER_TURN - 0.9);

/** The way of the hand as an SVG path, ending a little before the arrow's tip. */
export function arcPath(eighths: Eighths): string {
  const end = eighths - Math.sign(eighths) * ARROW_EIGHTHS;
  const steps = Math.max(2, Math.ceil((Math.abs(end) / EIGHTHS_PER_TURN) * STEPS_A_TURN));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const at = (end * i) / steps;
    return pointAt(at, radiusAt(at));
  });
  return `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
}

/** The arrow's head takes up this much of the turn. */
const ARROW_EIGHTHS = 0.32;
const ARROW_HALF_WIDTH = 17;

/** The arrow's head: its tip lies where the turn ends. */
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
