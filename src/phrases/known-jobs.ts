/** Words of the first page for the jobs that this phone was in and is in no more. */
export const KNOWN_JOBS = {
  heading: 'Jobs this phone was in',
  record: 'Read the record',
  noRecord: 'Only the phone that opened the job has the key of its record.',
  forget: 'Forget',
  sure: 'Yes, forget it',
  kept: 'The record stays on the server. Its key on this phone goes, and cannot be brought back here.',
} as const;

const STANDS = {
  open: 'Not accepted',
  accepted: 'Accepted, not signed',
  signed: 'Signed',
} as const;

/** "Signed, as last seen here on 26 Nov 2026." It may have changed since: another phone can go on. */
export const standText = (stand: keyof typeof STANDS, day: string): string =>
  `${STANDS[stand]}, as last seen here on ${day}.`;
