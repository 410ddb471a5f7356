import type { Seat } from '../model/facts.ts';
import { KEY_TAKEN } from './keys.ts';

/** What a person reads whose link, code or seat does not let them in. */

export const UNKNOWN_LINK = 'This link is not known here.';
export const NO_SITE_LINK = 'This link does not open a site, or it is not known here.';
export const NO_JOB_LINK = 'This link opens a site, not a job.';
export const ONLY_WATCHING = 'This link is for watching. It can write remarks with a name, and nothing else.';
export const ONLY_WATCHERS_SIGN =
  'Only who watches puts a name to a remark. The name of a seat is given with "person".';
export const ONLY_THE_LADDER = 'Only the emitter phone says what it has shown.';
export const ONLY_READING = 'This link is for reading. It cannot change the site.';

export const CODE_FORM = 'A code is six letters and digits.';
export const BAD_CODE = 'This code is not known, was used before, or has expired. Ask for a new one.';

export const seatLostText = (seat: string): string => `Another phone has taken the ${seat} seat.`;
/** Why a token that was good is not any more. */
export const revokedText = (why: 'seat-lost' | 'revoked', seat: string): string =>
  why === 'revoked' ? KEY_TAKEN : seatLostText(seat);
export const seatConnectedText = (seat: Seat): string => `The ${seat} phone of this job is connected.`;
export const closeThereText = (seat: Seat): string => `${seatConnectedText(seat)} Close it there first.`;
export const NEWER_CONNECTION = 'This phone opened a newer connection.';
