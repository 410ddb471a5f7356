import { type ChildProcess, fork, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Saying, Seen, Task } from './relay/crews.ts';
import { type CrewKeys, layJobs } from './relay/logs.ts';

const WAYS = ['start', 'quiet', 'disk', 'processor'] as const;
type Way = (typeof WAYS)[number];

/**
 * The built server with many crews at once, beside a bare broadcast over the same sockets, from the same program of
 * phones on the same machine. Linux: processor time and memory are read in /proc.
 */
const options = new Command('bench:relay')
  .option('--crews <n>', 'each of a panel, an emitter and a watcher', Number, 1_000)
  .option('--seconds <n>', 'how long the quiet run is', Number, 600)
  .option('--beside <n>', 'how long each run beside another program is, in seconds', Number, 60)
  .option('--every <n>', 'between two messages of a crew, in seconds', Number, 3)
  .option('--entries <n>', 'that each log holds at the beginning', Number, 250)
  .option('--jobs <n>', 'in the database: those of the crews, and others that are only there', Number, 0)
  .option(
    '--say <what>',
    'alignments of simulated pairs; numbers, over which the engine thinks longest; or remarks, which are only kept',
    'alignments',
  )
  .option('--no-pings', 'phones that send no pings, against the protocol: what the messages alone cost')
  .option('--rules-threads <n>', 'in how many threads of their own the rules work', Number, 0)
  .option('--bare-pings', 'the bare broadcast answers the same pings: the least that this traffic can cost')
  .option('--ways <list>', `which runs: ${WAYS.join(', ')}`, (list) => list.split(',') as Way[], [...WAYS])
  .option('--folder <path>', 'where the data folder is made; its disk is the one that is measured', tmpdir())
  .option('--profile', 'let the server write a .cpuprofile into this folder')
  .parse()
  .opts<{
    crews: number;
    seconds: number;
    beside: number;
    every: number;
    entries: number;
    jobs: number;
    say: Saying;
    pings: boolean;
    rulesThreads: number;
    barePings?: true;
    ways: Way[];
    folder: string;
    profile?: true;
  }>();

const HERE = fileURLToPath(new URL('./relay/', import.meta.url));
const root = mkdtempSync(join(options.folder, 'ladderline-relay-'));
const keysFile = join(root, 'keys.json');
const HZ = 100;
/** How long the server is looked at with nobody there, s. */
const ALONE_S = 20;
/** Between two looks at the memory, ms. */
const LOOK_MS = 5_000;

/** Room for what lives short, as every way to start the server gives it. */
const YOUNG = '--max-semi-space-size=64';

/** Processor time that a process used so far, of all its threads, ms. */
function processorMs(pid: number): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return ((Number(fields[11]) + Number(fields[12])) * 1000) / HZ;
}

/** Memory of a process that is really there, MB. */
function residentMb(pid: number): number {
  return Math.round(Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024);
}

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
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
}

/** Drives the phones against a server, and looks at its process meanwhile. */
async function measure(child: ChildProcess, url: string, seconds: number, bare: boolean) {
  const { pid = 0 } = child;
  const task: Task = {
    url,
    keys: keysFile,
    bare,
    crews: options.crews,
    seconds,
    say: options.say,
    pings: options.pings && (!bare || options.barePings === true),
    everySeconds: options.every,
  };
  const phones = fork(join(HERE, 'crews.ts'), [JSON.stringify(task)]);
  const memory: number[] = [];
  let looking: NodeJS.Timeout | undefined;
  let before = 0;
  let used = 0;
  const seen = await new Promise<Seen>((resolve, reject) => {
    phones.on('exit', (code) => reject(new Error(`the phones ended (${code})`)));
    phones.on('message', (message: string | Seen) => {
      if (typeof message === 'object') return resolve(message);
      if (message === 'begin') {
        before = processorMs(pid);
        memory.push(residentMb(pid));
        looking = setInterval(() => memory.push(residentMb(pid)), LOOK_MS);
      }
      if (message === 'end') {
        clearInterval(looking);
        used = processorMs(pid) - before;
        memory.push(residentMb(pid));
      }
    });
  });
  return { ...seen, perMessage: used / seen.sent, ofCore: used / (seconds * 10), memory };
}
type Measured = Awaited<ReturnType<typeof measure>>;

async function beside<T>(way: Exclude<Way, 'start'>, work: () => Promise<T>): Promise<T> {
  if (way === 'quiet') return work();
  const other = fork(join(HERE, 'busy.ts'), [way, root]);
  try {
    return await work();
  } finally {
    await end(other, 'SIGKILL');
  }
}

async function bareRun(seconds: number): Promise<Measured> {
  const child = fork(join(HERE, 'bare.ts'), [], { stdio: ['ignore', 'pipe', 'inherit', 'ipc'] });
  const measured = await measure(child, await address(child), seconds, true);
  await end(child);
  return measured;
}

/** How many acknowledged messages are not where they were acknowledged, once the server is killed. */
async function misplaced(data: string, { places }: Measured): Promise<number> {
  const store = openDataFolder(data);
  let wrong = 0;
  for (const [job, id, seq] of places) if ((await store.seqOf(job, id)) !== seq) wrong += 1;
  await store.close();
  return wrong;
}

async function startServer(data: string): Promise<{ child: ChildProcess; url: string }> {
  const profile = options.profile ? ['--cpu-prof', `--cpu-prof-dir=${process.cwd()}`] : [];
  const began = performance.now();
  const child = spawn(
    process.execPath,
    [
      YOUNG,
      ...profile,
      'dist/server/main.js',
      '--port',
      '0',
      '--host',
      '127.0.0.1',
      '--tls',
      'off',
      '--data',
      data,
    ],
    {
      env: {
        ...process.env,
        LADDERLINE_SPEECH: 'off',
        LADDERLINE_RULES_THREADS: String(options.rulesThreads),
      },
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  process.once('exit', () => child.kill('SIGKILL'));
  const url = await address(child);
  console.log(`The server was ready after ${Math.round(performance.now() - began)} ms.`);
  return { child, url };
}

/** What it does with nobody there: it checks the logs. */
async function alone(data: string): Promise<void> {
  const { child } = await startServer(data);
  const { pid = 0 } = child;
  const before = processorMs(pid);
  await setTimeout(ALONE_S * 1000);
  const used = processorMs(pid) - before;
  console.log(`start: with nobody there it used ${(used / (ALONE_S * 10)).toFixed(1)} % of a core.`);
  await end(child);
}

async function serverRun(data: string, seconds: number) {
  const { child, url } = await startServer(data);
  const measured = await measure(child, url, seconds, false);
  // Killed, so that only what was stored before can be there.
  await end(child, options.profile ? 'SIGTERM' : 'SIGKILL');
  return { ...measured, misplaced: await misplaced(data, measured) };
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
    'of a core, %': Math.round(m.ofCore),
    'memory first / most / last, MB': [m.memory[0], Math.max(...m.memory), m.memory.at(-1)].join(' / '),
    'lost, doubled, refused, lines closed': [m.lost, m.doubled, m.refused, m.closed].join(', '),
    'not where acknowledged': m.misplaced ?? '–',
  };
}

try {
  console.log(
    `${options.crews} crews, a message each ${options.every} s; ${cpus().length} cores; Node ${process.version}.`,
  );
  const data = join(root, 'data');
  mkdirSync(data);
  const jobs = Math.max(options.jobs, options.crews);
  const laying = performance.now();
  const keys: CrewKeys[] = await layJobs(data, jobs, options.entries);
  console.log(
    `${jobs} logs of ${options.entries} entries laid down in ${Math.round((performance.now() - laying) / 1000)} s.`,
  );
  writeFileSync(keysFile, JSON.stringify(keys.slice(0, options.crews)));
  let wrong = 0;
  for (const way of options.ways) {
    if (way === 'start') {
      await alone(data);
      continue;
    }
    const bare = await beside(way, () => bareRun(Math.min(options.seconds, options.beside)));
    console.log(show(`${way}: bare`, bare));
    const seconds = way === 'quiet' ? options.seconds : options.beside;
    const server = await beside(way, () => serverRun(data, seconds));
    console.log(show(`${way}: server`, server));
    wrong += server.lost + server.doubled + server.refused + server.closed + server.misplaced;
    console.log(`${way}: p99 is ${(server.relayed.p99 / bare.relayed.p99).toFixed(1)} times the bare one.`);
    console.log(`${way}: memory each ${LOOK_MS / 1000} s, MB: ${server.memory.join(' ')}`);
  }
  console.log(
    `Load average at the end: ${loadavg()
      .map((load) => load.toFixed(1))
      .join(', ')}.`,
  );
  if (wrong > 0) process.exitCode = 1;
} finally {
  rmSync(root, { recursive: true });
}
