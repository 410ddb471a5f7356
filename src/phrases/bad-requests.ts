/** What is said of a message or request that this server does not take. Our own pages seldom send one. */

export const NOT_JSON = 'This is not JSON.';
export const HELLO_FIRST = 'Say hello first.';
export const HELLO_MISSING = 'No hello came.';
export const HELLO_TWICE = 'Hello was said before.';
export const TOO_MANY_BAD = 'Too many bad messages.';
export const PAGE_TOO_OLD = 'This page is too old for the server. Load it again.';
export const PAGE_TOO_NEW = 'This page is newer than the server.';
export const OTHER_WEBSITE = 'This request comes from a page of another website.';
export const ID_USED = 'This id was used for another command.';

export const NO_SUCH_TREE = 'There are not so many signed heads.';
export const NO_VISIT = 'There is no such visit on this site.';
export const NO_REPORT = 'There is no such report. Start it again.';
export const SITE_REPORT_ELSEWHERE = 'To make the report of a site, use POST /api/site/report.';
export const NO_AUTHORITY = 'This server has no certificate authority of its own.';
export const PRACTICE_NOT_KEPT =
  'This is practice on a simulated pair: there is no record to print or to save.';
export const NO_MODEL_FILE = 'The speech model has no such file.';
export const noAddressText = (method: string, path: string): string => `There is no ${method} ${path}.`;

/** "setup.pair: Too small". `path`: of the field, empty for the whole; `what`: what its schema says is wrong. */
export const badFieldText = (path: readonly PropertyKey[], what: string): string =>
  path.length > 0 ? `${path.map(String).join('.')}: ${what}` : what;

export const notBetweenText = (low: number, high: number): string => `it must be from ${low} to ${high}.`;
export const UNKNOWN_FIELD = 'there is no such field.';
/** `character`: "U+202E". */
export const hiddenCharacterText = (character: string): string =>
  `it holds a character that nobody sees (${character}). Type it again.`;
export const NOT_A_NAME = 'this stands for a name that was forgotten: type another text.';
export const notAboveText = (low: string, high: string): string => `${low} must not be above ${high}.`;

/** What a job must not say in which nobody reads a number. */
export const LOOKING_NEEDS_GAIN =
  'a detector that sets its own gain cannot be aligned by an indicator alone: its gain must stay.';
export const LOOKING_NEEDS_ALIGNMENT =
  'the tests before and after an alignment need numbers: by an indicator alone only the alignment is led.';
