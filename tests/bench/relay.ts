import { type ChildProcess, fork, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import type { Saying, Seen, Task } from './relay/crews.ts';
import { InFolder } from './relay/in-folder.ts';
import { InPostgres } from './relay/in-postgres.ts';
import type { Place } from './relay/place.ts';
import { processorMs, processorOfTree, ranAndWaited, residentMb } from './relay/used.ts';

const WAYS = ['start', 'quiet', 'disk', 'processor'] as const;
/** `killed`: one of several processes is, in the middle, and its phones go to the others. */
type Way = (typeof WAYS)[number] | 'killed';

/**
 * The built server with many crews at once, beside a bare broadcast over the same sockets, from the same program of
 * phones on the same machine. Linux: processor time and memory are read in /proc.
 */
const options = new Command('bench:relay')
  .option(
    '--crews <list>',
    'each of a panel, an emitter and a watcher; several numbers, to run one after the other',
    (list) => list.split(',').map(Number),
    [1_000],
  )
  .option('--store <where>', 'file, or postgres: one of our own, started here', 'file')
  .option('--processes <n>', 'of the server, on one database', Number, 1)
  .option('--together', 'the phones of a crew come to the same process; without it, each to any of them')
  .option('--seconds <n>', 'how long the quiet run is', Number, 600)
  .option('--beside <n>', 'how long each run beside another program is, in seconds', Number, 60)
  .option('--every <n>', 'between two messages of a crew, in seconds', Number, 3)
  .option('--entries <n>', 'that each log holds at the beginning', Number, 250)
  .option('--pairs <n>', 'different ones that they align', Number, 250)
  .option('--jobs <n>', 'in the database: those of the crews, and others that are only there', Number, 0)
  .option(
    '--say <what>',
    'alignments of simulated pairs; numbers, over which the engine thinks longest; or remarks, which are only kept',
    'alignments',
  )
  .option('--no-bare', 'without the bare broadcast')
  .option('--no-pings', 'phones that send no pings, against the protocol: what the messages alone cost')
  .option('--rules-threads <n>', 'in how many threads of their own the rules work', Number, 0)
  .option('--bare-pings', 'the bare broadcast answers the same pings: the least that this traffic can cost')
  .option(
    '--ways <list>',
    `which runs: ${WAYS.join(', ')}; of several processes also killed`,
    (list) => list.split(',') as Way[],
    [...WAYS],
  )
  .option('--folder <path>', 'where the data folder is made; its disk is the one that is measured', tmpdir())
  .option('--late-turns', 'look for turns of the server that come late, and what it did meanwhile')
  .option('--profile', 'let the server write a .cpuprofile into this folder')
  .parse()
  .opts<{
    crews: number[];
    store: 'file' | 'postgres';
    processes: number;
    together?: true;
    seconds: number;
    beside: number;
    every: number;
    entries: number;
    pairs: number;
    jobs: number;
    say: Saying;
    pings: boolean;
    bare: boolean;
    rulesThreads: number;
    barePings?: true;
    ways: Way[];
    folder: string;
    lateTurns?: true;
    profile?: true;
  }>();

if (options.processes > 1 && options.store === 'file')
  throw new Error('several processes need --store postgres');
if (options.processes === 1 && options.ways.includes('killed'))
  throw new Error('with one process nobody takes the crews of one that is killed: --processes 2');

const HERE = fileURLToPath(new URL('./relay/', import.meta.url));
const root = mkdtempSync(join(options.folder, 'ladderline-relay-'));
// PostgreSQL runs as another user where we are root.
chmodSync(root, 0o711);
const keysFile = join(root, 'keys.json');
/** How long the server is looked at with nobody there, s. */
const ALONE_S = 20;
/** Between two looks at the memory, ms. */
const LOOK_MS = 5_000;

/** Room for what lives short, as every way to start the server gives it. */
const YOUNG = '--max-semi-space-size=64';

async function address(child: ChildProcess): Promise<string> {
  let out = '';
  for (;;) {
    const [text] = await once(child.stdout as NodeJS.ReadableStream, 'data');
    out += text;
    const url = /This machine +(\S+)/.exec(out)?.[1];
    if (url) return url;
  }
}

async function end(child: ChildProcess, signal: NodeJS.Signals = 'SIGTERM'): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
}

/** A server that answers. */
interface Running {
  readonly children: readonly ChildProcess[];
  readonly urls: readonly string[];
  /** What it needs beside its own processes, with those that it started. */
  readonly database: number | undefined;
}

/** A turn of the server that came late, and what its main thread did meanwhile, ms. */
interface LateTurn {
  readonly late: number;
  readonly ran: number;
  /** For a processor. */
  readonly waited: number;
  /** Garbage. */
  readonly collected: number;
}

/** Those of the measured time. */
let lateTurns: LateTurn[] = [];

/** Drives the phones against a server, and looks at its processes meanwhile. `half`: what is done in the middle. */
async function measure(
  { children, urls, database }: Running,
  seconds: number,
  bare: boolean,
  half: () => void = () => {},
) {
  const sumOf = (of: (pid: number) => number) => children.reduce((sum, { pid = 0 }) => sum + of(pid), 0);
  const usedSoFar = () =>
    [sumOf(processorMs), database === undefined ? 0 : processorOfTree(database)] as const;
  const task: Task = {
    urls,
    together: options.together === true,
    keys: keysFile,
    bare,
    seconds,
    say: options.say,
    pings: options.pings && (!bare || options.barePings === true),
    everySeconds: options.every,
  };
  const phones = fork(join(HERE, 'crews.ts'), [JSON.stringify(task)]);
  const programs = {
    ...Object.fromEntries(children.map(({ pid = 0 }, n) => [`process ${n + 1}`, pid])),
    ...(database !== undefined && { database }),
    phones: phones.pid ?? 0,
  };
  const waits = () => Object.entries(programs).map(([name, pid]) => [name, ranAndWaited(pid)] as const);
  let waitsBefore = waits();
  let waited = waitsBefore;
  const memory: number[] = [];
  let looking: NodeJS.Timeout | undefined;
  let before = usedSoFar();
  let used = before;
  const seen = await new Promise<Seen>((resolve, reject) => {
    phones.on('exit', (code) => reject(new Error(`the phones ended (${code})`)));
    phones.on('message', (message: string | Seen) => {
      if (typeof message === 'object') return resolve(message);
      if (message === 'begin') {
        before = usedSoFar();
        waitsBefore = waits();
        lateTurns = [];
        global.setTimeout(half, seconds * 500);
        memory.push(sumOf(residentMb));
        looking = setInterval(() => {
          memory.push(sumOf(residentMb));
          // What ends until the next look counts as it was now.
          waits();
        }, LOOK_MS);
      }
      if (message === 'end') {
        clearInterval(looking);
        used = usedSoFar();
        waited = waits();
        memory.push(sumOf(residentMb));
      }
    });
  });
  const [ours, databases] = [used[0] - before[0], used[1] - before[1]];
  return {
    ...seen,
    perMessage: ours / seen.sent,
    perMessageInDatabase: databases / seen.sent,
    ofCore: (ours + databases) / (seconds * 10),
    waits: waited.map(([name, sums], i) => {
      const [, sumsBefore] = waitsBefore[i] as (typeof waited)[number];
      return `${name} ${sums.map((sum, n) => Math.round(sum - (sumsBefore[n] ?? 0))).join(' / ')}`;
    }),
    memory,
  };
}
type Measured = Awaited<ReturnType<typeof measure>>;

async function beside<T>(way: Exclude<Way, 'start'>, work: () => Promise<T>): Promise<T> {
  if (way === 'quiet' || way === 'killed') return work();
  const other = fork(join(HERE, 'busy.ts'), [way, root]);
  try {
    return await work();
  } finally {
    await end(other, 'SIGKILL');
  }
}

async function bareRun(seconds: number): Promise<Measured> {
  const child = fork(join(HERE, 'bare.ts'), [], { stdio: ['ignore', 'pipe', 'inherit', 'ipc'] });
  const running = { children: [child], urls: [await address(child)], database: undefined };
  const measured = await measure(running, seconds, true);
  await end(child);
  return measured;
}

async function startProcess({ args }: Place): Promise<{ child: ChildProcess; url: string }> {
  const profile = options.profile ? ['--cpu-prof', `--cpu-prof-dir=${process.cwd()}`] : [];
  const looksForLate = options.lateTurns ? ['--import', join(HERE, 'late-turns.mjs')] : [];
  const began = performance.now();
  const child = spawn(
    process.execPath,
    [
      ...[YOUNG, ...profile, ...looksForLate, 'dist/server/main.js'],
      ...['--port', '0', '--host', '127.0.0.1', '--tls', 'off', ...args],
    ],
    {
      env: {
        ...process.env,
        LADDERLINE_SPEECH: 'off',
        LADDERLINE_RULES_THREADS: String(options.rulesThreads),
      },
      stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
    },
  );
  child.on('message', (turn: LateTurn) => lateTurns.push(turn));
  process.once('exit', () => child.kill('SIGKILL'));
  const url = await address(child);
  console.log(`The server was ready after ${Math.round(performance.now() - began)} ms.`);
  return { child, url };
}

/** The first one makes the tables and the keys, so one after the other. */
async function startServer(place: Place): Promise<Running> {
  const started: Awaited<ReturnType<typeof startProcess>>[] = [];
  for (let n = 0; n < options.processes; n++) started.push(await startProcess(place));
  return {
    children: started.map(({ child }) => child),
    urls: started.map(({ url }) => url),
    database: place.database,
  };
}

/** What it does with nobody there: it checks the logs. */
async function alone(place: Place): Promise<void> {
  const { child } = await startProcess(place);
  const { pid = 0 } = child;
  const before = processorMs(pid);
  await setTimeout(ALONE_S * 1000);
  const used = processorMs(pid) - before;
  console.log(`start: with nobody there it used ${(used / (ALONE_S * 10)).toFixed(1)} % of a core.`);
  await end(child);
}

async function serverRun(place: Place, seconds: number, way: Way) {
  const running = await startServer(place);
  const [first] = running.children;
  const half = () => void (way === 'killed' && first?.kill('SIGKILL'));
  const measured = await measure(running, seconds, false, half);
  // Killed, so that only what was stored before can be there.
  for (const child of running.children) await end(child, options.profile ? 'SIGTERM' : 'SIGKILL');
  return { ...measured, misplaced: await place.misplaced(measured.places) };
}

const ms = (value: number): string => value.toFixed(value < 10 ? 2 : 0);

function show(what: string, m: Measured & { misplaced?: number }): Record<string, string | number> {
  const timed = (of: 'relayed' | 'acknowledged') => [m[of].p50, m[of].p99, m[of].max].map(ms).join(' / ');
  return {
    what,
    messages: m.sent,
    'relayed p50 / p99 / max, ms': timed('relayed'),
    'acknowledged, ms': m.acknowledged.p50 > 0 ? timed('acknowledged') : '–',
    'processor ms a message': ms(m.perMessage),
    'of the database': m.perMessageInDatabase > 0 ? ms(m.perMessageInDatabase) : '–',
    'of a core, %': Math.round(m.ofCore),
    'memory first / most / last, MB': [m.memory[0], Math.max(...m.memory), m.memory.at(-1)].join(' / '),
    'lost, doubled, refused, lines closed': [m.lost, m.doubled, m.refused, closedLines(m)].join(', '),
    'not where acknowledged': m.misplaced ?? '–',
  };
}

const closedLines = ({ closed }: Seen): number =>
  Object.values(closed).reduce((sum, lines) => sum + lines, 0);

function showLate(run: string, waits: readonly string[]): void {
  console.log(`${run}: on a processor / waiting for one, ms: ${waits.join(', ')}.`);
  const longest = [...lateTurns].sort((a, b) => b.late - a.late).slice(0, 5);
  const told = ({ late, ran, waited, collected }: LateTurn) =>
    `${ms(late)} late (${ms(ran)} on a processor, of it ${ms(collected)} collecting garbage, and ${ms(waited)} waiting for one)`;
  console.log(
    `${run}: ${lateTurns.length} turns came late. The latest, ms: ${longest.map(told).join('; ') || 'none'}.`,
  );
}

const placed = async (): Promise<Place> => {
  const data = join(root, 'data');
  return options.store === 'file' ? new InFolder(data) : InPostgres.start(data, root);
};

let place: Place | undefined;
try {
  console.log(
    `${options.crews.join(', ')} crews, a message each ${options.every} s; ${options.processes} processes, store ${options.store}; ${cpus().length} cores; Node ${process.version}.`,
  );
  place = await placed();
  // Each run has jobs of its own, whose logs are as long as they were laid down.
  const jobs = Math.max(
    options.jobs,
    options.crews.reduce((sum, crews) => sum + crews, 0),
  );
  const laying = performance.now();
  const keys = await place.lay(jobs, options.entries, options.pairs);
  console.log(
    `${jobs} logs of ${options.entries} entries, of ${Math.min(options.pairs, jobs)} pairs, laid down in ${Math.round((performance.now() - laying) / 1000)} s.`,
  );
  let wrong = 0;
  if (options.ways.includes('start')) await alone(place);
  for (const crews of options.crews) {
    const own = keys.splice(0, crews);
    for (const way of options.ways) {
      if (way === 'start') continue;
      writeFileSync(keysFile, JSON.stringify(own));
      const run = `${crews} crews, ${way}`;
      const bare = options.bare
        ? await beside(way, () => bareRun(Math.min(options.seconds, options.beside)))
        : undefined;
      if (bare) console.log(show(`${run}: bare`, bare));
      const seconds = way === 'quiet' ? options.seconds : options.beside;
      const on = place;
      const server = await beside(way, () => serverRun(on, seconds, way));
      console.log(show(`${run}: server`, server));
      if (options.lateTurns) showLate(run, server.waits);
      if (closedLines(server) > 0) console.log(`${run}: lines were closed with`, server.closed);
      // Who comes again after a kill must miss nothing; that lines close, and that some is refused for a moment, belongs to it.
      wrong += server.lost + server.doubled + server.misplaced;
      if (way !== 'killed') wrong += server.refused + closedLines(server);
      if (bare)
        console.log(
          `${run}: p99 is ${(server.relayed.p99 / bare.relayed.p99).toFixed(1)} times the bare one.`,
        );
      console.log(`${run}: memory each ${LOOK_MS / 1000} s, MB: ${server.memory.join(' ')}`);
    }
  }
  console.log(
    `Load average at the end: ${loadavg()
      .map((load) => load.toFixed(1))
      .join(', ')}.`,
  );
  if (wrong > 0) process.exitCode = 1;
} finally {
  await place?.remove();
  rmSync(root, { recursive: true });
}
