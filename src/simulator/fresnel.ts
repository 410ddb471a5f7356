/**
 * Share of unpolarised light that a smooth surface of refractive index `n` mirrors, at `incidence` radians from
 * its normal (Fresnel's equations, optics textbooks; the mean of both polarisations).
 */
export function reflectance(n: number, incidence: number): number {
  const { s, p } = polarised(n, incidence);
  return (s + p) / 2;
}

/** The same for light that swings across the plane of incidence (`s`) and in it (`p`). */
export function polarised(n: number, incidence: number): { s: number; p: number } {
  const cos = Math.cos(incidence);
  const inside = Math.sqrt(1 - (Math.sin(incidence) / n) ** 2);
  return {
    s: ((cos - n * inside) / (cos + n * inside)) ** 2,
    p: ((inside - n * cos) / (inside + n * cos)) ** 2,
  };
}

/** Light by way of a wall that runs beside the beam. */
export interface WallLight {
  /** Between the direct light and the mirrored light, as the emitter sees them. Radians. */
  readonly angle: number;
  /** Power of the mirrored light below the direct light. dB. */
  readonly belowDb: number;
}

/**
 * The receiver's mirror image in a wall that runs beside the beam at `beside` metres, over a path of `length`
 * metres: the geometry of a plane mirror, with the longer way taken off by the square of the distance.
 */
export function wallLight(n: number, length: number, beside: number): WallLight {
  const angle = Math.atan2(2 * beside, length);
  const longer = Math.hypot(length, 2 * beside) / length;
  return { angle, belowDb: -10 * Math.log10(reflectance(n, Math.PI / 2 - angle) / longer ** 2) };
}
