import { type Box, type Frame, greyAt } from './patch.ts';

/** Edges of the box and of what is around it, small: to be found again in a later frame. */
export interface Surroundings {
  edges: Float32Array;
  width: number;
  height: number;
  /** Pixels of the frame for one of these. */
  step: number;
}

/** One box height is so many steps. */
const STEPS = 16;
/** How far it is looked for, in steps. */
const REACH = 8;

/** What is in the box, and half its height around it. `without`: what changes by itself there, such as a lamp. */
export function surroundings(frame: Frame, box: Box, without?: Box): Surroundings {
  const step = box.height / STEPS;
  const width = Math.round(box.width / step) + STEPS;
  const height = 2 * STEPS;
  const left = box.x - (STEPS / 2) * step;
  const top = box.y - (STEPS / 2) * step;
  const grey = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) grey[y * width + x] = mean(frame, left + x * step, top + y * step, step);
  const edges = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const at = y * width + x;
      if (without && isNear(without, left + x * step, top + y * step, 2 * step)) continue;
      const across = (grey[at + 1] ?? 0) - (grey[at - 1] ?? 0);
      const down = (grey[at + width] ?? 0) - (grey[at - width] ?? 0);
      edges[at] = Math.hypot(across, down);
    }
  return { edges, width, height, step };
}

const isNear = (box: Box, x: number, y: number, by: number): boolean =>
  x > box.x - by && x < box.x + box.width + by && y > box.y - by && y < box.y + box.height + by;

function mean(frame: Frame, left: number, top: number, size: number): number {
  const each = Math.max(1, Math.min(4, Math.round(size)));
  let sum = 0;
  for (let j = 0; j < each; j++)
    for (let i = 0; i < each; i++) {
      const x = Math.round(left + ((i + 0.5) / each) * size);
      const y = Math.round(top + ((j + 0.5) / each) * size);
      sum += greyAt(
        frame,
        Math.min(Math.max(x, 0), frame.width - 1),
        Math.min(Math.max(y, 0), frame.height - 1),
      );
    }
  return sum / each ** 2;
}

export interface Drift {
  /** How far the display moved in the frame, in box heights. */
  by: number;
  /** How alike the two are at the best place: the correlation of their edges, -1 to 1. */
  likeness: number;
}

/** Where what was seen first is now. Digits that change lower the likeness and do not move the best place. */
export function drift(first: Surroundings, now: Surroundings): Drift {
  let best: Drift = { by: 0, likeness: -1 };
  for (let dy = -REACH; dy <= REACH; dy++)
    for (let dx = -REACH; dx <= REACH; dx++) {
      const likeness = correlation(first, now, dx, dy);
      if (likeness > best.likeness + 1e-9) best = { by: Math.hypot(dx, dy) / STEPS, likeness };
    }
  return best;
}

function correlation(a: Surroundings, b: Surroundings, dx: number, dy: number): number {
  let [n, sumA, sumB, squaresA, squaresB, products] = [0, 0, 0, 0, 0, 0];
  for (let y = Math.max(1, 1 - dy); y < Math.min(a.height, a.height - dy) - 1; y++)
    for (let x = Math.max(1, 1 - dx); x < Math.min(a.width, a.width - dx) - 1; x++) {
      const p = a.edges[y * a.width + x] ?? 0;
      const q = b.edges[(y + dy) * b.width + x + dx] ?? 0;
      n++;
      sumA += p;
      sumB += q;
      squaresA += p * p;
      squaresB += q * q;
      products += p * q;
    }
  const spread = Math.sqrt((squaresA - sumA ** 2 / n) * (squaresB - sumB ** 2 / n));
  return spread > 0 ? (products - (sumA * sumB) / n) / spread : 0;
}
