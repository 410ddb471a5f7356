/** What is said when the server itself cannot serve: it stops, or its disk fills up. */

export const STOPPING = 'The server is stopping. Nothing is lost: try again in a minute.';

/** On a phone at a seat. */
export const KEEP_OPEN = 'The server is stopping. Keep your phone open: it goes on by itself.';

/** `free` and `least`: bytes. */
export const diskAlmostFullText = (free: number, least: number): string =>
  `The disk of the data folder has ${megabytes(free)} MB free, less than the ${megabytes(least)} MB that should be: make room on it, before nothing more can be recorded.`;

const megabytes = (bytes: number): number => Math.floor(bytes / 1e6);

export const NO_METRICS =
  'The metrics are for who runs the server: send the token in the file metrics.token of the data folder.';
