import type { ChainFault } from '../log/fault.ts';
import type { Seq } from '../model/ids.ts';

const NOT_SAVED = 'The server could not write its log, so nothing was saved.';
/** To a phone, which keeps what it has to say. */
export const NOT_SAVED_SENT_AGAIN = `${NOT_SAVED} The phone sends it again.`;
/** To a desk, where a person decides. */
export const NOT_SAVED_TRY_AGAIN = `${NOT_SAVED} Try again.`;

export const CONNECTION_FAILED = 'The server could not read or write its log. Connect again.';
export const HISTORY_FAILED = 'The server could not read its log. Connect again.';
export const REQUEST_FAILED = 'The server could not read or write its log. Try again.';
export const REPORT_FAILED = 'The report could not be made. Try again.';
export const RULES_FAILED = 'The server failed on this, and nothing was saved. Try other words.';

/** To a desk that signs after reading something else. */
export const OTHER_RECORD = 'You read another record than the one kept here. Load it again, and compare.';

/** To a phone with entries that this server's log does not have. `after`: its last one; `count`: of the log. */
export const logEndsText = (after: Seq, count: number): string =>
  `This phone holds entry ${after}, and the log here ends before entry ${count}. Was an older backup restored?`;

/** Of a log that can only be read from now on. `of`: what its crew or desk must open instead. */
export const brokenLogText = (of: 'job' | 'site', { seq, fault }: ChainFault): string =>
  `The log of this ${of} fails its check at entry ${seq} (${fault}). You can read it, but nothing more can be added. Open a new ${of}, and keep this one as it is.`;
