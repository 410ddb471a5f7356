import type * as z from 'zod/mini';
import type { Log } from '../../src/model/entry.ts';
import type { JobId, MessageId } from '../../src/model/ids.ts';
import { JobOpened } from '../../src/protocol/jobs.ts';
import {
  type BeginVisit,
  type ChooseUnits,
  type CloseIssue,
  type DefineSteps,
  type DropPair,
  Logged,
  type OpenSite,
  type PlanPairs,
  type SignRecord,
  SiteFindings,
  SiteOpened,
  type WriteHandOver,
} from '../../src/protocol/site.ts';
import { readLog } from '../browser/logs.ts';
import { ask, request } from '../browser/requests.ts';

/** The requests about a site. Each throws an `ApiError`, in words for the person who asked. */

/** Each command has its own id: sent twice, it counts once. */
export type Written<T extends z.ZodMiniType> = Omit<z.input<T>, 'id'>;

export const openSite = (site: z.input<typeof OpenSite>): Promise<SiteOpened> =>
  request('/api/sites', SiteOpened, { body: site });

const write =
  <T extends z.ZodMiniType, A>(path: string, answer: z.ZodMiniType<A>) =>
  (token: string, id: MessageId, body: Written<T>): Promise<A> =>
    request(path, answer, { token, body: { ...body, id } });

export const planPairs = write<typeof PlanPairs, Logged>('/api/site/pairs', Logged);
export const chooseUnits = write<typeof ChooseUnits, Logged>('/api/site/units', Logged);
export const defineSteps = write<typeof DefineSteps, Logged>('/api/site/steps', Logged);
export const dropPair = write<typeof DropPair, Logged>('/api/site/drop', Logged);
export const beginVisit = write<typeof BeginVisit, JobOpened>('/api/site/jobs', JobOpened);
export const signRecord = write<typeof SignRecord, Logged>('/api/site/sign', Logged);
export const closeIssue = write<typeof CloseIssue, Logged>('/api/site/close-issue', Logged);

export const writeHandOver = write<typeof WriteHandOver, Logged>('/api/site/hand-over', Logged);

/** The board as text: mostly it has not changed since the last time. `job`: only the pair of this visit. */
export const siteText = async (token: string, job?: JobId): Promise<string> =>
  (await ask(`/api/site${ofVisit(job)}`, { token })).text();

export const siteFindings = (token: string, job?: JobId): Promise<SiteFindings> =>
  request(`/api/site/findings${ofVisit(job)}`, SiteFindings, { token });

const ofVisit = (job: JobId | undefined): string => (job ? `?job=${encodeURIComponent(job)}` : '');

/** The log of one visit, as text and as read. */
export const visitLog = (token: string, job: JobId): Promise<{ text: string; log: Log }> =>
  readLog(`/api/site/record${ofVisit(job)}`, token);
