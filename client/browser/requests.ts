import type { z } from 'zod';
import { HttpRefusal, JobOpened, type Join, Joined, type OpenJob } from '../../src/protocol/jobs.ts';

/** A request that was refused or did not get through, in words for the person who asked. */
export class ApiError extends Error {
  override name = 'ApiError';
}

/** @throws {ApiError} */
export const openJob = (job: z.input<typeof OpenJob>): Promise<JobOpened> =>
  request('/api/jobs', JobOpened, { body: job });

/** @throws {ApiError} */
export const join = (code: z.input<typeof Join>): Promise<Joined> =>
  request('/api/join', Joined, { body: code });

export interface RequestOptions {
  /** Sent as JSON; without one it is only asked for. */
  body?: unknown;
  /** Whose request it is. */
  token?: string;
}

/** One request, its answer held to `shape`. @throws {ApiError} */
export async function request<T>(
  path: string,
  shape: z.ZodType<T>,
  options: RequestOptions = {},
): Promise<T> {
  const response = await ask(path, options);
  const answer: unknown = await response.json().catch(() => undefined);
  const parsed = shape.safeParse(answer);
  if (parsed.success) return parsed.data;
  throw unreadable(response);
}

/** One request, answered as it comes. @throws {ApiError} */
export async function ask(path: string, { body, token }: RequestOptions = {}): Promise<Response> {
  const response = await fetch(path, {
    ...(body !== undefined && { method: 'POST', body: JSON.stringify(body) }),
    headers: {
      ...(body !== undefined && { 'content-type': 'application/json' }),
      ...(token !== undefined && { authorization: `Bearer ${token}` }),
    },
  }).catch(() => {
    throw new ApiError(
      'The server does not answer. Check that this device is on the site network, then try again.',
    );
  });
  if (response.ok) return response;
  const refusal = HttpRefusal.safeParse(await response.json().catch(() => undefined));
  throw refusal.success ? new ApiError(refusal.data.text) : unreadable(response);
}

const unreadable = ({ status }: Response): ApiError =>
  new ApiError(`The server gave an answer this page cannot read (${status}). Load the page again.`);

/** What kind of device this is, for the record of who sat down. */
export function deviceName(agent: string = navigator.userAgent): string {
  const devices: [RegExp, string][] = [
    [/iPhone/, 'iPhone'],
    [/iPad/, 'iPad'],
    [/Android.*Mobile/, 'Android phone'],
    [/Android/, 'Android tablet'],
    [/Windows/, 'Windows computer'],
    [/Macintosh/, 'Mac'],
    [/Linux/, 'Linux computer'],
  ];
  return devices.find(([pattern]) => pattern.test(agent))?.[1] ?? 'Phone';
}
