/** Steps of the integral below; for the arguments used here it is exact to nine digits. */
const STEPS = 64;

/** The Bessel function J1 by its integral `1/pi int_0^pi cos(t - x sin t) dt` (Bessel, handbook of functions 9.1.21). */
export function besselJ1(x: number): number {
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    const t = (Math.PI * (i + 0.5)) / STEPS;
    sum += Math.cos(t - x * Math.sin(t));
  }
  return sum / STEPS;
}

/**
 * Far field of an evenly lit round opening, relative to its middle: `(2 J1(x) / x)^2` with
 * `x = pi D sin(angle) / wavelength` (Airy; optics textbooks).
 */
export const airy = (x: number): number => (Math.abs(x) < 1e-6 ? 1 : ((2 * besselJ1(x)) / x) ** 2);

/** Where `airy` falls to one half. */
export const AIRY_HALF = 1.61634;
