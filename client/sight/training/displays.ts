import { createCanvas, GlobalFonts, type SKRSContext2D } from '@napi-rs/canvas';
import type { Frame } from '../../../src/sight/patch.ts';
import { between, chance, pick, type Rng } from '../../../src/simulator/rng.ts';
import { DOTS, OTHER_DOTS, OTHER_SEGMENTS, SEGMENTS } from './glyphs.ts';

/** How a display draws its characters. All sizes are in heights of a character. */
export type Drawing =
  | {
      by: 'segments';
      ends: 'pointed' | 'mitred' | 'square' | 'round';
      thickness: number;
      gap: number;
      width: number;
      others: string;
    }
  | { by: 'dots'; round: boolean; size: number; others: string }
  | { by: 'font'; font: string };

export interface Look {
  drawing: Drawing;
  /** Leans to the right by so much for each unit of height. */
  slant: number;
  /** Between two characters. */
  space: number;
  /** Brightness from 0 to 255: what is lit, what is not lit but seen, the display, what is around it. */
  lit: number;
  unlit: number;
  ground: number;
  around: number;
  /** How far light spills, in heights; 0 on a display that does not shine. */
  glow: number;
  /** From the characters to the edge of the display. */
  margin: number;
}

/** Height of a character in a scene. */
export const TALL = 64;
const EDGE = 70;

export interface Drawn {
  frame: Frame;
  /** Left and right of each character with ink. */
  places: { char: string; left: number; right: number }[];
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const grey = (value: number) => {
  const v = Math.round(Math.min(255, Math.max(0, value)));
  return `rgb(${v},${v},${v})`;
};

/** One display, straight from the front. A dot stands in the space after its character. */
export function drawDisplay(look: Look, text: string): Drawn {
  const { drawing } = look;
  const measure = createCanvas(8, 8).getContext('2d');
  if (drawing.by === 'font') measure.font = fontOf(drawing.font);
  const widthOf = (char: string): number => {
    if (drawing.by === 'font') return measure.measureText(char).width;
    if (char === '.') return drawing.by === 'dots' ? (TALL * 2) / 7 : 0;
    return drawing.by === 'segments' ? drawing.width * TALL : (TALL * 5) / 7;
  };
  const gap = drawing.by === 'font' ? look.space * TALL * 0.1 : look.space * TALL;
  const places: Drawn['places'] = [];
  let x = EDGE;
  for (const char of text) {
    const width = widthOf(char);
    const zero = char === '.' && drawing.by === 'segments';
    if (zero) places.push({ char, left: x - gap, right: x });
    else places.push({ char, left: x, right: x + width });
    x += width + (zero ? 0 : gap);
  }
  const right = x - gap;
  const tail = Math.abs(look.slant) * TALL;
  const canvas = createCanvas(Math.ceil(right + EDGE + tail), TALL + 2 * EDGE);
  const ctx = canvas.getContext('2d');
  ctx.fillStyle = grey(look.around);
  ctx.fillRect(0, 0, canvas.width, canvas.height);
  const margin = look.margin * TALL;
  ctx.fillStyle = grey(look.ground);
  ctx.fillRect(EDGE - margin, EDGE - margin, right - EDGE + 2 * margin + tail, TALL + 2 * margin);
  ctx.setTransform(1, 0, -look.slant, 1, look.slant * (EDGE + TALL), 0);
  if (look.glow > 0) {
    ctx.shadowColor = grey(look.lit);
    ctx.shadowBlur = look.glow * TALL;
  }
  for (const place of places) drawChar(ctx, look, place.char, place.left, place.right, gap);
  ctx.setTransform(1, 0, 0, 1, 0, 0);
  const { data, width, height } = ctx.getImageData(0, 0, canvas.width, canvas.height);
  const greys = new Float32Array(width * height);
  for (let i = 0; i < greys.length; i++) greys[i] = data[i * 4] ?? 0;
  const inked = places.filter(({ char }) => char !== ' ');
  return {
    frame: { data: greys, width, height, channels: 1 },
    places: inked.map(({ char, left, right: end }) => ({
      char,
      left: left + tail / 2,
      right: end + tail / 2,
    })),
    left: EDGE,
    right: right + tail,
    top: EDGE,
    bottom: EDGE + TALL,
  };
}

function drawChar(
  ctx: SKRSContext2D,
  look: Look,
  char: string,
  left: number,
  right: number,
  gap: number,
): void {
  const { drawing } = look;
  if (drawing.by === 'font') {
    ctx.font = fontOf(drawing.font);
    ctx.fillStyle = grey(look.lit);
    ctx.textBaseline = 'alphabetic';
    ctx.fillText(char, left, EDGE + TALL);
    return;
  }
  if (drawing.by === 'dots') {
    const pitch = TALL / 7;
    const dot = (column: number, row: number, lit: boolean) => {
      if (!lit && look.unlit === look.ground) return;
      ctx.fillStyle = grey(lit ? look.lit : look.unlit);
      const size = pitch * drawing.size;
      const x = left + (column + 0.5) * pitch;
      const y = EDGE + (row + 0.5) * pitch;
      ctx.beginPath();
      if (drawing.round) ctx.arc(x, y, size / 2, 0, 2 * Math.PI);
      else ctx.rect(x - size / 2, y - size / 2, size, size);
      ctx.fill();
    };
    if (char === '.') {
      for (const [column, row] of [
        [0, 5],
        [1, 5],
        [0, 6],
        [1, 6],
      ] as const)
        dot(column, row, true);
      return;
    }
    const table = drawing.others.includes(char) ? (OTHER_DOTS[char] ?? DOTS[char]) : DOTS[char];
    table?.forEach((row, r) => void [...row].forEach((c, column) => void dot(column, r, c === '#')));
    return;
  }
  const t = drawing.thickness * TALL;
  if (char === '.') {
    ctx.fillStyle = grey(look.lit);
    const size = Math.min(t * 1.1, Math.max(gap * 0.8, t * 0.6));
    ctx.beginPath();
    ctx.arc((left + right) / 2, EDGE + TALL - size / 2, size / 2, 0, 2 * Math.PI);
    ctx.fill();
    return;
  }
  const lit = (drawing.others.includes(char) ? OTHER_SEGMENTS[char] : undefined) ?? SEGMENTS[char] ?? '';
  if (look.unlit !== look.ground)
    for (const name of 'abcdefg') if (!lit.includes(name)) segment(ctx, drawing, name, left, look.unlit);
  for (const name of lit) segment(ctx, drawing, name, left, look.lit);
}

function segment(
  ctx: SKRSContext2D,
  drawing: Extract<Drawing, { by: 'segments' }>,
  name: string,
  left: number,
  brightness: number,
): void {
  const t = drawing.thickness * TALL;
  const h = t / 2;
  const g = drawing.gap * TALL;
  const x0 = left + h;
  const x1 = left + drawing.width * TALL - h;
  const [y0, y1, y2] = [EDGE + h, EDGE + TALL / 2, EDGE + TALL - h];
  // Along its own line: from, to, where the line lies; and which side is outside.
  const flat = 'agd'.includes(name);
  const [from, to] = flat ? [x0 + g, x1 - g] : 'fb'.includes(name) ? [y0 + g, y1 - g] : [y1 + g, y2 - g];
  const at = { a: y0, g: y1, d: y2, f: x0, e: x0, b: x1, c: x1 }[name] ?? 0;
  const outside = 'afe'.includes(name) ? -1 : name === 'g' ? 0 : 1;
  const points: [number, number][] = [];
  if (drawing.ends === 'round' || drawing.ends === 'square') {
    const inset = drawing.ends === 'round' ? h : h * 0.9;
    points.push([from + inset, -h], [to - inset, -h], [to - inset, h], [from + inset, h]);
  } else if (drawing.ends === 'mitred' && outside !== 0) {
    points.push(
      [from - h, outside * h],
      [to + h, outside * h],
      [to - h, -outside * h],
      [from + h, -outside * h],
    );
  } else {
    points.push([from, 0], [from + h, -h], [to - h, -h], [to, 0], [to - h, h], [from + h, h]);
  }
  ctx.fillStyle = grey(brightness);
  ctx.beginPath();
  points.forEach(([along, beside], i) => {
    const [x, y] = flat ? [along, at + beside] : [at + beside, along];
    if (i === 0) ctx.moveTo(x, y);
    else ctx.lineTo(x, y);
  });
  ctx.closePath();
  ctx.fill();
  if (drawing.ends !== 'round') return;
  for (const along of [from + h, to - h]) {
    const [x, y] = flat ? [along, at] : [at, along];
    ctx.beginPath();
    ctx.arc(x, y, h, 0, 2 * Math.PI);
    ctx.fill();
  }
}

const sizes = new Map<string, number>();
/** In the size in which its digits are `TALL`. */
function fontOf(font: string): string {
  let size = sizes.get(font);
  if (size === undefined) {
    const ctx = createCanvas(8, 8).getContext('2d');
    ctx.font = `100px "${font}"`;
    size = (100 * TALL) / ctx.measureText('8').actualBoundingBoxAscent;
    sizes.set(font, size);
  }
  return `${size}px "${font}"`;
}

let registered = 0;
/** Makes the font in a file known, and gives the name to draw with. */
export function fontFrom(file: string): string {
  const name = `display${registered++}`;
  if (!GlobalFonts.registerFromPath(file, name)) throw new Error(`No font could be read from ${file}`);
  return name;
}

/** Colours of a display that shines, or of one that is lit from behind or by the room. */
export function colours(
  rng: Rng,
  shines: boolean,
): Pick<Look, 'lit' | 'unlit' | 'ground' | 'around' | 'glow'> {
  if (shines) {
    const ground = between(rng, 4, 50);
    const lit = ground + between(rng, 70, 200);
    return {
      lit,
      ground,
      unlit: chance(rng, 0.4) ? ground + (lit - ground) * between(rng, 0.02, 0.12) : ground,
      around: between(rng, 5, 200),
      glow: chance(rng, 0.7) ? between(rng, 0.03, 0.25) : 0,
    };
  }
  const ground = between(rng, 70, 220);
  const lit = ground * between(rng, 0.1, 0.55);
  return {
    lit,
    ground,
    unlit: chance(rng, 0.6) ? ground + (lit - ground) * between(rng, 0.03, 0.2) : ground,
    around: between(rng, 10, 235),
    glow: 0,
  };
}

/** A few characters that the display draws in its second way. */
export const someOf = (rng: Rng, chars: string): string =>
  [...chars].filter(() => chance(rng, 0.35)).join('');

export function segmentLook(rng: Rng, shines: boolean): Look {
  const width = between(rng, 0.44, 0.64);
  return {
    ...colours(rng, shines),
    drawing: {
      by: 'segments',
      ends: pick(rng, ['pointed', 'mitred', 'square']),
      // Thicker ones would leave nothing of the segments that lie flat.
      thickness: between(rng, 0.07, width / 3.4),
      gap: chance(rng, 0.8) ? between(rng, 0.005, 0.04) : 0,
      width,
      others: someOf(rng, '679'),
    },
    slant: chance(rng, 0.6) ? between(rng, 0, 0.2) : 0,
    space: between(rng, 0.12, 0.34),
    margin: between(rng, 0.15, 0.9),
  };
}

export function dotLook(rng: Rng, shines: boolean): Look {
  return {
    ...colours(rng, shines),
    drawing: {
      by: 'dots',
      round: chance(rng, 0.5),
      size: between(rng, 0.65, 1),
      others: someOf(rng, '0123467 9'),
    },
    slant: 0,
    space: pick(rng, [1 / 7, 1 / 7, 2 / 7]),
    margin: between(rng, 0.15, 0.9),
  };
}

export function fontLook(rng: Rng, font: string, shines: boolean): Look {
  const look = colours(rng, shines);
  return {
    ...look,
    unlit: look.ground,
    drawing: { by: 'font', font },
    slant: chance(rng, 0.15) ? between(rng, 0, 0.15) : 0,
    space: chance(rng, 0.4) ? between(rng, 0, 1) : 0,
    margin: between(rng, 0.15, 0.9),
  };
}
