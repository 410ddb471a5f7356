import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Logger } from 'pino';
import { Join, OpenJob } from '../src/protocol/jobs.ts';
import { PROTOCOL_VERSION } from '../src/protocol/socket.ts';
import { Bucket, Buckets } from './guard/allowance.ts';
import type { Limits } from './guard/limits.ts';
import { isOwnOrigin } from './guard/origin.ts';
import { addressOf, type Env, passOf, read, refuse, reply } from './http/http.ts';
import type { Rooms } from './jobs/rooms.ts';
import type { Clock } from './process/clock.ts';
import { RECORDS, SCHEMAS, wholeLog } from './record/files.ts';
import type { Summaries } from './record/summaries.ts';
import { reportApi } from './report/api.ts';
import { siteApi } from './site/api.ts';
import type { Sites } from './site/sites.ts';
import type { SpeechService } from './speech/service.ts';
import type { Pass, Store } from './store/store.ts';
import { FASTEST, LONGEST_TEXT, SLOWEST, sayable, type VoiceMaker, VoiceUnavailable } from './voice/voice.ts';

export interface ApiDeps {
  rooms: Rooms;
  sites: Sites;
  summaries: Summaries;
  store: Store;
  speech: SpeechService;
  voice?: VoiceMaker | undefined;
  limits: Limits;
  clock: Clock;
  log: Logger;
  version: string;
}

const BAD_FORM = { reason: 'bad-code', text: 'A code is six letters and digits.' } as const;

/** Opening, joining and reading jobs over HTTP, and the sites. Every refusal is an `HttpRefusal`. */
export function api({
  rooms,
  sites,
  summaries,
  store,
  speech,
  voice,
  limits,
  clock,
  log,
  version,
}: ApiDeps): Hono<Env> {
  const app = new Hono<Env>();
  const guesses = new Bucket(limits.guesses, performance.now());
  const guessesOf = new Buckets(limits.guessesPerAddress);
  const opensOf = new Buckets(limits.opensPerAddress);
  const voicesOf = new Buckets(limits.voices);

  app.use(async (c, next) => {
    if (!isOwnOrigin(c.req.header('origin'), c.req.header('host'))) {
      return refuse(c, 'bad-message', 'This request comes from a page of another site.', 403);
    }
    await next();
    c.header('Cache-Control', 'no-store');
  });
  const atMost = (maxSize: number) =>
    bodyLimit({ maxSize, onError: (c) => refuse(c, 'too-long', `At most ${maxSize} bytes.`) });
  const small = atMost(limits.maxBodyBytes);
  const large = atMost(limits.maxSiteBodyBytes);
  app.use((c, next) => (c.req.path.startsWith('/api/site/') ? large : small)(c, next));

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
    const body = await read(c, Join, { code: BAD_FORM });
    const answer = body.kind === 'ok' ? await rooms.join(body.value.code, body.value.device) : body;
    if (answer.kind === 'refused' && answer.reason === 'bad-code') {
      guesses.take(now);
      own.take(now);
    }
    return reply(c, answer, 200);
  });

  for (const [path, give] of Object.entries(RECORDS)) {
    app.get(`/${path}`, async (c) => {
      const pass = await goodPass(c);
      if (pass instanceof Response) return pass;
      const { head, entries } = await wholeLog(store, pass.job);
      return give(c, head, entries);
    });
  }

  for (const [path, make] of Object.entries(SCHEMAS)) app.get(`/${path}`, (c) => c.json(make()));

  app.get('/voice', async (c) => {
    const pass = await goodPass(c);
    if (pass instanceof Response) return pass;
    const text = c.req.query('text') ?? '';
    const rate = Number(c.req.query('rate') ?? 1);
    if (text.length > LONGEST_TEXT) return refuse(c, 'too-long', `At most ${LONGEST_TEXT} characters.`);
    if (sayable(text) === '') return refuse(c, 'bad-message', 'There is nothing to say in this text.');
    if (!(rate >= SLOWEST && rate <= FASTEST))
      return refuse(c, 'bad-message', `rate: it must be from ${SLOWEST} to ${FASTEST}.`);
    if (!voice)
      return refuse(c, 'speech-unavailable', 'This server was started without a voice. Read the screen.');
    const now = performance.now();
    if (!voicesOf.of(pass.job, now).take(now))
      return refuse(c, 'too-fast', 'Too much was to be said at once. Wait a second.');
    try {
      return c.body(await voice.say(text, rate), 200, { 'Content-Type': 'audio/wav' });
    } catch (error) {
      if (!(error instanceof VoiceUnavailable)) throw error;
      return refuse(c, 'speech-unavailable', `${error.message} Read the screen.`);
    }
  });

  app.route('/', reportApi({ store, clock, log }));
  app.route('/', siteApi({ sites, summaries, rooms, store, limits, opensOf }));

  app.get('/health', async (c) => {
    await store.health();
    return c.json({
      ok: true,
      version,
      protocol: PROTOCOL_VERSION,
      store: store.name,
      speech: speech.state,
      liveJobs: rooms.count,
    });
  });

  app.all('*', (c) => refuse(c, 'bad-message', `There is no ${c.req.method} ${c.req.path}.`, 404));
  app.onError((error, c) => {
    log.error({ err: error, path: c.req.path }, 'a request failed');
    return refuse(c, 'store-failed', 'The server could not read or write its log. Try again.');
  });
  return app;

  /** Whose token it is, or the refusal for one that is not good. */
  async function goodPass(c: Context<Env>): Promise<Pass | Response> {
    const pass = await passOf(c, store);
    if (!pass) return refuse(c, 'bad-token', 'This link is not known here.');
    return pass.revoked ? refuse(c, 'seat-lost', `Another phone has taken the ${pass.role} seat.`) : pass;
  }
}
