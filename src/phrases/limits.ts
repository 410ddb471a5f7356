/** What a person reads who asks for too much at once. */

export const TOO_MANY_MESSAGES = 'Too many messages at once. Wait a second and send it again.';
export const TOO_MANY_CHANGES = 'Too many changes at once. Wait a second and send it again.';
export const TOO_MANY_JOBS = 'Too many jobs were opened from here. Wait a minute.';
export const TOO_MANY_SITES = 'Too many sites were opened from here. Wait a minute.';
export const TOO_MANY_CODES =
  'Too many wrong codes were typed here. Scan the square code at the panel, or wait some minutes.';
export const TOO_MANY_PHOTOS = 'Too many photos at once. Wait some seconds and send it again.';
export const TOO_MANY_REPORTS = 'The server is making too many reports. Wait until one is ready.';
export const TOO_MUCH_TO_SAY = 'Too much to say at once. Wait a second.';

export const mostBytesText = (most: number): string => `At most ${most} bytes.`;
export const mostLettersText = (most: number): string => `At most ${most} characters.`;
