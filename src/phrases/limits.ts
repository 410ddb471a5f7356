/** What a person reads who asks for too much at once. */

export const TOO_MANY_MESSAGES = 'Too many messages at once. Wait a second and send it again.';
export const NOT_LISTENING = 'Messages still come too fast. Connect again in a while.';
export const tooManyWatchersText = (most: number): string =>
  `${most} people are looking at this job already. Try again when one of them has left.`;
export const TOO_MANY_CHANGES = 'Too many changes at once. Wait a second and send it again.';
export const TOO_MANY_JOBS = 'Too many jobs were opened from here. Wait a minute.';
export const TOO_MANY_SITES = 'Too many sites were opened from here. Wait a minute.';
export const DAY_OF_JOBS_FULL =
  'So many jobs were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.';
export const DAY_OF_SITES_FULL =
  'So many sites were opened from here today that the server takes no more. Wait some hours, or ask who runs the server.';
export const DAY_OF_PLACE_FULL =
  'So much was sent from here today that the server takes no more for now. Keep this, wait some hours, or ask who runs the server.';
export const DAY_OF_LOG_FULL =
  'So much was written to this record today that it takes no more for now. Keep this, and send it again in some hours.';
export const TOO_MANY_CODES =
  'Too many wrong codes were typed here. Scan the square code at the panel, or wait some minutes.';
export const TOO_MANY_PHOTOS = 'Too many photos at once. Wait some seconds and send it again.';
export const TOO_MANY_TALKS = 'Too much waits to be heard. Type it, or say it again in a moment.';
export const TOO_MANY_REPORTS = 'Too many reports were asked for here. Wait until one is ready.';
export const TOO_MUCH_TO_READ = 'This is being read by too many at once. Wait a few seconds and try again.';
export const TOO_MUCH_BROUGHT =
  'Too many records are brought at once. Nothing is lost: try again in some seconds.';
export const TOO_MUCH_TO_SAY = 'Too much to say at once. Wait a second.';

export const mostBytesText = (most: number): string => `At most ${most} bytes.`;
export const mostLettersText = (most: number): string => `At most ${most} characters.`;
