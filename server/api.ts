import type { HttpBindings } from '@hono/node-server';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Logger } from 'pino';
import type { z } from 'zod';
import type { Entry, Head } from '../src/log/entry.ts';
import { toCsv, toJsonLines } from '../src/log/export.ts';
import {
  type HttpRefusal,
  type JobRecord,
  Join,
  OpenJob,
  PROTOCOL_VERSION,
  type Refusal,
} from '../src/protocol.ts';
import { Bucket, Buckets } from './allowance.ts';
import type { Hearing } from './hearing.ts';
import type { Limits } from './limits.ts';
import { isOwnOrigin } from './origin.ts';
import type { Answer, Rooms } from './rooms.ts';
import { digest } from './secrets.ts';
import type { Pass, Store } from './store/store.ts';

export interface ApiDeps {
  rooms: Rooms;
  store: Store;
  hearing: Hearing;
  limits: Limits;
  log: Logger;
  version: string;
}

type Env = { Bindings: HttpBindings };

const STATUS: Partial<Record<Refusal, ContentfulStatusCode>> = {
  'bad-token': 401,
  'seat-lost': 401,
  'bad-code': 403,
  'seat-in-use': 409,
  'log-broken': 409,
  'too-long': 413,
  'too-fast': 429,
  'store-failed': 503,
};

const READ_BATCH = 1_000;

/** Opening, joining and reading jobs over HTTP. Every refusal is an `HttpRefusal`. */
export function api({ rooms, store, hearing, limits, log, version }: ApiDeps): Hono<Env> {
  const app = new Hono<Env>();
  const guesses = new Bucket(limits.guesses, performance.now());
  const guessesOf = new Buckets(limits.guessesPerAddress);
  const opensOf = new Buckets(limits.opensPerAddress);

  app.use(async (c, next) => {
    if (!isOwnOrigin(c.req.header('origin'), c.req.header('host'))) {
      return refuse(c, 'bad-message', 'This request comes from a page of another site.', 403);
    }
    await next();
    c.header('Cache-Control', 'no-store');
  });
  app.use(
    bodyLimit({
      maxSize: limits.maxBodyBytes,
      onError: (c) => refuse(c, 'too-long', `At most ${limits.maxBodyBytes} bytes.`),
    }),
  );

  app.post('/jobs', async (c) => {
    if (!opensOf.of(addressOf(c), performance.now()).take(performance.now())) {
      return refuse(c, 'too-fast', 'Too many jobs were opened from here. Wait a minute.');
    }
    const body = await read(c, OpenJob);
    return body.kind === 'refused'
      ? refuse(c, body.reason, body.text)
      : reply(c, await rooms.open(body.value), 201);
  });

  app.post('/join', async (c) => {
    const now = performance.now();
    const own = guessesOf.of(addressOf(c), now);
    if (!guesses.has(now) || !own.has(now)) {
      c.header('Retry-After', '60');
      return refuse(c, 'too-fast', 'Too many wrong codes. Wait a minute, then try again.');
    }
    const body = await read(c, Join);
    const answer = body.kind === 'ok' ? await rooms.join(body.value.code, body.value.device) : body;
    if (answer.kind === 'refused' && answer.reason === 'bad-code') {
      guesses.take(now);
      own.take(now);
    }
    return reply(c, answer, 200);
  });

  app.get('/record', (c) =>
    withLog(c, (head, entries) => c.json({ head, entries } satisfies z.input<typeof JobRecord>)),
  );
  app.get('/export.jsonl', (c) =>
    withLog(c, (head, entries) => file(c, head, 'jsonl', 'application/jsonl', toJsonLines(entries, head))),
  );
  app.get('/export.csv', (c) =>
    withLog(c, (head, entries) => file(c, head, 'csv', 'text/csv; charset=utf-8', toCsv(entries, head))),
  );

  app.get('/health', async (c) => {
    await store.health();
    return c.json({
      ok: true,
      version,
      protocol: PROTOCOL_VERSION,
      store: store.name,
      speech: hearing.state,
      liveJobs: rooms.count,
    });
  });

  app.all('*', (c) => refuse(c, 'bad-message', `There is no ${c.req.method} ${c.req.path}.`, 404));
  app.onError((error, c) => {
    log.error({ err: error, path: c.req.path }, 'a request failed');
    return refuse(c, 'store-failed', 'The server could not read or write its log. Try again.');
  });
  return app;

  /** Runs `answer` on the whole log of the job that the caller's token is for. */
  async function withLog(
    c: Context<Env>,
    answer: (head: Head, entries: Entry[]) => Response,
  ): Promise<Response> {
    const pass = await passOf(c);
    if (!pass) return refuse(c, 'bad-token', 'This link is not known here.');
    if (pass.revoked) return refuse(c, 'seat-lost', `Another phone has taken the ${pass.role} seat.`);
    const head = await store.head(pass.job);
    const entries: Entry[] = [];
    while (entries.length < head.count) {
      const batch = await store.read(pass.job, entries.at(-1)?.seq ?? -1, READ_BATCH);
      if (batch.length === 0) break;
      entries.push(...batch);
    }
    // What was added while we read is left for the next time: the head says where this ends.
    return answer(head, entries.slice(0, head.count));
  }

  async function passOf(c: Context<Env>): Promise<Pass | undefined> {
    const token = /^Bearer ([A-Za-z0-9_-]{22})$/.exec(c.req.header('authorization') ?? '')?.[1];
    return token === undefined ? undefined : store.pass(digest(token));
  }
}

function addressOf(c: Context<Env>): string {
  return c.env.incoming.socket.remoteAddress ?? '';
}

async function read<T extends z.ZodType>(c: Context<Env>, shape: T): Promise<Answer<z.output<T>>> {
  const json: unknown = await c.req.json().catch(() => undefined);
  const parsed = shape.safeParse(json);
  if (parsed.success) return { kind: 'ok', value: parsed.data };
  const [issue] = parsed.error.issues;
  const [field] = issue?.path ?? [];
  if (field === 'code')
    return { kind: 'refused', reason: 'bad-code', text: 'A code is six letters and digits.' };
  const where = issue?.path.join('.');
  return {
    kind: 'refused',
    reason: 'bad-message',
    text: json === undefined ? 'The body is not JSON.' : `${where ? `${where}: ` : ''}${issue?.message}`,
  };
}

function reply<T extends object>(c: Context<Env>, answer: Answer<T>, status: ContentfulStatusCode): Response {
  return answer.kind === 'ok' ? c.json(answer.value, status) : refuse(c, answer.reason, answer.text);
}

function refuse(c: Context, reason: Refusal, text: string, status?: ContentfulStatusCode): Response {
  return c.json({ reason, text } satisfies z.input<typeof HttpRefusal>, status ?? STATUS[reason] ?? 400);
}

function file(c: Context, head: Head, ending: string, type: string, text: string): Response {
  c.header('Content-Type', type);
  c.header('Content-Disposition', `attachment; filename="ladderline-${head.job}.${ending}"`);
  return c.body(text);
}
