import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Pose } from '../../../client/sight/training/camera.ts';
import {
  dotLook,
  fontFrom,
  fontLook,
  type Look,
  segmentLook,
} from '../../../client/sight/training/displays.ts';
import { between, chance, pick, type Rng } from '../../../src/simulator/rng.ts';

/** Displays of kinds, and spoilt in ways, that the reader was never trained on. */
export interface Kind {
  name: string;
  lookOf(rng: Rng): Look;
}

const require = createRequire(import.meta.url);
const npm = (family: string, style: string): string =>
  fontFrom(require.resolve(`@fontsource/${family}/files/${family}-${style}.woff`));

const fonts =
  (...names: [string, ...string[]]) =>
  (rng: Rng, shines: boolean): Look => ({
    ...fontLook(rng, pick(rng, names), shines),
    space: 0,
  });
const classic = fonts(
  npm('dseg7', 'classic-400-normal'),
  npm('dseg7', 'classic-700-italic'),
  npm('dseg7', 'classic-300-normal'),
);
const modern = fonts(npm('dseg7', 'modern-400-normal'), npm('dseg7', 'modern-700-italic'));
const mini = fonts(npm('dseg7', 'classic-mini-400-normal'), npm('dseg7', 'classic-mini-700-normal'));
const pixels = fonts(npm('vt323', 'latin-400-normal'));
const matrix = fonts(npm('doto', 'latin-700-normal'), npm('doto', 'latin-900-normal'));
const DEBIAN = '/usr/share/fonts/truetype/noto/NotoSansMono-Regular.ttf';
const print = fonts(
  npm('share-tech-mono', 'latin-400-normal'),
  ...(existsSync(DEBIAN) ? [fontFrom(DEBIAN)] : []),
);

/** Segments with round ends, closer together and thinner or wider than any that were trained on. */
function roundSegments(rng: Rng, shines: boolean): Look {
  const look = segmentLook(rng, shines);
  return {
    ...look,
    drawing: {
      by: 'segments',
      ends: 'round',
      thickness: between(rng, 0.06, 0.16),
      gap: between(rng, 0.005, 0.03),
      width: between(rng, 0.5, 0.68),
      others: chance(rng, 0.5) ? '7' : '',
    },
  };
}

/** Dots of an odd shape with unlit ones that shine through strongly. */
function ghostlyDots(rng: Rng, shines: boolean): Look {
  const look = dotLook(rng, shines);
  return { ...look, unlit: look.ground + (look.lit - look.ground) * between(rng, 0.12, 0.25) };
}

export const KINDS: readonly Kind[] = [
  { name: 'segments that shine, round ends', lookOf: (rng) => roundSegments(rng, true) },
  { name: 'segments of an LCD, round ends', lookOf: (rng) => roundSegments(rng, false) },
  { name: 'segments that shine, DSEG7 Classic', lookOf: (rng) => classic(rng, true) },
  { name: 'segments of an LCD, DSEG7 Classic', lookOf: (rng) => classic(rng, false) },
  { name: 'segments that shine, DSEG7 Modern', lookOf: (rng) => modern(rng, true) },
  { name: 'segments of an LCD, DSEG7 Classic Mini', lookOf: (rng) => mini(rng, false) },
  { name: 'dots with strong unlit ones', lookOf: (rng) => ghostlyDots(rng, chance(rng, 0.5)) },
  { name: 'dots, Doto', lookOf: (rng) => matrix(rng, chance(rng, 0.5)) },
  { name: 'coarse pixels, VT323', lookOf: (rng) => pixels(rng, chance(rng, 0.5)) },
  { name: 'printed, Share Tech Mono or Noto Sans Mono', lookOf: (rng) => print(rng, chance(rng, 0.5)) },
];

/** Ways of spoiling a frame that were never trained on. */
export const SPOILERS: Readonly<Record<string, (rng: Rng, pose: Pose) => Pose>> = {
  'as trained': (_, pose) => pose,
  'rolling bands': (rng, pose) => ({
    ...pose,
    bands: { depth: between(rng, 0.15, 0.6), period: pose.box.height * between(rng, 0.4, 2) },
  }),
  moiré: (rng, pose) => ({
    ...pose,
    moire: {
      depth: between(rng, 0.05, 0.25),
      period: between(rng, 2.5, 12),
      angle: between(rng, 0, Math.PI),
    },
  }),
  smear: (rng, pose) => ({ ...pose, smear: between(rng, 0.04, 0.1) * pose.box.height }),
  'window reflected': (rng, pose) => ({
    ...pose,
    glare: {
      at: { x: rng(), y: rng() },
      radius: { x: between(rng, 0.1, 0.6), y: between(rng, 0.1, 0.6) },
      strength: between(rng, 15, 90),
      sharp: true,
    },
  }),
};
