import { Signature } from '../../src/model/facts.ts';

/** The size of the box for a drawn signature. */
export const BOX = { width: 1000, height: 400 } as const;

export type Point = [number, number];
export type Strokes = Point[][];

/** A point is kept if it is farther than this from the line, in units of the box. */
const TOLERANCE = 2;

/** A stroke without the points that a straight line can replace (Ramer, Douglas and Peucker). */
export function simplified(points: readonly Point[]): Point[] {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 3) return [...points];
  const distances = points.map((point) => distanceTo(point, first, last));
  const farthest = distances.reduce((best, each, i) => (each > (distances[best] as number) ? i : best), 0);
  if ((distances[farthest] as number) <= TOLERANCE) return [first, last];
  return [...simplified(points.slice(0, farthest + 1)).slice(0, -1), ...simplified(points.slice(farthest))];
}

/** From a point to the line between two others; to the first one, if both are the same. */
function distanceTo([x, y]: Point, [x1, y1]: Point, [x2, y2]: Point): number {
  const length = Math.hypot(x2 - x1, y2 - y1);
  if (length === 0) return Math.hypot(x - x1, y - y1);
  return Math.abs((x2 - x1) * (y1 - y) - (x1 - x) * (y2 - y1)) / length;
}

/** A place on the drawn box, as whole numbers within it. */
export const inBox = (x: number, y: number, width: number, height: number): Point => [
  Math.min(BOX.width, Math.max(0, Math.round((x / width) * BOX.width))),
  Math.min(BOX.height, Math.max(0, Math.round((y / height) * BOX.height))),
];

/** The strokes as SVG path data. A stroke of a single point becomes a dot. */
export const strokesPath = (strokes: readonly (readonly Point[])[]): string =>
  strokes
    .map(
      (stroke) => `M${stroke.map((point) => point.join(' ')).join('L')}${stroke.length === 1 ? 'h.1' : ''}`,
    )
    .join('');

/** If all strokes together are shorter than this, it is a slip and no signature. In units of the box. */
const SHORTEST = 150;

/** The drawn strokes, for the log. Undefined: too short, or too many, for a signature. */
export function drawnSignature(strokes: Strokes): Signature | undefined {
  const length = strokes.reduce((sum, stroke) => sum + lengthOf(stroke), 0);
  if (length < SHORTEST) return undefined;
  return Signature.safeParse({ kind: 'drawn', strokes: strokes.map(simplified) }).data;
}

const lengthOf = (stroke: readonly Point[]): number =>
  stroke.slice(1).reduce((sum, [x, y], i) => {
    const [x0, y0] = stroke[i] as Point;
    return sum + Math.hypot(x - x0, y - y0);
  }, 0);
