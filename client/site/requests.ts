import type { z } from 'zod';
import type { Log } from '../../src/model/entry.ts';
import type { JobId, MessageId } from '../../src/model/ids.ts';
import { JobOpened, JobRecord } from '../../src/protocol/jobs.ts';
import {
  type BeginVisit,
  type CloseIssue,
  type DropPair,
  Logged,
  type OpenSite,
  type PlanPairs,
  type SignRecord,
  SiteFindings,
  SiteOpened,
} from '../../src/protocol/site.ts';
import { ask, request } from '../browser/requests.ts';

/** What is asked of a site's server. Each of these throws an `ApiError` in words for who asked. */

/** What is written carries an id of its own, so that the same sent twice counts once. */
export type Written<T extends z.ZodType> = Omit<z.input<T>, 'id'>;

export const openSite = (site: z.input<typeof OpenSite>): Promise<SiteOpened> =>
  request('/api/sites', SiteOpened, { body: site });

const write =
  <T extends z.ZodType, A>(path: string, answer: z.ZodType<A>) =>
  (token: string, id: MessageId, body: Written<T>): Promise<A> =>
    request(path, answer, { token, body: { ...body, id } });

export const planPairs = write<typeof PlanPairs, Logged>('/api/site/pairs', Logged);
export const dropPair = write<typeof DropPair, Logged>('/api/site/drop', Logged);
export const beginVisit = write<typeof BeginVisit, JobOpened>('/api/site/jobs', JobOpened);
export const signRecord = write<typeof SignRecord, Logged>('/api/site/sign', Logged);
export const closeIssue = write<typeof CloseIssue, Logged>('/api/site/close-issue', Logged);

/** The board as text: most looks at it find that nothing has changed. `job`: the pair of this visit alone. */
export const siteText = async (token: string, job?: JobId): Promise<string> =>
  (await ask(`/api/site${ofVisit(job)}`, { token })).text();

export const siteFindings = (token: string, job?: JobId): Promise<SiteFindings> =>
  request(`/api/site/findings${ofVisit(job)}`, SiteFindings, { token });

const ofVisit = (job: JobId | undefined): string => (job ? `?job=${encodeURIComponent(job)}` : '');

/** The log of one visit, as text and as read: a field this page does not know is covered by the hash. */
export async function visitLog(token: string, job: JobId): Promise<{ text: string; log: Log }> {
  const text = await (await ask(`/api/site/record${ofVisit(job)}`, { token })).text();
  const raw: unknown = JSON.parse(text);
  JobRecord.parse(raw);
  return { text, log: raw as Log };
}
