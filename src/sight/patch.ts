/** Pixels of one camera frame, RGBA as a canvas gives them, or grey with one number (0 to 255) for each pixel. */
export interface Frame {
  data: ArrayLike<number>;
  width: number;
  height: number;
  channels: 1 | 4;
}

/** A rectangle of a frame, in its pixels. */
export interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** What the reader sees: so many pixels, whatever the size of the box. */
export const PATCH_WIDTH = 128;
export const PATCH_HEIGHT = 32;

/** A box that is lower shows too little: the phone must come closer. Camera pixels. */
export const SMALLEST_BOX = 32;

/** Brightness of a frame's pixel, 0 to 255. The plain mean of the colours: a red lamp counts as much as a green one. */
export function greyAt(frame: Frame, x: number, y: number): number {
  const at = (y * frame.width + x) * frame.channels;
  if (frame.channels === 1) return frame.data[at] ?? 0;
  return ((frame.data[at] ?? 0) + (frame.data[at + 1] ?? 0) + (frame.data[at + 2] ?? 0)) / 3;
}

/** What was in a box, scaled; and how bright and how rich in contrast it was before. */
export interface Patch {
  /** Rows of `PATCH_WIDTH`, with mean 0 and deviation 1 inside the box, and 0 beside it. */
  pixels: Float32Array;
  /** Mean brightness of the box, 0 to 255. */
  mean: number;
  /** Standard deviation of the brightness in the box. */
  deviation: number;
}

/**
 * The part of a frame that lies in the box, made as large as it goes with its proportions kept, in the middle. A part of the
 * box outside the frame repeats the frame's edge.
 */
export function patchOf(frame: Frame, box: Box): Patch {
  const scale = Math.min(PATCH_WIDTH / box.width, PATCH_HEIGHT / box.height);
  const width = Math.max(1, Math.min(PATCH_WIDTH, Math.round(box.width * scale)));
  const height = Math.max(1, Math.min(PATCH_HEIGHT, Math.round(box.height * scale)));
  const left = Math.floor((PATCH_WIDTH - width) / 2);
  const top = Math.floor((PATCH_HEIGHT - height) / 2);
  const inside = new Float32Array(width * height);
  // Where a patch's pixel covers several of the camera's, so many of them are averaged; else one is interpolated.
  const across = Math.max(1, Math.ceil(box.width / width));
  const down = Math.max(1, Math.ceil(box.height / height));
  let sum = 0;
  let squares = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let grey = 0;
      for (let j = 0; j < down; j++)
        for (let i = 0; i < across; i++)
          grey += interpolated(
            frame,
            box.x + ((x + (i + 0.5) / across) * box.width) / width - 0.5,
            box.y + ((y + (j + 0.5) / down) * box.height) / height - 0.5,
          );
      grey /= across * down;
      inside[y * width + x] = grey;
      sum += grey;
      squares += grey * grey;
    }
  }
  const mean = sum / inside.length;
  const deviation = Math.sqrt(Math.max(0, squares / inside.length - mean * mean));
  const pixels = new Float32Array(PATCH_WIDTH * PATCH_HEIGHT);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      pixels[(top + y) * PATCH_WIDTH + left + x] =
        ((inside[y * width + x] ?? 0) - mean) / Math.max(deviation, 1);
  return { pixels, mean, deviation };
}

function interpolated(frame: Frame, x: number, y: number): number {
  const inX = Math.min(Math.max(x, 0), frame.width - 1);
  const inY = Math.min(Math.max(y, 0), frame.height - 1);
  const left = Math.floor(inX);
  const top = Math.floor(inY);
  const right = Math.min(left + 1, frame.width - 1);
  const bottom = Math.min(top + 1, frame.height - 1);
  const across = inX - left;
  const down = inY - top;
  return (
    (greyAt(frame, left, top) * (1 - across) + greyAt(frame, right, top) * across) * (1 - down) +
    (greyAt(frame, left, bottom) * (1 - across) + greyAt(frame, right, bottom) * across) * down
  );
}
