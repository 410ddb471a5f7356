import { pairCount } from './counts.ts';

/** The words of a site report's first page. */
/** What the document is called; a certificate only where nothing is left to look at. */
export const coverSubtitle = (clear: boolean): string =>
  `${clear ? 'Certificate of commissioning' : 'Commissioning report'}: optical beam smoke detectors`;
export const ofPairs = (pairs: number): string => `of ${pairCount(pairs)}`;

export const COVER_ROWS = {
  result: 'Result',
  what: 'What',
  who: 'Signed by',
  crew: 'Crew',
  when: 'Work done',
  made: 'Report made',
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

export const PAIR_COLUMNS = {
  pair: 'Pair',
  name: 'Name',
  status: 'Status',
  tests: 'Tests',
  final: 'Final reading',
  findings: 'Findings: serious / asked / to know',
  page: 'Page',
} as const;
export const NO_PAIRS = 'No pairs are planned.';

export const WHAT =
  'Optical beam smoke detectors: alignment of each emitter and receiver, alarm and fault tests, wiring to the fire panel';
export const NOBODY = 'nobody yet';
/** "S. Example (Larkmoor Fire Systems), Supervisor: 8 pairs" */
export const onPairs = (person: string, pairs: number): string => `${person}: ${pairCount(pairs)}`;
/** Days of the first and the last entry of the pairs' logs. */
export const periodText = (from: string, to: string, zone: string): string =>
  `${from === to ? from : `${from} to ${to}`}, ${zone}`;
export const NOT_BEGUN = 'not begun';

export const NO_VARIATIONS = 'None are recorded: no override, and no failed test that was only answered for.';
export const overrideText = (reason: string): string => `Accepted without all evidence. Reason: ${reason}`;
export const answeredForText = (failure: string, how: string): string => `${failure} Answered for: ${how}`;

export const ACROSS_NOT_SEARCHED = 'Only these pairs were compared. See the report on the whole site.';
export const ACROSS_NOTHING = 'Nothing was found by comparing the records of the site.';
