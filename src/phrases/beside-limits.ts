/** Figures are entered as decimals: what differs by less is a binary rounding error. */
const SAME = 1e-9;

const side = (value: number, limit: number): number =>
  Math.abs(value - limit) <= SAME ? 0 : Math.sign(value - limit);

/**
 * A value and its limits, rounded alike, to at least so many significant figures, and to as many as it takes to show on
 * which side of each limit the value lies: 6.004 beside 6 is shown as 6.004, and never as 6 that is above 6.
 */
export function besideLimits(
  value: number,
  limits: readonly number[],
  figures: number,
): { value: number; limits: readonly number[] } {
  for (let digits = figures; digits <= 15; digits += 1) {
    const rounded = (each: number): number => Number(each.toPrecision(digits));
    if (limits.every((limit) => side(rounded(value), rounded(limit)) === side(value, limit))) {
      return { value: rounded(value), limits: limits.map(rounded) };
    }
  }
  return { value, limits };
}

/** The same for figures after the point: as few as `places`, and as many as it takes. At most 12. */
export function placesBeside(value: number, limits: readonly number[], places: number): number {
  const rounded = (each: number, to: number): number => Number(each.toFixed(to));
  for (let to = places; to < 12; to += 1) {
    if (limits.every((limit) => side(rounded(value, to), rounded(limit, to)) === side(value, limit)))
      return to;
  }
  return limits.length === 0 ? places : 12;
}

/** The same as text. */
export const fixedBeside = (value: number, limits: readonly number[], places: number): string =>
  value.toFixed(placesBeside(value, limits, places));

/** A figure that somebody set, in full: what is judged by it must not be shown beside a rounded one. */
export const setText = (value: number, places: number): string => {
  const exact = Number(value.toFixed(6));
  return exact.toFixed(Math.max(places, String(exact).split('.')[1]?.length ?? 0));
};
