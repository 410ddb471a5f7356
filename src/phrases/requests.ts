/** Why a request to the server failed, and what to do. */

export const NO_ANSWER =
  'The server does not answer. Check that this device is on the site network. Then try again.';

export const NEWER_VERSION =
  'The server has a newer version of this page. Load the page again: what you typed stays.';

/** `status`: the HTTP status, where it is known. */
export const unreadableText = (status?: number): string =>
  `This page cannot read the server's answer${status === undefined ? '' : ` (${status})`}. Load the page again.`;

export const requestFailedText = (error: unknown): string => `The request failed: ${error}`;

export const NO_SUCH_VISIT = 'There is no such visit on this site.';

export const LINK_IS_LOST = 'The link to the server is lost.';

/** The entries of this phone and those of the server are of one job, and differ. */
export const OTHER_HISTORY = "The server's log of this job is not the one that this phone has seen.";
