import { readFileSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import { nanoid } from 'nanoid';
import type { Action } from '../../../src/model/advice.ts';
import type { Seat } from '../../../src/model/facts.ts';
import { SOCKET_PATH } from '../../../src/protocol/socket.ts';
import { createRng } from '../../../src/simulator/rng.ts';
import { type Aligning, nextSaying } from './aligning.ts';
import { BenchPhone, type Hears } from './bench-phone.ts';
import type { CrewKeys } from './logs.ts';

/**
 * What the crews say: they align simulated pairs, each at a place of its own; or numbers that no beam gives, over which the engine
 * thinks longest, all crews the same ones at the same time; or remarks, which are only kept and passed on.
 */
export type Saying = 'alignments' | 'numbers' | 'remarks';

/** What the program of the phones is told to do, as JSON in its first argument. */
export interface Task {
  /** The processes of the server; each phone comes to any of them, as behind a proxy. */
  urls: readonly string[];
  /** Whether the phones of a crew come to the same one. */
  together: boolean;
  /** A file of `CrewKeys[]`. */
  keys: string;
  /** Without our protocol: what is sent is what comes. */
  bare: boolean;
  say: Saying;
  /** Whether each phone sends a ping each two seconds, as R21 of the protocol has it. */
  pings: boolean;
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
  /** Arrivals and acknowledgements that are missing at the end, and those that came more than once. */
  lost: number;
  doubled: number;
  refused: number;
  /** Lines that ended while phones were on them, by the code that they were closed with; each phone came again. */
  closed: Record<number, number>;
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
  readonly from: BenchPhone;
  /** Whether its times count. */
  readonly counts: boolean;
  readonly arrivedAt: Set<BenchPhone>;
  acknowledged: boolean;
}

const task: Task = JSON.parse(process.argv[2] ?? '');
const crews = JSON.parse(readFileSync(task.keys, 'utf8')) as CrewKeys[];
const sentIds = new Set<string>();
/** Not yet acknowledged, or not yet with all three. */
const underWay = new Map<string, Message>();
const relayed: number[] = [];
const acknowledged: number[] = [];
const seen = { sent: 0, doubled: 0, refused: 0, closed: {} as Seen['closed'] };
const places: Seen['places'] = [];
/** Of each job's present instruction. */
const actions = new Map<string, Action>();
const rng = createRng(Date.now());

function arrived(id: string, phone: BenchPhone): void {
  const message = underWay.get(id);
  if (!message || message.arrivedAt.has(phone)) {
    seen.doubled += 1;
    return;
  }
  message.arrivedAt.add(phone);
  if (message.counts && phone !== message.from) relayed.push(performance.now() - message.at);
  settle(id, message);
}

function settle(id: string, message: Message): void {
  if (message.arrivedAt.size === ROLES.length && (message.acknowledged || task.bare)) underWay.delete(id);
}

/** What the phones of one job hear. */
const heardIn = (job: string): Hears => ({
  frame(frame, phone) {
    if (task.bare) {
      arrived(frame.id, phone);
    } else if (frame.t === 'entries') {
      for (const { ref, fact } of frame.entries) {
        if (sentIds.has(ref)) arrived(ref, phone);
        if (fact.type === 'instruction') actions.set(job, fact.advice.action);
        if (fact.type === 'withdrawn') actions.delete(job);
      }
    } else if (frame.t === 'ack') {
      acknowledge(job, frame.id, frame.seq);
    } else if (frame.t === 'refused') {
      if (seen.refused === 0) console.error(`refused: ${frame.reason}, ${frame.text}`);
      seen.refused += 1;
    }
  },
  closed(code) {
    seen.closed[code] = (seen.closed[code] ?? 0) + 1;
  },
});

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

/** `at`: the process that all phones of a crew come to, where they come together. */
async function comeIn(
  { job, ...keys }: CrewKeys,
  role: (typeof ROLES)[number],
  at: string | undefined,
): Promise<BenchPhone> {
  const { bare, pings } = task;
  const where = bare ? { path: `/${job}` } : { path: SOCKET_PATH, token: keys[role] };
  const phone = new BenchPhone({ url: () => at ?? anyUrl(), ...where, pings }, heardIn(job));
  await phone.come();
  return phone;
}

interface Crew {
  readonly job: string;
  readonly panel: BenchPhone;
  readonly emitter: BenchPhone;
  turn: number;
  aligning: Aligning;
  spokeAt: number;
}

/** What the crew of an alignment does and says now. */
function align(crew: Crew): { seat: Seat; text: string } {
  const now = performance.now();
  const at = crew.aligning.at + now - crew.spokeAt;
  const { seat, text, pair } = nextSaying({ ...crew.aligning, at }, actions.get(crew.job), rng);
  crew.aligning = { ...crew.aligning, pair, at };
  crew.spokeAt = now;
  return { seat, text };
}

/** A number from the panel, and "done" from the emitter. */
const number = ({ turn }: Crew): { seat: Seat; text: string } =>
  turn % 2 === 0 ? { seat: 'panel', text: String(30 + (turn % 7)) } : { seat: 'emitter', text: 'done' };

function speak(crew: Crew, counts: boolean): void {
  const { seat, text } = task.say === 'alignments' ? align(crew) : number(crew);
  const from = crew[seat];
  const id = nanoid();
  crew.turn += 1;
  sentIds.add(id);
  underWay.set(id, { at: performance.now(), from, counts, arrivedAt: new Set(), acknowledged: false });
  const frame = task.say === 'remarks' ? { t: 'remark', id, text } : { t: 'say', id, via: 'typed', text };
  from.send(id, JSON.stringify(frame));
  if (counts) seen.sent += 1;
}

const spread = (times: number[]): Spread => {
  const sorted = Float64Array.from(times).sort();
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { p50: at(0.5), p99: at(0.99), max: at(1) };
};

const anyUrl = (): string => task.urls[Math.floor(rng() * task.urls.length)] as string;

const present: Crew[] = [];
let nextToCome = 0;
await Promise.all(
  Array.from({ length: Math.min(AT_ONCE / 2, crews.length) }, async () => {
    for (let keys = crews[nextToCome++]; keys; keys = crews[nextToCome++]) {
      const at = task.together ? anyUrl() : undefined;
      const [panel, emitter] = [await comeIn(keys, 'panel', at), await comeIn(keys, 'emitter', at)];
      await comeIn(keys, 'watcher', at);
      const { job, aligning } = keys;
      present.push({ job, panel, emitter, turn: 0, aligning, spokeAt: performance.now() });
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
const lost = [...underWay.values()].reduce(
  (sum, { arrivedAt, acknowledged }) =>
    sum + ROLES.length - arrivedAt.size + Number(!acknowledged && !task.bare),
  0,
);
const result: Seen = { ...seen, lost, relayed: spread(relayed), acknowledged: spread(acknowledged), places };
process.send?.(result, () => process.exit(0));
