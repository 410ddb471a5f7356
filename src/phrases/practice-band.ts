/** What every seat loads of practice. The rest is in `practice.ts`. */

/** On every screen of a practice job. */
export const PRACTICE_BAND = 'Practice: nothing here is a record';
export const END_PRACTICE = 'End, and see how it went';
export const LEAVE_PRACTICE = 'Leave practice';
