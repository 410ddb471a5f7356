import type { Search } from './search.ts';

/**
 * This many places with light and no proof: more than 95 of 100 careful searches need, and as many as plain practice
 * does; the plain search ends in as many again (measured by the bench).
 */
const MOST_PLACES = 30;

/**
 * So many confirmed readings that nothing explains: one or two are a slip that nobody noticed, more are a beam of
 * another shape (measured by the bench).
 */
const MOST_ODDITIES = 3;

/** The places read since there was light, after the last aim by eye. */
export function litPlaces({ samples }: Search): number {
  const lit = samples.findIndex((s) => s.level.kind !== 'below');
  return lit < 0 ? 0 : samples.length - lit;
}

/** So many places, and nothing proven: a slip that nobody noticed, or a beam of another shape. */
export const isUnproven = (search: Search): boolean => !search.floor && litPlaces(search) >= MOST_PLACES;

/** The readings are right and the beams that the fit knows do not explain them. */
export const isRejected = (search: Search): boolean => !search.floor && search.oddities >= MOST_ODDITIES;

/** What the next aim by eye begins: the plain search once the fit was rejected, or has proven nothing. */
export const begun = (search: Search): Pick<Search, 'floor'> => ({
  floor: search.floor || isRejected(search) || isUnproven(search) ? { since: 0 } : undefined,
});
