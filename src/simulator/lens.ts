/**
 * A glowing disc behind a lens. Angles are in units of the disc's radius as seen from the lens, so that a sharp
 * picture of the disc reaches from -1 to 1.
 */
export interface LensSource {
  /** How blurred the edge of the disc is: the width over which it falls. */
  readonly softness: number;
  /** How much darker the middle of the disc is, 0 to 1, and the radius of the dark part. */
  readonly dip: number;
  readonly hole: number;
  /** How far a ray through the lens' edge is thrown off because the disc is not in the focus. */
  readonly defocus: number;
  /** Share of the lens' width that steelwork covers, from one side. */
  readonly clipped: number;
}

/** Places on the lens through which rays are sent: rings of equal area. */
const RAYS: readonly (readonly [number, number])[] = Array.from({ length: 6 }, (_, ring) =>
  Array.from({ length: 14 }, (_, spoke) => {
    const radius = Math.sqrt((ring + 0.5) / 6);
    const angle = (2 * Math.PI * (spoke + ring / 2)) / 14;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  }),
).flat();

function glow({ softness, dip, hole }: LensSource, r: number): number {
  return (1 - dip * Math.exp(-((r / hole) ** 2))) / (1 + Math.exp((r - 1) / softness));
}

/**
 * Power in the direction (x, y), as a sum over rays: a thin lens sends through each of its places the light of the
 * one point of the source that this place shows in that direction (geometrical optics, textbooks).
 */
export function lensPower(source: LensSource, x: number, y: number): number {
  const edge = 2 * source.clipped - 1;
  let sum = 0;
  for (const [u, v] of RAYS) {
    if (u < edge) continue;
    sum += glow(source, Math.hypot(x + source.defocus * u, y + source.defocus * v));
  }
  return sum / RAYS.length + STRAY * Math.exp(-((x * x + y * y) / STRAY_REACH ** 2));
}

/** Light that the lens scatters: a wide pedestal far below the beam. An estimate of our own, no source. */
const STRAY = 2e-4;
const STRAY_REACH = 5;
