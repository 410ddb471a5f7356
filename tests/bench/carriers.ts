import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { Command } from 'commander';
import type { Broker, Carrier, Kind } from './carriers/carrier.ts';
import { KINDS } from './carriers/kinds.ts';
import { laidJobs } from './relay/logs.ts';
import { processorMs } from './relay/used.ts';

/**
 * What may carry a phone's frames to the process that has its job, and the entries back: each with two processes on this machine, and
 * its own server where it has one. Frames and entries are of the size that an alignment makes.
 */
const options = new Command('bench:carriers')
  .option('--seconds <n>', 'of each run', Number, 10)
  .option('--each-second <n>', 'frames, while times are taken', Number, 300)
  .option('--under-way <n>', 'frames, while as many as can be are sent', Number, 200)
  .parse()
  .opts<{ seconds: number; eachSecond: number; underWay: number }>();

/** What the other process is told, as JSON in its first argument. */
export interface Task {
  kind: string;
  address: string;
  /** A file of `string[]`: each time the entries that came of one message, as JSON. */
  entries: string;
}

/** Messages of an alignment, whose entries are carried. */
const ENTRIES = 400;
const ENTRIES_FILE = 'entries.json';

/** What one message becomes: its own entry, and those that answer it, up to the next message. */
function carried(): string[] {
  const [job] = laidJobs(1, ENTRIES, 1);
  const groups: string[][] = [];
  for (const { body, hash } of job?.entries ?? []) {
    const isAnswer = /"type":"(instruction|withdrawn|readback|said-back)"/.test(body);
    const entry = `${body.slice(0, -1)},"hash":"${hash}"}`;
    if (isAnswer && groups.length > 0) groups.at(-1)?.push(entry);
    else groups.push([entry]);
  }
  return groups.map((group) => `[${group.join()}]`);
}

const percentile = (sorted: Float64Array, share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;

class Talk {
  readonly times: number[] = [];
  private readonly sent = new Map<number, number>();
  private next = 0;
  private onBack: () => void = () => {};

  private constructor(private readonly carrier: Carrier) {}

  static async over(carrier: Carrier): Promise<Talk> {
    const talk = new Talk(carrier);
    await carrier.listen('back', (text) => talk.take(text));
    return talk;
  }

  get missing(): number {
    return this.sent.size;
  }

  send(of: number): void {
    const n = this.next++;
    this.sent.set(n, performance.now());
    const frame = {
      n,
      of,
      t: 'say',
      id: `message-${String(n).padStart(12, '0')}`,
      via: 'typed',
      text: 'forty two',
    };
    void this.carrier.send('there', JSON.stringify(frame));
  }

  /** As many each second, evenly. */
  async evenly(eachSecond: number, seconds: number, groups: number): Promise<void> {
    const began = performance.now();
    for (let n = 0; n < eachSecond * seconds; n++) {
      const wait = began + (n * 1000) / eachSecond - performance.now();
      if (wait > 1) await setTimeout(wait);
      this.send(n % groups);
    }
  }

  /** A new one for each that is back. */
  async full(underWay: number, seconds: number, groups: number): Promise<number> {
    const [began, before] = [performance.now(), this.times.length];
    this.onBack = () => {
      if (performance.now() - began < seconds * 1000) this.send(this.next % groups);
    };
    for (let n = 0; n < underWay; n++) this.send(n % groups);
    await setTimeout(seconds * 1000);
    const came = this.times.length - before;
    this.onBack = () => {};
    return came / seconds;
  }

  async settled(): Promise<void> {
    for (let waited = 0; this.missing > 0 && waited < 10_000; waited += 50) await setTimeout(50);
  }

  private take(text: string): void {
    const { n } = JSON.parse(text) as { n: number };
    const at = this.sent.get(n);
    if (at === undefined) throw new Error(`${n} came twice`);
    this.sent.delete(n);
    this.times.push(performance.now() - at);
    this.onBack();
  }
}

async function otherSide(kind: Kind, { address }: Broker, entries: string): Promise<ChildProcess> {
  const task: Task = { kind: kind.name, address, entries };
  const child = fork(fileURLToPath(new URL('carriers/other-side.ts', import.meta.url)), [
    JSON.stringify(task),
  ]);
  const isReady = await Promise.race([once(child, 'message'), once(child, 'exit').then(() => undefined)]);
  if (!isReady) throw new Error(`the other process ended (${kind.name})`);
  return child;
}

async function run(kind: Kind, folder: string, entries: readonly string[]) {
  const broker = await kind.start(folder);
  if (!broker) return { carrier: kind.name, why: 'not installed' };
  const other = await otherSide(kind, broker, join(folder, ENTRIES_FILE));
  const carrier = await kind.open(broker.address, false);
  const talk = await Talk.over(carrier);
  try {
    await talk.evenly(options.eachSecond, 2, entries.length);
    await talk.settled();
    talk.times.length = 0;
    const used = () =>
      [processorMs(process.pid) + processorMs(other.pid ?? 0), broker.processorMs()] as const;
    const before = used();
    await talk.evenly(options.eachSecond, options.seconds, entries.length);
    await talk.settled();
    const after = used();
    const times = Float64Array.from(talk.times).sort();
    const lost = talk.missing;
    const each = (which: 0 | 1) => ((after[which] - before[which]) / times.length).toFixed(2);
    const most = await talk.full(options.underWay, options.seconds, entries.length);
    await talk.settled();
    return {
      carrier: kind.name,
      'there and back p50 / p99 / max, ms': [0.5, 0.99, 1]
        .map((share) => percentile(times, share).toFixed(2))
        .join(' / '),
      'processes, ms each': each(0),
      'its server, ms each': each(1),
      'most a second': Math.round(most),
      lost: lost + talk.missing,
      'when it breaks, it keeps': kind.keeps,
    };
  } finally {
    await carrier.close();
    other.kill('SIGKILL');
    await broker.end();
  }
}

const folder = mkdtempSync(join(tmpdir(), 'ladderline-carriers-'));
// PostgreSQL runs as another user where we are root.
chmodSync(folder, 0o711);
try {
  const entries = carried();
  const sizes = Float64Array.from(entries.map((text) => text.length)).sort();
  console.log(
    `${entries.length} messages; their entries are ${[0.5, 0.99, 1].map((share) => percentile(sizes, share)).join(' / ')} bytes (p50 / p99 / max). ${options.eachSecond} a second, then ${options.underWay} at once under way.`,
  );
  writeFileSync(join(folder, ENTRIES_FILE), JSON.stringify(entries));
  for (const kind of KINDS) console.log(await run(kind, folder, entries));
  console.log(`Load average at the end: ${loadavg()[0]?.toFixed(1)}.`);
} finally {
  rmSync(folder, { recursive: true });
}
process.exit(0);
