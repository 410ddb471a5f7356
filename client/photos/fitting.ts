/** Longest side of a photo, pixels: a label can be read, and a page of the report holds it sharp. */
const SIDES = [1600, 1200, 900, 640] as const;
const QUALITIES = [0.82, 0.7, 0.55] as const;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** How large and how coarse to draw a picture, best first: coarser before smaller, and never larger than it is. */
export function* fitting({ width, height }: Size): Generator<Size & { readonly quality: number }> {
  const longest = Math.max(width, height);
  // One that is small already is only drawn coarser.
  const sides = SIDES.filter((side, i) => i === 0 || side < longest);
  for (const side of sides) {
    const scale = Math.min(1, side / longest);
    const size = { width: scaled(width, scale), height: scaled(height, scale) };
    for (const quality of QUALITIES) yield { ...size, quality };
  }
}

const scaled = (side: number, scale: number): number => Math.max(1, Math.round(side * scale));
