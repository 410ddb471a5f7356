import { readFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { nanoid } from 'nanoid';
import { WebSocket } from 'ws';
import { PROTOCOL_VERSION, SOCKET_PATH } from '../../../src/protocol/socket.ts';
import type { CrewKeys } from './logs.ts';

/** Readings and "done", which the engine advises on; or remarks, which are only kept and passed on. */
export type Saying = 'readings' | 'remarks';

/** What the program of the phones is told to do, as JSON in its first argument. */
export interface Task {
  url: string;
  /** A file of `CrewKeys[]`. */
  keys: string;
  /** Without our protocol: what is sent is what comes. */
  bare: boolean;
  say: Saying;
  crews: number;
  seconds: number;
  /** Between two messages of one crew. */
  everySeconds: number;
}

/** Percentiles in ms. */
export interface Spread {
  p50: number;
  p99: number;
  max: number;
}

/** What the phones saw. */
export interface Seen {
  sent: number;
  /** From sending to the arrival at each of the other two phones. */
  relayed: Spread;
  /** From sending to the acknowledgement. */
  acknowledged: Spread;
  /** Arrivals that are missing at the end, and those that came more than once. */
  lost: number;
  doubled: number;
  refused: number;
  /** Lines that ended while phones were on them. */
  closed: number;
  /** Messages with the place they were acknowledged at. */
  places: [job: string, id: string, seq: number][];
}

/** Phones that come in at the same time: more are refused before they have said hello. */
const AT_ONCE = 32;
/** After the last message, for what is still under way, ms. */
const LAST_WAIT_MS = 20_000;
/** Rounds of the crews before anything counts: until then the programs are compiled. */
const WARM_ROUNDS = 3;
const ROLES = ['panel', 'emitter', 'watcher'] as const;

interface Message {
  readonly at: number;
  readonly from: WebSocket;
  /** Whether its times count. */
  readonly counts: boolean;
  readonly arrivedAt: Set<WebSocket>;
  acknowledged: boolean;
}

const task: Task = JSON.parse(process.argv[2] ?? '');
const crews = (JSON.parse(readFileSync(task.keys, 'utf8')) as CrewKeys[]).slice(0, task.crews);
const sentIds = new Set<string>();
/** Not yet acknowledged, or not yet with all three. */
const underWay = new Map<string, Message>();
const relayed: number[] = [];
const acknowledged: number[] = [];
const seen = { sent: 0, doubled: 0, refused: 0, closed: 0 };
const places: Seen['places'] = [];

function arrived(id: string, socket: WebSocket): void {
  const message = underWay.get(id);
  if (!message || message.arrivedAt.has(socket)) {
    seen.doubled += 1;
    return;
  }
  message.arrivedAt.add(socket);
  if (message.counts && socket !== message.from) relayed.push(performance.now() - message.at);
  settle(id, message);
}

function settle(id: string, message: Message): void {
  if (message.arrivedAt.size === ROLES.length && (message.acknowledged || task.bare)) underWay.delete(id);
}

function take(job: string, socket: WebSocket, text: string): void {
  const frame = JSON.parse(text);
  if (task.bare) {
    arrived(frame.id, socket);
  } else if (frame.t === 'entries') {
    for (const { ref } of frame.entries) if (sentIds.has(ref)) arrived(ref, socket);
  } else if (frame.t === 'ack') {
    acknowledge(job, frame.id, frame.seq);
  } else if (frame.t === 'refused') {
    if (seen.refused === 0) console.error(`refused: ${text}`);
    seen.refused += 1;
  }
}

function acknowledge(job: string, id: string, seq: number): void {
  const message = underWay.get(id);
  if (!message || message.acknowledged) {
    seen.doubled += 1;
    return;
  }
  message.acknowledged = true;
  if (message.counts) acknowledged.push(performance.now() - message.at);
  places.push([job, id, seq]);
  settle(id, message);
}

/** Resolves when all history has come. */
function comeIn({ job, ...keys }: CrewKeys, role: (typeof ROLES)[number]): Promise<WebSocket> {
  const path = task.bare ? `/${job}` : SOCKET_PATH;
  const socket = new WebSocket(task.url.replace(/^http/, 'ws') + path, { perMessageDeflate: false });
  return new Promise((resolve, reject) => {
    socket.once('error', reject);
    socket.once('close', (code) => {
      seen.closed += 1;
      reject(new Error(`the line was closed (${code})`));
    });
    socket.once('open', () => {
      if (task.bare) resolve(socket);
      else socket.send(JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token: keys[role], after: -1 }));
    });
    let isIn = task.bare;
    socket.on('message', (data) => {
      const text = String(data);
      if (isIn) return take(job, socket, text);
      if (!text.startsWith('{"t":"caught-up"')) return;
      isIn = true;
      resolve(socket);
    });
  });
}

interface Crew {
  readonly panel: WebSocket;
  readonly emitter: WebSocket;
  turn: number;
}

/** The panel says what the meter shows, the emitter that a turn is done: in turn, as in an alignment. */
function speak(crew: Crew, counts: boolean): void {
  const isPanel = crew.turn % 2 === 0;
  const from = isPanel ? crew.panel : crew.emitter;
  const id = nanoid();
  const text = isPanel ? String(30 + (crew.turn % 7)) : 'done';
  crew.turn += 1;
  sentIds.add(id);
  underWay.set(id, { at: performance.now(), from, counts, arrivedAt: new Set(), acknowledged: false });
  from.send(
    JSON.stringify(task.say === 'remarks' ? { t: 'remark', id, text } : { t: 'say', id, via: 'typed', text }),
  );
  if (counts) seen.sent += 1;
}

const spread = (times: number[]): Spread => {
  const sorted = Float64Array.from(times).sort();
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p99: at(0.99), max: at(1) };
};

const present: Crew[] = [];
let nextToCome = 0;
await Promise.all(
  Array.from({ length: Math.min(AT_ONCE / 2, crews.length) }, async () => {
    for (let keys = crews[nextToCome++]; keys; keys = crews[nextToCome++]) {
      const panel = await comeIn(keys, 'panel');
      const emitter = await comeIn(keys, 'emitter');
      await comeIn(keys, 'watcher');
      present.push({ panel, emitter, turn: 0 });
    }
  }),
);

/** Crew after crew, evenly over the time. */
async function speakFor(seconds: number, counts: boolean): Promise<void> {
  const gap = (task.everySeconds * 1000) / present.length;
  const began = performance.now();
  for (let n = 0; n * gap < seconds * 1000; n++) {
    const wait = began + n * gap - performance.now();
    if (wait > 1) await setTimeout(wait);
    const crew = present[n % present.length];
    if (crew) speak(crew, counts);
  }
}

await speakFor(WARM_ROUNDS * task.everySeconds, false);
process.send?.('begin');
await speakFor(task.seconds, true);
process.send?.('end');
for (let waited = 0; underWay.size > 0 && waited < LAST_WAIT_MS; waited += 100) await setTimeout(100);
const lost = [...underWay.values()].reduce((sum, { arrivedAt }) => sum + ROLES.length - arrivedAt.size, 0);
const result: Seen = { ...seen, lost, relayed: spread(relayed), acknowledged: spread(acknowledged), places };
process.send?.(result, () => process.exit(0));
