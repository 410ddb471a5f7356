import { describe, expect, it } from 'vitest';
import { drift, surroundings } from '../../src/sight/drift.ts';
import { type Frame, PATCH_HEIGHT, PATCH_WIDTH, patchOf } from '../../src/sight/patch.ts';
import { createRng, normal } from '../../src/simulator/rng.ts';

const [WIDTH, HEIGHT] = [320, 180];
const BOX = { x: 110, y: 70, width: 96, height: 40 };

/** A display of some bars in a frame, with a screw and a label beside it; moved, noisy. `bars`: what it shows. */
function scene(dx: number, dy: number, bars: readonly number[], seed: number, light = 1): Frame {
  const rng = createRng(seed);
  const data = new Float32Array(WIDTH * HEIGHT);
  const block = (x: number, y: number, w: number, h: number, value: number) => {
    for (let j = 0; j < h; j++)
      for (let i = 0; i < w; i++) data[Math.round(y + dy + j) * WIDTH + Math.round(x + dx + i)] = value;
  };
  block(60, 50, 200, 80, 90);
  block(98, 60, 120, 60, 190);
  block(70, 60, 12, 12, 220);
  block(228, 96, 20, 8, 30);
  bars.forEach((at, i) => void block(120 + i * 28, 76 + at, 18, 6, 40));
  bars.forEach((at, i) => void block(122 + i * 28 + at / 2, 78, 5, 24, 40));
  for (let i = 0; i < data.length; i++) data[i] = Math.max(0, (data[i] ?? 0) * light + 3 * normal(rng));
  return { data, width: WIDTH, height: HEIGHT, channels: 1 };
}

describe('whether the display is where it was', () => {
  const first = surroundings(scene(0, 0, [0, 10, 20], 1), BOX);
  const seen = (dx: number, dy: number, bars = [20, 0, 10], light = 1) =>
    drift(first, surroundings(scene(dx, dy, bars, 2, light), BOX));

  it('finds it in its place though the number and the light changed', () => {
    expect(seen(0, 0)).toMatchObject({ by: 0 });
    expect(seen(0, 0).likeness).toBeGreaterThan(0.5);
    expect(seen(0, 0, [10, 10, 0], 0.4)).toMatchObject({ by: 0 });
  });

  it.each([
    [5, 0, 0.125],
    [0, -10, 0.25],
    [15, 0, 0.375],
    [-10, 10, Math.SQRT2 / 4],
  ])('finds a move of %i and %i pixels, in heights of the box', (dx, dy, by) => {
    // One step is a sixteenth; with other figures shown it may be two or three off.
    expect(Math.abs(seen(dx, dy).by - by)).toBeLessThan(0.16);
    expect(seen(dx, dy).likeness).toBeGreaterThan(0.5);
  });

  it('finds no likeness where something else is before the camera', () => {
    const rng = createRng(9);
    const noise: Frame = {
      ...scene(0, 0, [], 1),
      data: Float32Array.from({ length: WIDTH * HEIGHT }, () => 255 * rng()),
    };
    expect(drift(first, surroundings(noise, BOX)).likeness).toBeLessThan(0.3);
  });
});

describe('the box, cut out', () => {
  it('keeps its proportions, fills the patch one way, and stands in the middle', () => {
    const frame: Frame = {
      data: Float32Array.from({ length: 400 }, (_, i) => (((i % 20) + Math.floor(i / 20)) % 2 ? 200 : 50)),
      width: 20,
      height: 20,
      channels: 1,
    };
    const { pixels, mean, deviation } = patchOf(frame, { x: 0, y: 0, width: 20, height: 20 });
    const columns = Array.from({ length: PATCH_WIDTH }, (_, x) =>
      Array.from({ length: PATCH_HEIGHT }, (_, y) => pixels[y * PATCH_WIDTH + x] ?? 0).some(
        (value) => value !== 0,
      ),
    );
    expect(columns.indexOf(true)).toBe((PATCH_WIDTH - PATCH_HEIGHT) / 2);
    expect(columns.lastIndexOf(true)).toBe((PATCH_WIDTH + PATCH_HEIGHT) / 2 - 1);
    expect(mean).toBeCloseTo(125, 0);
    const squares = pixels.reduce((sum, value) => sum + value ** 2, 0) / PATCH_HEIGHT ** 2;
    expect(squares).toBeCloseTo(1, 5);
    expect(deviation).toBeGreaterThan(20);
  });

  it('takes the mean of three colours: a red figure counts as much as a green one', () => {
    const of = (colour: readonly number[]): Frame => ({
      data: Array.from({ length: 64 }, (_, i) => (i % 2 ? [...colour, 255] : [0, 0, 0, 255])).flat(),
      width: 8,
      height: 8,
      channels: 4,
    });
    const box = { x: 0, y: 0, width: 8, height: 8 };
    expect(patchOf(of([240, 0, 0]), box)).toEqual(patchOf(of([0, 240, 0]), box));
    expect(patchOf(of([240, 0, 0]), box).mean).toBeCloseTo(40, 0);
  });
});
