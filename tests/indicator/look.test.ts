import { describe, expect, it } from 'vitest';
import { aroundLamp, driftOf, inMiddle, seenAt } from '../../src/indicator/look.ts';
import type { Box, Frame } from '../../src/sight/patch.ts';

const [WIDTH, HEIGHT] = [160, 160];
/** Three times the lamp, which is 24 wide: with half its height around it. */
const WIDE: Box = { x: 44, y: 44, width: 72, height: 72 };
const LAMP = { x: 80, y: 80, radius: 9 };

interface Scene {
  lamp: readonly [number, number, number];
  /** By so many pixels the phone was moved. */
  moved?: number;
  exposure?: number;
  covered?: boolean;
}

/** A grey panel with a printed frame and a label, and a round lamp. */
function picture({ lamp, moved = 0, exposure = 1, covered = false }: Scene): Frame {
  const data = new Uint8ClampedArray(4 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const [px, py] = [x - moved, y];
      const isFrame = Math.abs(px - 50) < 2 || Math.abs(py - 52) < 2;
      const isLabel = px > 90 && px < 112 && py > 100 && py < 108 && px % 6 < 3;
      const isLamp = Math.hypot(px - LAMP.x, py - LAMP.y) < LAMP.radius;
      const colour = isLamp ? lamp : isFrame || isLabel ? [40, 40, 40] : [130, 130, 130];
      data.set([...colour.map((v) => (covered ? 3 : exposure * v)), 255], 4 * (y * WIDTH + x));
    }
  return { data, width: WIDTH, height: HEIGHT, channels: 4 };
}

const OFF = [30, 24, 24] as const;
const RED = [220, 30, 30] as const;
const GREEN = [30, 220, 30] as const;
const first = aroundLamp(picture({ lamp: OFF }), WIDE);
const seen = (scene: Scene) => {
  const frame = picture(scene);
  return seenAt(0, frame, WIDE, driftOf(first, frame, WIDE));
};

describe('a phone that looks at a lamp', () => {
  it('looks at the middle of its piece of the picture', () => {
    expect(inMiddle(WIDE)).toEqual({ x: 68, y: 68, width: 24, height: 24 });
  });

  it('tells on from off, and red from green, without a doubt, whatever the lamp does', () => {
    for (const lamp of [OFF, RED, GREEN]) expect(seen({ lamp })).not.toHaveProperty('doubt');
    expect((seen({ lamp: GREEN }).db ?? 0) - (seen({ lamp: OFF }).db ?? 0)).toBeGreaterThan(3);
    expect(seen({ lamp: RED }).hue).toBeCloseTo(0, -1);
    expect(seen({ lamp: GREEN }).hue).toBeCloseTo(120, -1);
  });

  it('sees nothing of the lamp where the phone was moved: it is not off then', () => {
    expect(seen({ lamp: RED, moved: 6 }).doubt).toBeUndefined();
    // 0.15 of 72 pixels are 10.8: from 15 on it is clearly so.
    for (const moved of [15, 25, -25]) expect(seen({ lamp: RED, moved }).doubt, `${moved}`).toBe('moved');
  });

  it('sees nothing where all around is dark: a hand before the camera is no lamp that is off', () => {
    expect(seen({ lamp: RED, covered: true }).doubt).toBe('dark');
    expect(seen({ lamp: OFF, exposure: 0.6 }).doubt).toBeUndefined();
  });
});
