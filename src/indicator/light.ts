/** A lamp in a picture of a camera: how bright against what is around it, and in which colour. */

export interface Glow {
  /** dB of light against the rest of the picture, so that a camera which sets its own exposure changes nothing. */
  readonly db: number;
  /** Degrees round the colour circle; undefined where it has no colour. */
  readonly hue?: number;
}

/** Mean red, green and blue, 0 to 255, as a picture has them. */
export type Colour = readonly [red: number, green: number, blue: number];

/** Light from a value of a picture: IEC 61966-2-1 (sRGB), the inverse transfer function. */
export function linear(value: number): number {
  const v = value / 255;
  return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
}

/** Luminance of linear red, green and blue: ITU-R BT.709, as sRGB has its primaries. */
const luminance = ([r, g, b]: Colour): number => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);

/** As dark as a picture can show. */
const BLACK = 1e-4;
/** With less colour than this, a hue is only noise: the difference of the largest and the smallest, 0 to 255. */
const COLOURED = 24;

/** `lamp`: in the box; `around`: outside it. */
export function glowOf(lamp: Colour, around: Colour): Glow {
  const db = 10 * Math.log10((luminance(lamp) + BLACK) / (luminance(around) + BLACK));
  const hue = hueOf(lamp);
  return hue === undefined ? { db } : { db, hue };
}

/** The usual hexagon of hues: red 0, green 120, blue 240. */
function hueOf([r, g, b]: Colour): number | undefined {
  const [most, least] = [Math.max(r, g, b), Math.min(r, g, b)];
  const chroma = most - least;
  if (chroma < COLOURED) return undefined;
  const sixth = most === r ? (g - b) / chroma : most === g ? 2 + (b - r) / chroma : 4 + (r - g) / chroma;
  return (60 * sixth + 360) % 360;
}
