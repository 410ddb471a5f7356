import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { compress } from 'hono/compress';
import type { Logger } from 'pino';
import type { Stamping } from '../src/log/time-stamp.ts';
import { PHOTO_BYTES_MOST } from '../src/model/photo.ts';
import { CALL_FORM, QUESTION_UNKNOWN } from '../src/phrases/admission.ts';
import {
  badFieldText,
  noAddressText,
  notBetweenText,
  OTHER_WEBSITE,
  PRACTICE_NOT_KEPT,
} from '../src/phrases/bad-requests.ts';
import {
  DAY_OF_JOBS_FULL,
  DAY_OF_PLACE_FULL,
  mostBytesText,
  mostLettersText,
  TOO_MANY_CODES,
  TOO_MANY_JOBS,
  TOO_MUCH_BROUGHT,
  TOO_MUCH_TO_READ,
  TOO_MUCH_TO_SAY,
} from '../src/phrases/limits.ts';
import { CODE_FORM } from '../src/phrases/links.ts';
import { REQUEST_FAILED } from '../src/phrases/log-failures.ts';
import { NO_VOICE, NOTHING_TO_SAY, voiceFailedText } from '../src/phrases/no-speech.ts';
import { PICTURE_TOO_LARGE } from '../src/phrases/photos.ts';
import { STOPPING } from '../src/phrases/service.ts';
import { ROUTES } from '../src/protocol/routes.ts';
import { accountsApi } from './accounts/api.ts';
import type { Sso } from './accounts/sso.ts';
import { ssoApi } from './accounts/sso-api.ts';
import { Buckets, type DailyAllowances } from './guard/allowance.ts';
import type { Carriage } from './guard/carriage.ts';
import { blockOf, Guesses } from './guard/guesses.ts';
import type { LastSeen } from './guard/last-seen.ts';
import type { Limits } from './guard/limits.ts';
import { isOwnOrigin } from './guard/origin.ts';
import { spanAfter } from './guard/span.ts';
import type { HeavyWork } from './guard/turns.ts';
import { type HealthDeps, healthApi } from './health.ts';
import { carry, Others } from './http/carry.ts';
import type { Entrance } from './http/entrance.ts';
import { addressOf, type Env, goodPass, read, refuse, reply, tokenOf } from './http/http.ts';
import { answer } from './http/route.ts';
import { type CertificateNow, trustApi } from './http/trust.ts';
import { Sent } from './jobs/bring.ts';
import type { Rooms } from './jobs/rooms.ts';
import { keysApi } from './keys/api.ts';
import { headsApi } from './notary/api.ts';
import type { Notary } from './notary/notary.ts';
import { photoApi } from './photos/api.ts';
import type { Clock } from './process/clock.ts';
import { readsApi } from './reads/api.ts';
import type { Reads } from './reads/reads.ts';
import { notesReads } from './reads/requests.ts';
import { DESCRIPTIONS } from './record/descriptions.ts';
import { isPracticeJob, RECORDS } from './record/files.ts';
import type { Summaries } from './record/summaries.ts';
import { type ReportThreads, reportApi } from './report/api.ts';
import { siteApi } from './site/api.ts';
import { figuresApi } from './site/figures-api.ts';
import type { Sites } from './site/sites.ts';
import { soundApi } from './sounds/api.ts';
import type { FigureStore } from './store/figures.ts';
import { HeldElsewhere, type Leases } from './store/leases.ts';
import type { Store } from './store/store.ts';
import type { Telemetry } from './telemetry/telemetry.ts';
import { FASTEST, LONGEST_TEXT, SLOWEST, sayable, type VoiceMaker, VoiceUnavailable } from './voice/voice.ts';

export interface ApiDeps extends HealthDeps {
  rooms: Rooms;
  sites: Sites;
  summaries: Summaries;
  notary: Notary;
  /** How it stands with time stamps; undefined where nobody is asked for them. */
  stamping: () => Stamping | undefined;
  store: Store;
  seen: LastSeen;
  reads: Reads;
  voice?: VoiceMaker | undefined;
  limits: Limits;
  daily: DailyAllowances;
  heavy: HeavyWork;
  reports: ReportThreads;
  clock: Clock;
  log: Logger;
  telemetry: Telemetry;
  certificate: CertificateNow;
  /** By which phones find this server, where its network tells them. */
  localName?: (() => string | undefined) | undefined;
  entrance: Entrance;
  /** Where this server is several processes. */
  leases?: Leases | undefined;
  carriage?: Carriage | undefined;
  /** Where the records are in a database. */
  figures?: FigureStore | undefined;
  /** Where people of the firm sign in, if they do. */
  sso?: Sso | undefined;
}

/** The addresses of the table: what else is asked for may be anything, and is named nowhere. */
const PATHS: ReadonlySet<string> = new Set(Object.values(ROUTES).map(({ path }) => `/api${path}`));

/** Jobs over HTTP (open, join, read), and the sites. Every refusal is an `HttpRefusal`. */
export function api(deps: ApiDeps): Hono<Env> {
  const {
    rooms,
    sites,
    summaries,
    notary,
    stamping,
    store,
    seen,
    reads,
    voice,
    limits,
    daily,
    heavy,
    reports,
    clock,
    log,
    telemetry,
    version,
    certificate,
    entrance,
    sso,
    isStopping,
  } = deps;
  const app = new Hono<Env>();
  const guesses = new Guesses(limits, performance.now());
  const opensOf = new Buckets(limits.opensPerAddress);
  const others = new Others(deps.leases, deps.carriage);
  const voicesOf = new Buckets(limits.voices);

  app.use(async (c, next) => {
    const began = performance.now();
    const isCarried = deps.carriage?.callerIn(c.env.incoming.headers) !== undefined;
    const span = spanAfter(isCarried ? c.req.header('traceparent') : undefined);
    c.set('span', span);
    await next();
    const refusal = c.get('refusal');
    const path = PATHS.has(c.req.path) ? c.req.path : 'unknown';
    if (refusal) telemetry.refused('request', refusal, blockOf(addressOf(c)), path);
    telemetry.answered(c.req.method, path, c.res.status, performance.now() - began, span);
  });
  // A record of a day is a megabyte of JSON. No key can be guessed by the size of an answer: another website cannot send a token.
  app.use(compress({ encoding: 'gzip' }));
  app.use(async (c, next) => {
    if (!isOwnOrigin(c.req.header('origin'), c.req.header('host'))) {
      return refuse(c, 'bad-message', OTHER_WEBSITE, 403);
    }
    await next();
    c.header('Cache-Control', 'no-store');
  });
  app.use(async (c, next) => {
    if (c.req.method === 'GET' || !isStopping()) return next();
    c.header('Retry-After', '60');
    return refuse(c, 'store-failed', STOPPING);
  });
  const atMost = (maxSize: number, text = mostBytesText(maxSize)) =>
    bodyLimit({ maxSize, onError: (c) => refuse(c, 'too-long', text) });
  const small = atMost(limits.maxBodyBytes);
  const large = atMost(limits.maxSiteBodyBytes);
  const picture = atMost(PHOTO_BYTES_MOST, PICTURE_TOO_LARGE);
  app.use((c, next) => {
    const { path } = c.req;
    const isLarge = path.startsWith('/api/site/') || path === `/api${ROUTES.bringJob.path}`;
    const limit = path.endsWith('/photo') ? picture : isLarge ? large : small;
    return limit(c, next);
  });
  app.use(async (c, next) => {
    // A body that does not say how long it is counts as the longest that is taken.
    const bytes = Number(c.req.header('content-length') ?? limits.maxSiteBodyBytes);
    const now = performance.now();
    const mayWrite = c.req.method === 'GET' || daily.bytes.of(blockOf(addressOf(c)), now).take(now, bytes);
    return mayWrite ? next() : refuse(c, 'too-fast', DAY_OF_PLACE_FULL);
  });

  app.use(notesReads({ reads, entrance, carriage: deps.carriage }));
  app.route('/', entrance.api());
  app.route('/', accountsApi({ entrance, limits, clock, log }));
  app.route('/', ssoApi({ entrance, sso, clock, log }));

  /** Why no job comes to be now: who may open them, and how many. */
  const noNewJob = (c: Context<Env>): Response | undefined => {
    const locked = entrance.refusal(c, 'open-job');
    if (locked) return locked;
    const now = performance.now();
    if (!opensOf.of(addressOf(c), now).take(now)) return refuse(c, 'too-fast', TOO_MANY_JOBS);
    return daily.jobs.of(blockOf(addressOf(c)), now).take(now)
      ? undefined
      : refuse(c, 'too-fast', DAY_OF_JOBS_FULL);
  };

  answer(app, ROUTES.openJob, async (c) => {
    const none = noNewJob(c);
    if (none) return none;
    const body = await read(c, ROUTES.openJob.body);
    return body.kind === 'refused'
      ? refuse(c, body.reason, body.text)
      : reply(c, await rooms.open(body.value), 201);
  });

  answer(app, ROUTES.bringJob, async (c) => {
    const none = noNewJob(c);
    if (none) return none;
    const address = addressOf(c);
    const taking = heavy.brought.take({ key: address, place: blockOf(address) }, async () => {
      const body = await read(c, Sent);
      return body.kind === 'refused'
        ? refuse(c, body.reason, body.text)
        : reply(c, await rooms.bring(body.value), 201);
    });
    return taking ?? refuse(c, 'too-fast', TOO_MUCH_BROUGHT);
  });

  answer(app, ROUTES.join, async (c) => {
    const now = performance.now();
    const body = await read(c, ROUTES.join.body, { code: { reason: 'bad-code', text: CODE_FORM } });
    const isScanned = body.kind === 'ok' && rooms.isScanned(body.value);
    if (!isScanned && !guesses.may(addressOf(c), now)) {
      c.header('Retry-After', '60');
      return refuse(c, 'too-fast', TOO_MANY_CODES);
    }
    const joined = body.kind === 'ok' ? await rooms.join(body.value.code, body.value) : body;
    const isWrong = joined.kind === 'refused' && joined.reason === 'bad-code';
    if (isWrong && !isScanned) guesses.wrong(addressOf(c), now);
    return reply(c, joined, 200);
  });

  answer(app, ROUTES.askPanel, async (c) => {
    const body = await read(c, ROUTES.askPanel.body, { word: { reason: 'bad-code', text: CALL_FORM } });
    if (body.kind === 'refused') return reply(c, body, 201);
    const asked = await rooms.asks.ask(body.value, blockOf(addressOf(c)));
    const isUnknown = asked.kind === 'refused' && asked.reason === 'bad-code';
    return (isUnknown && (await others.answerTo(c))) || reply(c, asked, 201);
  });

  answer(app, ROUTES.askAnswer, async (c) => {
    const key = tokenOf(c);
    const became = key === undefined ? undefined : await rooms.asks.answerTo(key);
    return became ? c.json(became) : ((await others.answerTo(c)) ?? refuse(c, 'bad-token', QUESTION_UNKNOWN));
  });

  for (const { ofJob, proof, give } of RECORDS) {
    answer(app, ofJob, async (c) => {
      const pass = await goodPass(c, store);
      if (pass instanceof Response) return pass;
      const { job } = pass;
      if (ofJob !== ROUTES.record && (await isPracticeJob(store, job)))
        return refuse(c, 'bad-message', PRACTICE_NOT_KEPT);
      const giving = heavy.records.take({ key: job, place: blockOf(addressOf(c)) }, async () => {
        // First, because the log may grow meanwhile, and every signed head must be one of what is given.
        const signed = await notary[proof](job);
        return give(c, store, job, signed);
      });
      return giving ?? refuse(c, 'too-fast', TOO_MUCH_TO_READ);
    });
  }

  for (const { route, make } of DESCRIPTIONS) answer(app, route, (c) => c.json(make(version)));

  answer(app, ROUTES.voice, async (c) => {
    const pass = await goodPass(c, store);
    if (pass instanceof Response) return pass;
    const text = c.req.query('text') ?? '';
    const rate = Number(c.req.query('rate') ?? 1);
    if (text.length > LONGEST_TEXT) return refuse(c, 'too-long', mostLettersText(LONGEST_TEXT));
    if (sayable(text) === '') return refuse(c, 'bad-message', NOTHING_TO_SAY);
    if (!(rate >= SLOWEST && rate <= FASTEST))
      return refuse(c, 'bad-message', badFieldText(['rate'], notBetweenText(SLOWEST, FASTEST)));
    if (!voice) return refuse(c, 'speech-unavailable', NO_VOICE);
    const now = performance.now();
    if (!voicesOf.of(pass.job, now).take(now)) return refuse(c, 'too-fast', TOO_MUCH_TO_SAY);
    try {
      const saying = heavy.spoken.take({ key: pass.job, place: blockOf(addressOf(c)) }, () =>
        voice.say(text, rate),
      );
      if (!saying) return refuse(c, 'too-fast', TOO_MUCH_TO_SAY);
      return c.body(await saying, 200, { 'Content-Type': 'audio/wav' });
    } catch (error) {
      if (!(error instanceof VoiceUnavailable)) throw error;
      return refuse(c, 'speech-unavailable', voiceFailedText(error.message));
    }
  });

  app.route(
    '/',
    reportApi({ store, clock, threads: reports, heavy, limits, log, fingerprint: notary.key.fingerprint }),
  );
  app.route('/', photoApi({ rooms, store, limits }));
  app.route('/', soundApi(store, clock));
  app.route(
    '/',
    siteApi({
      entrance,
      sites,
      summaries,
      notary,
      stamping,
      rooms,
      store,
      clock,
      limits,
      daily,
      heavy,
      opensOf,
      log,
    }),
  );

  app.route('/', figuresApi({ entrance, figures: deps.figures, heavy, clock }));

  app.route('/', readsApi({ entrance, store, heavy }));

  app.route('/', keysApi({ rooms, sites, store, seen, limits }));

  app.route('/', headsApi(notary));
  app.route('/', trustApi(certificate, deps.localName));

  app.route('/', healthApi(deps));

  app.all('*', (c) => refuse(c, 'bad-message', noAddressText(c.req.method, c.req.path), 404));
  app.onError(async (error, c) => {
    if (error instanceof HeldElsewhere) {
      const answer = await carry(c, error.url, deps.carriage).catch((err: unknown) =>
        log.warn({ err, url: error.url }, 'the process that has a job does not answer'),
      );
      return answer ?? refuse(c, 'store-failed', REQUEST_FAILED);
    }
    log.error({ err: error, path: c.req.path }, 'a request failed');
    return refuse(c, 'store-failed', REQUEST_FAILED);
  });
  return app;
}
