import { type Drift, drift, type Surroundings, surroundings } from '../sight/drift.ts';
import type { Box, Frame } from '../sight/patch.ts';
import { ALIKE, DARK_MEAN, MOVED_BY } from '../sight/watch.ts';
import { type Colour, glowOf } from './light.ts';
import type { Moment } from './watch.ts';

/** A lamp in the middle of a piece of a picture three times as wide and high, with what is around it. */
export const inMiddle = (wide: Box): Box => ({
  x: wide.x + wide.width / 3,
  y: wide.y + wide.height / 3,
  width: wide.width / 3,
  height: wide.height / 3,
});

/** What stands around the lamp, without the lamp. */
export const aroundLamp = (frame: Frame, wide: Box): Surroundings =>
  surroundings(frame, wide, inMiddle(wide));

export const driftOf = (first: Surroundings, frame: Frame, wide: Box): Drift =>
  drift(first, aroundLamp(frame, wide));

/** One picture. `moved`: how far it drifted since it was taught; missing while it is taught. */
export function seenAt(at: number, frame: Frame, wide: Box, moved?: Drift): Moment {
  const [lamp, around] = colours(frame, inMiddle(wide));
  const { db, hue } = glowOf(lamp, around);
  const isMoved = moved && (moved.by > MOVED_BY || moved.likeness < ALIKE);
  const isDark = around.every((value) => value < DARK_MEAN);
  const doubt = isDark ? 'dark' : isMoved ? 'moved' : undefined;
  return { at, db, ...(hue !== undefined && { hue }), ...(doubt && { doubt }) };
}

/** Mean colours of what is in the box, and of all else: but not close to the box, where the lamp shines. */
function colours({ data, width, height, channels }: Frame, box: Box): [lamp: Colour, around: Colour] {
  const sums = [
    [0, 0, 0, 0],
    [0, 0, 0, 0],
  ];
  const edge = box.height / 2;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const out = Math.max(box.x - x, x - box.x - box.width, box.y - y, y - box.y - box.height);
      const sum = sums[out <= 0 ? 0 : 1];
      if (!sum || (out > 0 && out < edge)) continue;
      const i = channels * (y * width + x);
      for (let c = 0; c < 3; c++) sum[c] = (sum[c] ?? 0) + (data[channels === 1 ? i : i + c] ?? 0);
      sum[3] = (sum[3] ?? 0) + 1;
    }
  const mean = ([r = 0, g = 0, b = 0, n = 0]: number[]): Colour => {
    const many = Math.max(1, n);
    return [r / many, g / many, b / many];
  };
  return [mean(sums[0] ?? []), mean(sums[1] ?? [])];
}
