import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { createRequire } from 'node:module';
import { PATCH_HEIGHT, PATCH_WIDTH, patchOf } from '../../../src/sight/patch.ts';
import { between, chance, createRng, pick, type Rng } from '../../../src/simulator/rng.ts';
import { aroundIt, mixed, type Pose, poseOf, shoot } from './camera.ts';
import {
  type Drawn,
  dotLook,
  drawDisplay,
  fontFrom,
  fontLook,
  type Look,
  segmentLook,
  TALL,
} from './displays.ts';

/**
 * `npx tsx client/sight/training/dataset.ts COUNT SEED FILE`: so many patches with what they show. Each is one line's worth of
 * bytes: the pixels as signed bytes (32 is one deviation), then `LABEL_LENGTH` bytes of text, filled up with zeros.
 */
const LABEL_LENGTH = 12;
const UNREADABLE = '?';

const fontFolder = '/usr/share/fonts/truetype/liberation';
const require = createRequire(import.meta.url);
const dejavu = (name: string) => require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);
/** Fonts to learn from. Others are kept for measuring: `tests/bench/sight/`. */
const FONTS = [
  ...[
    'DejaVuSans',
    'DejaVuSans-Bold',
    'DejaVuSansMono',
    'DejaVuSansMono-Bold',
    'DejaVuSansCondensed',
    'DejaVuSans-ExtraLight',
  ].map(dejavu),
  ...[
    'LiberationSans-Regular',
    'LiberationSans-Bold',
    'LiberationSansNarrow-Bold',
    'LiberationMono-Regular',
    'LiberationMono-Bold',
  ].map((name) => `${fontFolder}/${name}.ttf`),
].map((file) => fontFrom(file)) as [string, ...string[]];

function lookOf(rng: Rng): Look {
  const shines = chance(rng, 0.5);
  const kind = rng();
  if (kind < 0.55) return segmentLook(rng, shines);
  if (kind < 0.75) return dotLook(rng, shines);
  return fontLook(rng, pick(rng, FONTS), shines);
}

const digits = (rng: Rng, length: number) =>
  Array.from({ length }, () => String(Math.floor(rng() * 10))).join('');

/** A number as a meter shows it; now and then a word, or nothing. */
export function textOf(rng: Rng): string {
  const kind = rng();
  if (kind < 0.04)
    return pick(rng, [
      'Err',
      'oL',
      'OL',
      'HELP',
      'LoF',
      'P',
      'AL',
      '----',
      '---',
      'U-A',
      'dEAd',
      'FAUL',
      'H1',
      'E02',
    ]);
  if (kind < 0.06) return ' '.repeat(1 + Math.floor(rng() * 4));
  const number = digits(rng, pick(rng, [1, 2, 2, 3, 3, 3, 4, 4, 5]));
  const places = chance(rng, 0.45) ? 1 + Math.floor(rng() * Math.min(3, number.length)) : 0;
  const whole = number.slice(0, number.length - places);
  const text = places ? `${whole || '0'}.${number.slice(number.length - places)}` : number;
  const signed = chance(rng, 0.1) ? `-${text}` : text;
  return chance(rng, 0.15) ? ' '.repeat(1 + Math.floor(rng() * 2)) + signed : signed;
}

/** What a reader may say of it: letters and dashes alone are not to be read. */
function honest(text: string): string {
  const bare = text.trim();
  if (/^-?\d+(\.\d+)?$/.test(bare)) return bare;
  return [...bare].map(() => UNREADABLE).join('');
}

/** A text of the same length in which the number moved on. */
function next(rng: Rng, text: string): string {
  const from = pick(rng, [...text].map((_, i) => i) as [number, ...number[]]);
  return [...text].map((char, i) => (/\d/.test(char) && i >= from ? digits(rng, 1) : char)).join('');
}

interface Example {
  pixels: Float32Array;
  label: string;
}

async function example(rng: Rng): Promise<Example | undefined> {
  const look = lookOf(rng);
  const text = textOf(rng);
  const drawn = drawDisplay(look, text);
  const kind = rng();
  const cut = aroundIt(rng);
  if (kind < 0.06) return cutOff(rng, drawn, text);
  const pose = poseOf(rng, drawn, cut);
  if (kind < 0.13) return changing(rng, look, drawn, text, pose);
  const frame = await shoot(rng, drawn, pose);
  if (kind < 0.18) return hidden(rng, drawn, text, pose, frame);
  return { pixels: patchOf(frame, pose.box).pixels, label: honest(text) };
}

/** The box runs through a character. */
async function cutOff(rng: Rng, drawn: Drawn, text: string): Promise<Example | undefined> {
  const label = honest(text);
  const first = drawn.places[0];
  const last = drawn.places.at(-1);
  if (!first || !last || label.includes('.') || label.includes('-') || label.includes(UNREADABLE))
    return undefined;
  const share = between(rng, 0.2, 0.75);
  const atLeft = chance(rng, 0.5);
  const cut = aroundIt(rng);
  const [place, side] = atLeft ? [first, 'left' as const] : [last, 'right' as const];
  if (place.char === '1') return undefined;
  const into =
    share * (place.right - place.left) + (atLeft ? place.left - drawn.left : drawn.right - place.right);
  const pose = poseOf(rng, drawn, { ...cut, [side]: -into / TALL });
  const frame = await shoot(rng, drawn, pose);
  return {
    pixels: patchOf(frame, pose.box).pixels,
    label: atLeft ? UNREADABLE + label.slice(1) : label.slice(0, -1) + UNREADABLE,
  };
}

/** The number changed while the camera looked. */
async function changing(
  rng: Rng,
  look: Look,
  drawn: Drawn,
  text: string,
  pose: Pose,
): Promise<Example | undefined> {
  const then = next(rng, text);
  const later = drawDisplay(look, then);
  if (later.frame.width !== drawn.frame.width || honest(text).includes(UNREADABLE)) return undefined;
  const share = pick(rng, [
    between(rng, 0, 0.1),
    between(rng, 0.3, 0.7),
    between(rng, 0.3, 0.7),
    between(rng, 0.9, 1),
  ]);
  const both: Drawn = { ...drawn, frame: mixed(drawn.frame, later.frame, share) };
  const frame = await shoot(rng, both, pose);
  const label =
    share < 0.2
      ? text
      : share > 0.8
        ? then
        : [...text].map((char, i) => (then[i] === char ? char : UNREADABLE)).join('');
  return { pixels: patchOf(frame, pose.box).pixels, label: label.trim() };
}

/** A character is covered: by a finger, or by a reflection as bright as the camera can see. */
function hidden(
  rng: Rng,
  drawn: Drawn,
  text: string,
  pose: Pose,
  frame: { data: ArrayLike<number>; width: number; height: number; channels: 1 | 4 },
): Example | undefined {
  const label = honest(text);
  if (label.includes(UNREADABLE) || label === '') return undefined;
  const at = pick(rng, drawn.places.map((_, i) => i) as [number, ...number[]]);
  const place = drawn.places[at];
  if (!place || !/\d/.test(place.char)) return undefined;
  const [left, right] = [pose.corners[0].x, pose.corners[1].x];
  const inFrame = (x: number) => pose.box.x + ((x - left) / (right - left)) * pose.box.width;
  const from = Math.floor(inFrame(place.left));
  const to = Math.ceil(inFrame(place.right));
  const value = chance(rng, 0.5) ? 255 : between(rng, 0, 255);
  const upper = chance(rng, 0.5);
  const half = pose.box.y + pose.box.height / 2;
  const whole = chance(rng, 0.4);
  const data = Float32Array.from({ length: frame.width * frame.height }, (_, i) => {
    const x = i % frame.width;
    const y = Math.floor(i / frame.width);
    const covered = x >= from && x < to && (whole || (upper ? y < half : y > half));
    return covered ? value : (frame.data[i] ?? 0);
  });
  return {
    pixels: patchOf({ ...frame, data }, pose.box).pixels,
    label: label.slice(0, at) + UNREADABLE + label.slice(at + 1),
  };
}

async function main(): Promise<void> {
  const [count = '1000', seed = '1', file = 'patches.bin'] = process.argv.slice(2);
  const rng = createRng(Number(seed));
  const out = createWriteStream(file);
  for (let made = 0; made < Number(count); ) {
    const one = await example(rng);
    if (!one) continue;
    const bytes = Buffer.alloc(PATCH_WIDTH * PATCH_HEIGHT + LABEL_LENGTH);
    for (const [i, value] of one.pixels.entries())
      bytes.writeInt8(Math.round(Math.min(127, Math.max(-127, value * 32))), i);
    bytes.write(one.label, PATCH_WIDTH * PATCH_HEIGHT, 'latin1');
    if (!out.write(bytes)) await once(out, 'drain');
    made++;
  }
  out.end();
}

await main();
