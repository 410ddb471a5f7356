/** What a phone without a link says about itself. */

/** `since`: a time of day, as this phone's clock shows it. */
export const noLinkSinceText = (since: string): string => `No link since ${since}`;

/** `waiting`: how many things were said or pressed and are not sent yet. */
export const keptHereText = (waiting: number): string => {
  if (waiting === 0) return 'What you press or type is kept. It is sent when the link is back.';
  const things =
    waiting === 1 ? '1 thing that you said or pressed is' : `${waiting} things that you said or pressed are`;
  return `${things} kept here. It is sent when the link is back.`;
};

export const AS_LAST_SEEN =
  'This is the job as this phone last saw it. The other phone may have gone on since.';

export const PAGES_KEPT = 'This phone keeps the pages: they open without a link.';
export const PAGES_NOT_KEPT =
  'This phone keeps no copy of the pages: they came over plain http, or under a certificate that it does not trust. Without a link, do not load this page again: it would not open.';

export const NEW_VERSION_WAITS =
  'A new version of this page is here. It waits until no job is open on this phone: then the start page takes it.';

/** `megabytes`: what is fetched once. */
export const speechKeptText = (kept: boolean, megabytes: number): string =>
  kept
    ? 'The speech model is on this phone.'
    : `The speech model is not on this phone yet. It is fetched once, about ${megabytes} MB, while there is a link.`;
