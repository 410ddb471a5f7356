import type * as z from 'zod/mini';
import { type Ask, AskAnswer, Asked } from '../../src/protocol/ask.ts';
import { type Enter, Entered } from '../../src/protocol/enter.ts';
import { JobOpened, type Join, Joined, type OpenJob } from '../../src/protocol/jobs.ts';
import { request } from './requests.ts';

/** @throws {ApiError} */
export const openJob = (job: z.input<typeof OpenJob>): Promise<JobOpened> =>
  request('/api/jobs', JobOpened, { body: job });

/** @throws {ApiError} */
export const join = (code: z.input<typeof Join>): Promise<Joined> =>
  request('/api/join', Joined, { body: code });

/** Asks the panel to let this phone in. @throws {ApiError} */
export const askPanel = (ask: z.input<typeof Ask>): Promise<Asked> =>
  request('/api/ask', Asked, { body: ask });

/** @throws {ApiError} */
export const askAnswer = (asker: string): Promise<AskAnswer> =>
  request('/api/ask', AskAnswer, { token: asker });

/** Shows the passphrase, where one is needed to open sites and jobs; the browser keeps a cookie. @throws {ApiError} */
export const enter = (passphrase: string): Promise<unknown> =>
  request('/api/enter', Entered, { body: { passphrase } satisfies z.input<typeof Enter> });
