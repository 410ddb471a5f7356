import type { Guidance } from '../model/guidance.ts';
import { pairCount } from './counts.ts';
import { GUIDANCE_ONLY } from './plan.ts';

/** The words of a site report's first page. */
export const COVER_SUBTITLE = 'Commissioning report: optical beam smoke detectors';
export const ofPairs = (pairs: number): string => `of ${pairCount(pairs)}`;
export const partOfSite = (pairs: number, all: number): string => `${pairs} of ${pairCount(all)}`;

export const COVER_ROWS = {
  made: 'Made',
  pairs: 'Pairs',
  findings: 'Findings',
  guidance: 'Guidance',
} as const;

/** `all`: how many pairs the site has, if these are not all; `dropped`: pairs taken out of the site. */
export function pairsText(pairs: number, all: number | undefined, dropped: number): string {
  const ofSite = all === undefined ? '' : ` of the site's ${all}`;
  const left = dropped > 0 ? `; ${dropped} dropped from the site` : '';
  return `${pairCount(pairs)}${ofSite}; each begins on a page of its own${left}`;
}

export const guidanceText = (code: Guidance | undefined): string =>
  `${code ? `plans checked against ${code.name} (${code.source})` : 'none chosen'}; ${GUIDANCE_ONLY}`;

export const PAIR_COLUMNS = {
  pair: 'Pair',
  name: 'Name',
  status: 'Status',
  final: 'Final reading',
  findings: 'Findings: serious / asked / to know',
  page: 'Page',
} as const;
export const NO_PAIRS = 'No pairs are planned.';

export const ACROSS_NOT_SEARCHED = 'Only these pairs were compared. See the report on the whole site.';
export const ACROSS_NOTHING = 'Nothing was found by comparing the records of the site.';

export const ALL_SIGNED = 'All signed';
export const NOT_ALL_SIGNED = 'Not all signed';
export const needAttention = (pairs: number): string => `Need attention: ${pairs}`;
