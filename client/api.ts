import type { z } from 'zod';
import { HttpRefusal, JobOpened, type Join, Joined, type OpenJob } from '../src/protocol.ts';

/** A request that was refused or did not get through, in words for the person who asked. */
export class ApiError extends Error {
  override name = 'ApiError';
}

/** @throws {ApiError} */
export const openJob = (job: z.input<typeof OpenJob>): Promise<JobOpened> =>
  post('/api/jobs', job, JobOpened);

/** @throws {ApiError} */
export const join = (request: z.input<typeof Join>): Promise<Joined> => post('/api/join', request, Joined);

async function post<T>(path: string, body: unknown, shape: z.ZodType<T>): Promise<T> {
  const response = await fetch(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  }).catch(() => {
    throw new ApiError(
      'The server does not answer. Check that this device is on the site network, then try again.',
    );
  });
  const answer: unknown = await response.json().catch(() => undefined);
  const parsed = shape.safeParse(answer);
  if (response.ok && parsed.success) return parsed.data;
  const refusal = HttpRefusal.safeParse(answer);
  throw new ApiError(
    refusal.success
      ? refusal.data.text
      : `The server gave an answer this page cannot read (${response.status}). Load the page again.`,
  );
}

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
