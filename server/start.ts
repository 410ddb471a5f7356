import { hostname } from 'node:os';
import { getRequestListener } from '@hono/node-server';
import { Hono } from 'hono';
import { type Logger, pino } from 'pino';
import type { TreeHead } from '../src/log/signed-head.ts';
import type { Entry } from '../src/model/entry.ts';
import type { Sso } from './accounts/sso.ts';
import { api } from './api.ts';
import { watchDisk } from './disk-watch.ts';
import { NameRetention } from './forget/retention.ts';
import { DailyAllowances, TokenAllowances } from './guard/allowance.ts';
import { Callers } from './guard/callers.ts';
import { Carriage } from './guard/carriage.ts';
import { blockOf } from './guard/guesses.ts';
import { LastSeen } from './guard/last-seen.ts';
import { LIMITS, type Limits } from './guard/limits.ts';
import { SilentCallers } from './guard/silent.ts';
import { HeavyWork } from './guard/turns.ts';
import { Entrance } from './http/entrance.ts';
import { Front, SERVER_SETTINGS } from './http/front.ts';
import type { Env } from './http/http.ts';
import { pages } from './http/pages.ts';
import { authorityFile } from './http/trust.ts';
import { UnderWay } from './http/under-way.ts';
import { Rooms } from './jobs/rooms.ts';
import { RulesInThreads } from './jobs/rules-threads.ts';
import { Sockets } from './jobs/sockets.ts';
import { addLevels } from './levels.ts';
import { isLoopback, ownNames } from './network/addresses.ts';
import type { KeyPair } from './network/authority.ts';
import { namesIn } from './network/certificate.ts';
import { listen } from './network/listen.ts';
import { SigningKey } from './notary/ed25519.ts';
import { Notary, type Publish } from './notary/notary.ts';
import { Retention } from './photos/retention.ts';
import { type Clock, systemClock } from './process/clock.ts';
import { CLIENT_FOLDER, DEFAULT_MODEL_FOLDER, VERSION } from './process/program.ts';
import { StartFailure } from './process/start-failure.ts';
import { within } from './process/within.ts';
import { Reads } from './reads/reads.ts';
import { ReadRetention } from './reads/retention.ts';
import { Summaries } from './record/summaries.ts';
import { ReportThreads } from './report/api.ts';
import { Board } from './site/board.ts';
import { Checks } from './site/checks.ts';
import { FigureKeeper } from './site/figure-keeper.ts';
import { Sites } from './site/sites.ts';
import { keepDeleting } from './sounds/deleting.ts';
import { modelFiles } from './speech/files.ts';
import { type SpeechEngine, SpeechService } from './speech/service.ts';
import type { AskForStamp } from './stamps/ask.ts';
import { Stamper } from './stamps/stamper.ts';
import type { AccountsFile } from './store/accounts.ts';
import type { FigureStore } from './store/figures.ts';
import { ENDLESS, type FreeSpace } from './store/free-space.ts';
import type { Leases } from './store/leases.ts';
import type { PassphraseCheck } from './store/passphrase.ts';
import type { Store } from './store/store.ts';
import type { Exporting } from './telemetry/exporting.ts';
import { Telemetry } from './telemetry/telemetry.ts';
import type { VoiceMaker } from './voice/voice.ts';

export interface ServerOptions {
  /** Closed with the server. */
  store: Store;
  /** Where this server is several processes on one store. Closed with the server. */
  leases?: Leases;
  /** Where the figures over all sites are kept; without it, there are none. */
  figures?: FigureStore;
  /** Under which the other processes reach this one; without it, its port on this machine. */
  peerUrl?: string | undefined;
  /** 0: any free port. */
  port?: number;
  host?: string;
  /** Without `authority` phones trust it, and plain HTTP leads to https, but on this machine. */
  tls?: KeyPair;
  /** Names under which people reach this server, beside those in `tls`. */
  names?: readonly string[];
  /** One by which phones find it now, by multicast DNS. */
  localName?: () => string | undefined;
  /** Which proxies are believed about where a request comes from; none, when left out. */
  callers?: Callers;
  /** What who opens sites and jobs must know; without it, anybody may. */
  passphrase?: PassphraseCheck;
  /** Who has an account, where the owner asks for one; without it, nobody is asked. */
  accounts?: AccountsFile;
  /** Where people of the firm sign in with its own accounts; without it, nobody does. */
  sso?: Sso;
  /** In how many threads of their own the rules work; by itself in none. */
  rulesThreads?: number;
  /** Closed with the server. Without it, people type. */
  transcriber?: SpeechEngine;
  /** Closed with the server. Without it, phones without their own voice stay silent. */
  voice?: VoiceMaker;
  clock?: Clock;
  limits?: Partial<Limits>;
  clientFolder?: string;
  /** The folder of the speech model that phones may run themselves. */
  modelFolder?: string;
  /** With which the heads of logs are signed; without it, one that nobody knows and that ends with the server. */
  signingKey?: SigningKey;
  /** Where signed heads are sent. */
  publish?: readonly Publish[];
  /** Who vouches for the time of signed heads; without it, nobody. */
  stamps?: StampsFrom;
  log?: Logger;
  /** Room for the store; without it, there is always enough. */
  disk?: FreeSpace;
  /** Without it, pictures of photos are kept for ever. */
  keepPicturesDays?: number;
  /** So long after the last entry of a record its names are kept; without it, for ever. */
  keepNamesDays?: number;
  /** So long it is kept who read what; without it, for ever. */
  keepReadsDays?: number;
  /** Who sends it may read the metrics; without it, nobody may. */
  metricsToken?: string;
  /** A collector that metrics and traces are sent to; without it, nothing of that is loaded. */
  otlp?: string;
}

export interface StampsFrom {
  ask: AskForStamp;
  /** For people: the host. */
  from: string;
  everyMs: number;
}

export interface RunningServer {
  port: number;
  /** The address on this machine, without a slash at the end. */
  url: string;
  /** Of the tree over all signed heads, as of now. */
  treeHead(): TreeHead;
  /** Another certificate, for connections from now on. */
  useCertificate(pair: KeyPair): void;
  /** Tells the phones, takes nothing new, answers and stores what it has taken, closes all connections, and ends. */
  close(): Promise<void>;
}

/** Where a server that listens on `host` is reached from its own machine. */
const loopbackFor = (host: string): string =>
  host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host.includes(':') ? `[${host}]` : host;

/** Loaded only for who has a collector. */
async function telemetryTo(collector: string, telemetry: Telemetry, instance: string): Promise<Exporting> {
  const { exportTo } = await import('./telemetry/otlp.ts').catch((cause: unknown) => {
    throw new StartFailure(
      `--otlp needs the packages of OpenTelemetry, which are not installed (${(cause as Error).message}): npm ci installs them, without --omit=optional.`,
    );
  });
  return exportTo(collector, telemetry, { version: VERSION, instance });
}

/** Starts the whole server. Rejects with `StartFailure` when it cannot listen. */
export async function startServer(options: ServerOptions): Promise<RunningServer> {
  const {
    store,
    leases,
    transcriber,
    voice,
    clock = systemClock,
    host = '127.0.0.1',
    disk = ENDLESS,
  } = options;
  const log = options.log ?? pino({ enabled: false });
  const limits = { ...LIMITS, ...options.limits };
  const telemetry = new Telemetry(log);
  let stopped: Promise<void> | undefined;
  const speech = new SpeechService(transcriber, limits, log);
  const { signingKey: key = SigningKey.make(), publish = [] } = options;
  const { stamps } = options;
  const stamper = stamps && new Stamper({ store, clock, log, telemetry, ...stamps });
  const notary = new Notary({ store, key, clock, log, publish, stamper });
  const onStored = (entries: readonly Entry[]) => {
    const [first] = entries;
    if (!first) return;
    notary.seen(entries);
    telemetry.stored(first.job, first.seq, entries.length);
  };
  const { rulesThreads = 0 } = options;
  const rules = rulesThreads > 0 ? new RulesInThreads(rulesThreads) : undefined;
  const rooms = new Rooms(
    { store, leases, clock, log, telemetry, rules, onStored, graceMs: limits.deadAfterMs },
    limits,
    key.derived('join codes'),
  );
  const summaries = new Summaries(store, log, telemetry);
  const sites = new Sites({ store, leases, clock, telemetry, onStored }, rooms, summaries);
  // So that the board has little left to work out, even with many pairs.
  rooms.onPutAway = (job) => void summaries.prepare(job);
  const checks = new Checks({ store, summaries, sites, rooms, log, limits });
  void checks.begin();
  const { figures } = options;
  const keeper = figures && new FigureKeeper({ figures, sites, board: new Board(summaries, rooms), log });
  void keeper?.begin();
  const stopDeleting = keepDeleting(store, clock, log);
  const { keepPicturesDays: days } = options;
  const retention = days === undefined ? undefined : new Retention({ store, rooms, clock, log, days });
  void retention?.begin();
  const { keepNamesDays } = options;
  const names =
    keepNamesDays === undefined
      ? undefined
      : new NameRetention({ store, rooms, clock, log, days: keepNamesDays });
  void names?.begin();
  const { keepReadsDays } = options;
  const readsEnd =
    keepReadsDays === undefined ? undefined : new ReadRetention({ store, clock, log, days: keepReadsDays });
  void readsEnd?.begin();
  const reads = new Reads({ store, clock, log });
  speech.onChange = () => rooms.tellAll({ t: 'speech', speech: speech.state });
  let { tls } = options;
  const own = new Set([...ownNames(), ...(options.names ?? [])].map((name) => name.toLowerCase()));
  const callers = options.callers ?? new Callers();
  const carriage =
    leases && new Carriage(Buffer.from(key.derived('between processes')).toString('base64url'));
  callers.carriage = carriage;
  const front = new Front({
    isOurs: (name) => own.has(name) || (tls !== undefined && namesIn(tls)(name)),
    isTrusted: () => tls !== undefined && tls.authority === undefined,
    isThisMachine: isLoopback,
    onMisdirected: (request, status) =>
      telemetry.misdirected(blockOf(callers.addressOf(request)), status, request.headers.host),
  });
  const seen = new LastSeen();
  const allowances = new TokenAllowances(limits);
  const heavy = new HeavyWork(limits, (...done) => telemetry.worked(...done));
  const reports = new ReportThreads();
  const daily = new DailyAllowances(limits);
  const silent = new SilentCallers(limits.maxSilentPerBlock);
  const { passphrase, accounts, sso } = options;
  const entrance = new Entrance(limits, passphrase, accounts, sso?.settings.name);
  const sockets = new Sockets(
    { allowances, daily, heavy, rooms, store, seen, reads, speech, clock, limits, log, telemetry },
    front,
    callers,
    entrance,
  );
  addLevels(telemetry.metrics, { rooms, sockets, heavy, speech, disk });

  const app = new Hono<Env>();
  app.use(async (c, next) => {
    c.set('address', callers.addressOf(c.env.incoming));
    c.set('saw', (token) => seen.saw(token, clock.now()));
    await next();
  });
  const certificate = () => tls;
  app.route('/', authorityFile(certificate));
  app.route(
    '/api',
    api({
      rooms,
      sites,
      summaries,
      notary,
      stamping: () => stamper?.state,
      store,
      seen,
      reads,
      speech,
      voice,
      limits,
      daily,
      heavy,
      reports,
      clock,
      log,
      telemetry,
      disk,
      isStopping: () => stopped !== undefined,
      metricsToken: options.metricsToken,
      version: VERSION,
      certificate,
      localName: options.localName,
      leases,
      carriage,
      figures,
      entrance,
      sso,
    }),
  );
  app.route('/speech-model', modelFiles(options.modelFolder ?? DEFAULT_MODEL_FOLDER));
  app.mount('/', pages(options.clientFolder ?? CLIENT_FOLDER).fetch);

  const underWay = new UnderWay();
  const listener = await listen(
    host,
    options.port ?? 0,
    tls,
    {
      ...SERVER_SETTINGS,
      headersTimeout: limits.headersWithinMs,
      requestTimeout: limits.requestWithinMs,
      connectionsCheckingInterval: limits.headersWithinMs / 4,
    },
    underWay.counts(front.guards(getRequestListener(app.fetch))),
    (server) => {
      front.answerBroken(server);
      sockets.attach(server);
    },
    // All callers of a proxy come from its address.
    (socket) => {
      const isAdmitted = callers.isProxy(socket.remoteAddress) || silent.admits(socket);
      if (!isAdmitted) telemetry.refused('connection', 'too-fast', blockOf(socket.remoteAddress ?? ''));
      return isAdmitted;
    },
  ).catch(async (error) => {
    await sockets.close();
    await rooms.close();
    throw error;
  });

  await leases?.begin(options.peerUrl ?? `http://${loopbackFor(host)}:${listener.port}`);
  const exporting =
    options.otlp === undefined
      ? undefined
      : await telemetryTo(options.otlp, telemetry, `${hostname()}:${listener.port}`);
  const stopWatching = watchDisk(disk, log);
  log.info({ port: listener.port, host, version: VERSION, tls: tls !== undefined }, 'the server has started');

  return {
    port: listener.port,
    url: `http://localhost:${listener.port}`,
    treeHead: () => notary.treeHead(),
    useCertificate(pair) {
      tls = pair;
      listener.useCertificate(pair);
    },
    close() {
      stopped ??= stop();
      return stopped;
    },
  };

  async function stop(): Promise<void> {
    log.info({ liveJobs: rooms.count }, 'the server is stopping');
    checks.close();
    keeper?.close();
    retention?.close();
    names?.close();
    readsEnd?.close();
    stopWatching();
    stopDeleting();
    const taken = Promise.all([sockets.finish(), underWay.done()]);
    if (!(await within(limits.finishWithinMs, taken)))
      log.warn('not all that was taken could be answered in time; phones send it again');
    await rooms.close();
    await sockets.close();
    await listener.close();
    speech.close();
    await reports.close();
    await transcriber?.close();
    await voice?.close();
    await notary.close();
    await store.close();
    await exporting?.close();
    log.info('the server has stopped');
  }
}
