import type { HttpBindings } from '@hono/node-server';
import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import * as z from 'zod/mini';
import type { Refusal } from '../../src/model/refusal.ts';
import { badFieldText, NOT_JSON } from '../../src/phrases/bad-requests.ts';
import { revokedText, UNKNOWN_LINK } from '../../src/phrases/links.ts';
import { type FieldFault, incomingFaults } from '../../src/protocol/incoming.ts';
import type { HttpRefusal } from '../../src/protocol/jobs.ts';
import { digest } from '../guard/secrets.ts';
import type { Span } from '../guard/span.ts';
import type { Digest, Pass, Store } from '../store/store.ts';

export type Env = {
  Bindings: HttpBindings;
  Variables: {
    address: string;
    /** Told of each token that was used. */
    saw: (token: Digest) => void;
    /** With what it came in, where it came with a token that this server gave. */
    pass?: Pass & { readonly token: Digest };
    /** Of this request. */
    span: Span;
    /** Why this request was refused, once it was. */
    refusal?: Refusal;
  };
};

/** An answer to an HTTP caller, or a named refusal. */
export type Answer<T> = { kind: 'ok'; value: T } | { kind: 'refused'; reason: Refusal; text: string };

const STATUS: Partial<Record<Refusal, ContentfulStatusCode>> = {
  'bad-token': 401,
  'seat-lost': 401,
  revoked: 401,
  locked: 401,
  'bad-code': 403,
  'read-only': 403,
  'seat-in-use': 409,
  'not-now': 409,
  'log-broken': 409,
  'not-signable': 409,
  'too-long': 413,
  'too-fast': 429,
  'speech-unavailable': 503,
  'store-failed': 503,
};

/** The caller's address, for limits. */
export const addressOf = (c: Context<Env>): string => c.get('address');

export const tokenOf = (c: Context<Env>): string | undefined =>
  /^Bearer ([A-Za-z0-9_-]{22})$/.exec(c.req.header('authorization') ?? '')?.[1];

/** Whose token the caller sends; undefined if this server never gave that token. */
export async function passOf(c: Context<Env>, store: Store): Promise<Pass | undefined> {
  const token = tokenOf(c);
  if (token === undefined) return undefined;
  const key = digest(token);
  const pass = await store.pass(key);
  if (pass) c.set('pass', { ...pass, token: key });
  if (pass && !pass.revoked) c.get('saw')(key);
  return pass;
}

/** Whose token it is, or the refusal when it is not valid. */
export async function goodPass(c: Context<Env>, store: Store): Promise<Pass | Response> {
  const pass = await passOf(c, store);
  if (!pass) return refuse(c, 'bad-token', UNKNOWN_LINK);
  return pass.revoked ? refuse(c, pass.revoked, revokedText(pass.revoked, pass.role)) : pass;
}

/** Our own words for a mistake in a field, instead of the schema's. */
type Fields = Record<string, { reason: Refusal; text: string }>;

/** The body, checked against `shape`. */
export async function read<T extends z.ZodMiniType>(
  c: Context<Env>,
  shape: T,
  fields: Fields = {},
): Promise<Answer<z.output<T>>> {
  const json: unknown = await c.req.json().catch(() => undefined);
  return json === undefined
    ? { kind: 'refused', reason: 'bad-message', text: NOT_JSON }
    : shaped(json, shape, fields);
}

/** What stands behind the "?" of the address, checked against `shape`. */
export const readQuery = async <T extends z.ZodMiniType>(
  c: Context<Env>,
  shape: T,
): Promise<Answer<z.output<T>>> => shaped(c.req.query(), shape);

/** What a schema says is wrong, in English. The schemas alone have no words, for phones show none. */
export const IN_WORDS = { error: z.locales.en().localeError };

/** What was sent, if it has the shape. */
export function shaped<T extends z.ZodMiniType>(
  sent: unknown,
  shape: T,
  fields: Fields = {},
): Answer<z.output<T>> {
  const parsed = shape.safeParse(sent, IN_WORDS);
  const [fault] = parsed.error?.issues ?? incomingFaults(shape, sent, true);
  if (parsed.success && !fault) return { kind: 'ok', value: parsed.data };
  const { path, message } = fault as FieldFault;
  const known = fields[String(path[0])];
  if (known) return { kind: 'refused', ...known };
  return { kind: 'refused', reason: 'bad-message', text: badFieldText(path, message) };
}

export function reply<T extends object>(
  c: Context<Env>,
  answer: Answer<T>,
  status: ContentfulStatusCode,
): Response {
  return answer.kind === 'ok' ? c.json(answer.value, status) : refuse(c, answer.reason, answer.text);
}

export function refuse(
  c: Context<Env>,
  reason: Refusal,
  text: string,
  status?: ContentfulStatusCode,
): Response {
  c.set('refusal', reason);
  return c.json({ reason, text } satisfies z.input<typeof HttpRefusal>, status ?? STATUS[reason] ?? 400);
}
