import type { JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';

/** Addresses of a site's pages. The token travels in the fragment, which no server sees. */
export const boardLink = (token: string): string => `/site#${token}`;
export const importLink = (token: string): string => `/site/import#${token}`;
export const planLink = (token: string, pair?: PairId): string =>
  `/site/plan#${token}${pair === undefined ? '' : `/${pair}`}`;
export const visitLink = (token: string, job: JobId): string => `/site/pair#${token}/${job}`;
