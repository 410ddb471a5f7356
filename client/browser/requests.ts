import type * as z from 'zod/mini';
import type { Refusal } from '../../src/model/refusal.ts';
import { NO_ANSWER, unreadableText } from '../../src/phrases/requests.ts';
import type { HttpRefusal } from '../../src/protocol/jobs.ts';

/** A request that was refused or failed, in words for the person who asked. */
export class ApiError extends Error {
  override name = 'ApiError';

  /** `isFinal`: the server understood it and will not do it; another try gives the same answer. */
  constructor(
    message: string,
    readonly isFinal = false,
    /** Why it was refused, where the server said so. */
    readonly reason?: Refusal,
  ) {
    super(message);
  }
}

/** Refusals that pass by themselves. */
const PASSING: ReadonlySet<Refusal> = new Set(['too-fast', 'store-failed', 'speech-unavailable']);

export interface RequestOptions {
  /** Sent as a POST, a `Blob` as it is and all else as JSON; without it, the request is a GET. */
  body?: unknown;
  /** The key of the person who asks. */
  token?: string;
}

/** One request. Its answer must have the form of `shape`. @throws {ApiError} */
export async function request<T>(
  path: string,
  shape: z.ZodMiniType<T>,
  options: RequestOptions = {},
): Promise<T> {
  const response = await ask(path, options);
  const answer: unknown = await response.json().catch(() => undefined);
  const parsed = shape.safeParse(answer);
  if (parsed.success) return parsed.data;
  throw new ApiError(unreadableText(response.status));
}

/** One request, with its answer as it came. @throws {ApiError} */
export async function ask(path: string, { body, token }: RequestOptions = {}): Promise<Response> {
  const response = await fetch(path, {
    ...(body !== undefined && { method: 'POST', body: body instanceof Blob ? body : JSON.stringify(body) }),
    headers: {
      ...(body !== undefined && !(body instanceof Blob) && { 'content-type': 'application/json' }),
      ...(token !== undefined && { authorization: `Bearer ${token}` }),
    },
  }).catch(() => {
    throw new ApiError(NO_ANSWER);
  });
  if (response.ok) return response;
  const answer: unknown = await response.json().catch(() => undefined);
  if (!isRefusal(answer)) throw new ApiError(unreadableText(response.status));
  throw new ApiError(answer.text, !PASSING.has(answer.reason), answer.reason);
}

/** Checked by hand: the first page sends requests, and a schema library is larger than that page. */
function isRefusal(answer: unknown): answer is z.output<typeof HttpRefusal> {
  const { reason, text } = (answer ?? {}) as Record<string, unknown>;
  return typeof reason === 'string' && typeof text === 'string';
}

/** What kind of device this is, for the record of who took the seat. */
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
