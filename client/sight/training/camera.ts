import { createCanvas, loadImage } from '@napi-rs/canvas';
import type { Box, Frame } from '../../../src/sight/patch.ts';
import { between, chance, logBetween, normal, type Rng } from '../../../src/simulator/rng.ts';
import { type Drawn, TALL } from './displays.ts';

interface Spot {
  x: number;
  y: number;
}

/** How a phone stands before a display, and in which light. It stays from frame to frame. */
export interface Pose {
  /** Where the corners of the box lie in the drawn display, clockwise from the left upper one. */
  corners: [Spot, Spot, Spot, Spot];
  /** The box in the camera's frame. Around it there is an edge. */
  box: Box;
  /** Deviation of the blur, in camera pixels. */
  blur: number;
  /** How the brightness changes from left to right and from top to bottom, as a share. */
  slope: Spot;
  /** A reflection: where (in shares of the box), how large, how bright (0 to 255 added); `sharp`: with an edge, as of a window. */
  glare?: { at: Spot; radius: Spot; strength: number; sharp: boolean };
  exposure: number;
  noise: number;
  /** Quality 1 to 100. */
  jpeg?: number;
  /** Of what the camera does to a display that is lit in pulses: depth, and rows from one band to the next. */
  bands?: { depth: number; period: number };
  /** Stripes where the pixels of the display and the camera's meet: depth, pixels, direction. */
  moire?: { depth: number; period: number; angle: number };
  /** How far the picture smears, in camera pixels. */
  smear?: number;
}

const EDGE = 6;

/** How wide the box is drawn around the number, beyond each side of it, in heights. */
export interface Cut {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export const aroundIt = (rng: Rng): Cut => ({
  left: between(rng, 0.04, 0.55),
  right: between(rng, 0.04, 0.55),
  top: between(rng, 0.04, 0.4),
  bottom: between(rng, 0.04, 0.4),
});

export function poseOf(rng: Rng, drawn: Drawn, cut: Cut = aroundIt(rng)): Pose {
  const left = drawn.left - cut.left * TALL;
  const right = drawn.right + cut.right * TALL;
  const top = drawn.top - cut.top * TALL;
  const bottom = drawn.bottom + cut.bottom * TALL;
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  // A long number is seen as a whole: a turn of the phone moves its ends far up or down.
  const angle = (normal(rng) * 2.2 * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const jolt = () => normal(rng) * 0.018 * TALL;
  const corner = (x: number, y: number): Spot => ({
    x: middle.x + (x - middle.x) * cos - (y - middle.y) * sin + jolt(),
    y: middle.y + (x - middle.x) * sin + (y - middle.y) * cos + jolt(),
  });
  const height = Math.round(logBetween(rng, 18, 80));
  const width = Math.max(8, Math.round((height * (right - left)) / (bottom - top) / between(rng, 0.9, 1.12)));
  return {
    corners: [corner(left, top), corner(right, top), corner(right, bottom), corner(left, bottom)],
    box: { x: EDGE, y: EDGE, width, height },
    blur: between(rng, 0.2, 0.5) + Math.abs(normal(rng)) * 0.018 * height,
    slope: { x: normal(rng) * 0.15, y: normal(rng) * 0.15 },
    ...(chance(rng, 0.35) && {
      glare: {
        at: { x: rng(), y: rng() },
        radius: { x: between(rng, 0.05, 0.5), y: between(rng, 0.1, 0.6) },
        strength: between(rng, 15, 110),
        sharp: false,
      },
    }),
    exposure: chance(rng, 0.2) ? between(rng, 0.2, 0.6) : between(rng, 0.6, 1.4),
    noise: between(rng, 1, 9),
    ...(chance(rng, 0.25) && { jpeg: Math.round(between(rng, 25, 90)) }),
  };
}

/** One frame of it. The noise, and where the bands stand, are new each time. */
export async function shoot(rng: Rng, drawn: Drawn, pose: Pose): Promise<Frame> {
  const width = pose.box.width + 2 * EDGE;
  const height = pose.box.height + 2 * EDGE;
  let grey = seen(drawn, pose, width, height);
  grey = blurred(grey, width, height, pose.blur);
  if (pose.smear) grey = smeared(grey, width, height, pose.smear);
  const { glare, bands, moire } = pose;
  const phase = rng() * 2 * Math.PI;
  const flicker = 1 + 0.02 * normal(rng);
  for (let y = 0; y < height; y++) {
    const v = (y - pose.box.y) / pose.box.height;
    const row = bands
      ? 1 - bands.depth * (0.5 + 0.5 * Math.sin(phase + (2 * Math.PI * y) / bands.period))
      : 1;
    for (let x = 0; x < width; x++) {
      const u = (x - pose.box.x) / pose.box.width;
      let value = grey[y * width + x] ?? 0;
      value *= pose.exposure * row * flicker * (1 + pose.slope.x * (u - 0.5) + pose.slope.y * (v - 0.5));
      if (moire)
        value *=
          1 +
          moire.depth *
            Math.sin((2 * Math.PI * (x * Math.cos(moire.angle) + y * Math.sin(moire.angle))) / moire.period);
      if (glare) {
        const far = ((u - glare.at.x) / glare.radius.x) ** 2 + ((v - glare.at.y) / glare.radius.y) ** 2;
        value += glare.strength * (glare.sharp ? (far < 1 ? 1 : 0) : Math.exp(-far));
      }
      value += normal(rng) * pose.noise * (0.6 + 0.4 * Math.sqrt(Math.max(0, value) / 128));
      grey[y * width + x] = Math.min(255, Math.max(0, Math.round(value)));
    }
  }
  const frame: Frame = { data: grey, width, height, channels: 1 };
  return pose.jpeg ? packed(frame, pose.jpeg) : frame;
}

/** Which point of the drawn display a point of the box (0 to 1 in both directions) shows: a projection through four corners. */
function projection([p0, p1, p2, p3]: Pose['corners']): (u: number, v: number) => Spot {
  const dx1 = p1.x - p2.x;
  const dx2 = p3.x - p2.x;
  const dy1 = p1.y - p2.y;
  const dy2 = p3.y - p2.y;
  const sx = p0.x - p1.x + p2.x - p3.x;
  const sy = p0.y - p1.y + p2.y - p3.y;
  const whole = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / whole;
  const h = (dx1 * sy - sx * dy1) / whole;
  return (u, v) => {
    const w = g * u + h * v + 1;
    return {
      x: ((p1.x - p0.x + g * p1.x) * u + (p3.x - p0.x + h * p3.x) * v + p0.x) / w,
      y: ((p1.y - p0.y + g * p1.y) * u + (p3.y - p0.y + h * p3.y) * v + p0.y) / w,
    };
  };
}

function seen(drawn: Drawn, pose: Pose, width: number, height: number): Float32Array {
  const at = projection(pose.corners);
  const { data, width: wide, height: high } = drawn.frame;
  const out = new Float32Array(width * height);
  const each = Math.max(1, Math.round(drawn.frame.height / 2 / pose.box.height));
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let j = 0; j < each; j++)
        for (let i = 0; i < each; i++) {
          const spot = at(
            (x + (i + 0.5) / each - pose.box.x) / pose.box.width,
            (y + (j + 0.5) / each - pose.box.y) / pose.box.height,
          );
          const sx = Math.min(Math.max(spot.x - 0.5, 0), wide - 1.001);
          const sy = Math.min(Math.max(spot.y - 0.5, 0), high - 1.001);
          const [left, top] = [Math.floor(sx), Math.floor(sy)];
          const [fx, fy] = [sx - left, sy - top];
          const k = top * wide + left;
          sum +=
            ((data[k] ?? 0) * (1 - fx) + (data[k + 1] ?? 0) * fx) * (1 - fy) +
            ((data[k + wide] ?? 0) * (1 - fx) + (data[k + wide + 1] ?? 0) * fx) * fy;
        }
      out[y * width + x] = sum / (each * each);
    }
  return out;
}

function blurred(grey: Float32Array, width: number, height: number, deviation: number): Float32Array {
  const reach = Math.ceil(deviation * 2.5);
  if (reach < 1) return grey;
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-(((i - reach) / deviation) ** 2) / 2),
  );
  const total = kernel.reduce((a, b) => a + b, 0);
  return along(along(grey, width, height, kernel, total, 1, 0), width, height, kernel, total, 0, 1);
}

const smeared = (grey: Float32Array, width: number, height: number, length: number) => {
  const kernel = new Array<number>(2 * Math.round(length / 2) + 1).fill(1);
  return along(grey, width, height, kernel, kernel.length, 1, 0);
};

function along(
  grey: Float32Array,
  width: number,
  height: number,
  kernel: readonly number[],
  total: number,
  dx: number,
  dy: number,
): Float32Array {
  const out = new Float32Array(grey.length);
  const reach = (kernel.length - 1) / 2;
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const sx = Math.min(Math.max(x + k * dx, 0), width - 1);
        const sy = Math.min(Math.max(y + k * dy, 0), height - 1);
        sum += (grey[sy * width + sx] ?? 0) * (kernel[k + reach] ?? 0);
      }
      out[y * width + x] = sum / total;
    }
  return out;
}

/** Two frames as one exposure that saw both displays sees them. */
export const mixed = (a: Frame, b: Frame, share: number): Frame => ({
  ...a,
  data: Float32Array.from(
    { length: a.width * a.height },
    (_, i) => (a.data[i] ?? 0) * (1 - share) + (b.data[i] ?? 0) * share,
  ),
});

async function packed(frame: Frame, quality: number): Promise<Frame> {
  const { width, height } = frame;
  const canvas = createCanvas(width, height);
  const ctx = canvas.getContext('2d');
  const image = ctx.createImageData(width, height);
  for (let i = 0; i < width * height; i++) {
    const v = frame.data[i] ?? 0;
    image.data.set([v, v, v, 255], i * 4);
  }
  ctx.putImageData(image, 0, 0);
  ctx.drawImage(await loadImage(await canvas.encode('jpeg', quality)), 0, 0);
  const { data } = ctx.getImageData(0, 0, width, height);
  return { ...frame, data: Float32Array.from({ length: width * height }, (_, i) => data[i * 4] ?? 0) };
}
