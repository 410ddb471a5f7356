import type { Share } from '../sight/camera.ts';

/** Where a finger took hold of the box: inside, or at a corner as [is it the left one, is it the upper one]. */
export type Grip = 'inside' | readonly [left: boolean, upper: boolean];

export const FIRST_BOX: Share = { x: 0.2, y: 0.38, width: 0.6, height: 0.24 };
/** As a share of the picture. */
const SMALLEST = 0.04;

const within = (value: number, low: number, high: number) =>
  Math.min(Math.max(value, low), Math.max(low, high));

/** The box after the finger moved by so much, in shares of the picture. It stays in the picture. */
export function dragged(box: Share, grip: Grip, dx: number, dy: number): Share {
  if (grip === 'inside')
    return { ...box, x: within(box.x + dx, 0, 1 - box.width), y: within(box.y + dy, 0, 1 - box.height) };
  const [left, upper] = grip;
  const [right, bottom] = [box.x + box.width, box.y + box.height];
  const x = left ? within(box.x + dx, 0, right - SMALLEST) : box.x;
  const y = upper ? within(box.y + dy, 0, bottom - SMALLEST) : box.y;
  return {
    x,
    y,
    width: left ? right - x : within(box.width + dx, SMALLEST, 1 - box.x),
    height: upper ? bottom - y : within(box.height + dy, SMALLEST, 1 - box.y),
  };
}

const STEP = 0.01;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-STEP, 0],
  ArrowRight: [STEP, 0],
  ArrowUp: [0, -STEP],
  ArrowDown: [0, STEP],
};

/** The box after an arrow key, or undefined for another key. With `sizes` it grows to the right and down. */
export function keyed(box: Share, key: string, sizes: boolean): Share | undefined {
  const arrow = ARROWS[key];
  return arrow && dragged(box, sizes ? [false, false] : 'inside', arrow[0], arrow[1]);
}
