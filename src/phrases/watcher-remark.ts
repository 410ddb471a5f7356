/** Where somebody who watches says something to the crew. */

export const REMARK_TITLE = 'Say something to the crew';
export const REMARK_HINT = 'Both phones show it and say it. It stays in the record, under your name.';
export const REMARK_NAME = 'Your name';
export const REMARK_WORDS = 'Your remark';
export const REMARK_SEND = 'Send to the crew';
/** `waiting`: remarks that the server has not confirmed yet. */
export const remarkWaitsText = (waiting: number): string =>
  waiting === 1 ? 'One remark waits to be sent.' : `${waiting} remarks wait to be sent.`;
export const REMARK_SENT = 'The remark is in the record.';
