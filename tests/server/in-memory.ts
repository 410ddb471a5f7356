import { nanoid } from 'nanoid';
import { pino } from 'pino';
import { onTestFinished, vi } from 'vitest';
import { DailyAllowances, TokenAllowances } from '../../server/guard/allowance.ts';
import { LastSeen } from '../../server/guard/last-seen.ts';
import { LIMITS, type Limits } from '../../server/guard/limits.ts';
import { HeavyWork } from '../../server/guard/turns.ts';
import { Connection, type ConnectionDeps, type Wire } from '../../server/jobs/connection.ts';
import { Rooms } from '../../server/jobs/rooms.ts';
import { Reads } from '../../server/reads/reads.ts';
import { type SpeechEngine, SpeechService } from '../../server/speech/service.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { Telemetry } from '../../server/telemetry/telemetry.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobOpened } from '../../src/protocol/jobs.ts';
import { type ClientMessage, PROTOCOL_VERSION, ServerMessage } from '../../src/protocol/socket.ts';
import { ManualClock, settle } from './manual-clock.ts';
import { SETUP } from './phone.ts';

/** What the server wrote to its own journal. */
export interface Remark {
  readonly level: number;
  readonly msg: string;
  readonly [key: string]: unknown;
}

/** The rooms of a server without its sockets, on timers and a clock that only move when told to. */
export class House implements ConnectionDeps {
  readonly store: MemoryStore;
  readonly clock = new ManualClock();
  readonly limits: Limits;
  readonly journal: Remark[] = [];
  readonly log = pino(
    { level: 'warn' },
    { write: (line: string) => void this.journal.push(JSON.parse(line)) },
  );
  readonly telemetry = new Telemetry(this.log);
  readonly speech: SpeechService;
  readonly allowances: TokenAllowances;
  readonly heavy: HeavyWork;
  readonly daily: DailyAllowances;
  readonly seen = new LastSeen();
  readonly reads: Reads;
  readonly rooms: Rooms;

  constructor({
    store,
    limits,
    speech,
  }: { store?: MemoryStore; limits?: Partial<Limits>; speech?: SpeechEngine } = {}) {
    vi.useFakeTimers({
      toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval', 'performance'],
    });
    this.store = store ?? new MemoryStore();
    this.limits = { ...LIMITS, ...limits };
    this.heavy = new HeavyWork(this.limits);
    this.daily = new DailyAllowances(this.limits);
    this.allowances = new TokenAllowances(this.limits);
    this.speech = new SpeechService(speech, this.limits, this.log);
    const { clock, log, telemetry, limits: all } = this;
    this.reads = new Reads({ store: this.store, clock, log });
    this.rooms = new Rooms({ store: this.store, clock, log, telemetry, graceMs: all.deadAfterMs }, all);
    onTestFinished(async () => {
      await this.rooms.close();
      vi.useRealTimers();
    });
  }

  /** Another server on the same log, after this one ended. */
  async restarted(limits?: Partial<Limits>): Promise<House> {
    await this.rooms.close();
    return new House({ store: this.store, limits: { ...this.limits, ...limits } });
  }

  async open(): Promise<JobOpened> {
    const opened = await this.rooms.open({ setup: SETUP, device: 'panel phone' });
    if (opened.kind !== 'ok') throw new Error(opened.text);
    return opened.value;
  }

  /** Takes the emitter's seat with the code of the job. */
  async join({ invite }: JobOpened): Promise<string> {
    const joined = await this.rooms.join(invite.code, { device: 'emitter phone' });
    if (joined.kind !== 'ok') throw new Error(joined.text);
    return joined.value.token;
  }

  room(job: string) {
    return this.rooms.get(job).then((room) => {
      if (!room) throw new Error('no such job');
      return room;
    });
  }

  entries = (job: string): Promise<Entry[]> => this.store.read(job, -1, 100_000);

  line(block?: string): Line {
    return new Line(this, block);
  }

  /** A phone that has come in and is through with history. */
  async phone(token: string, after = -1): Promise<Line> {
    const line = this.line();
    await line.hello(token, after);
    return line;
  }
}

type Unsent = ClientMessage extends infer M
  ? M extends { id: string }
    ? Omit<M, 'id'> & { id?: string }
    : M
  : never;

/** One phone's connection without a socket between. Frames to the phone arrive at once, unless they are held. */
export class Line {
  readonly heard: ServerMessage[] = [];
  /** How the server ended it. */
  ended: { code: number; reason: string } | 'cut' | undefined;
  /** Bytes that wait to be sent. */
  waiting = 0;
  /** While true, frames that left the server have not arrived. */
  held = false;
  private readonly arriving: (() => void)[] = [];
  readonly connection: Connection;

  /** `block`: of addresses. */
  constructor(deps: ConnectionDeps, block = '192.0.2') {
    const line = this;
    const wire: Wire = {
      block,
      send(frame, sent) {
        line.heard.push(ServerMessage.parse(JSON.parse(String(frame))));
        if (line.held && sent) line.arriving.push(sent);
        else sent?.();
      },
      close: (code, reason) => {
        this.ended = { code, reason };
      },
      cut: () => {
        this.ended = 'cut';
      },
      get waiting() {
        return line.waiting;
      },
    };
    this.connection = new Connection(wire, deps);
  }

  async hello(token: string, after = -1, v = PROTOCOL_VERSION): Promise<this> {
    return this.raw(JSON.stringify({ t: 'hello', v, token, after }));
  }

  async raw(text: string): Promise<this> {
    this.connection.onText(text);
    await settle();
    return this;
  }

  /** Sends a message, and returns its id. */
  async send(message: Unsent): Promise<string> {
    const id = 'id' in message && message.id ? message.id : nanoid();
    await this.raw(JSON.stringify({ ...message, id }));
    return id;
  }

  async sound(bytes: number): Promise<void> {
    this.connection.onSound(Buffer.alloc(bytes));
    await settle();
  }

  /** The next frame that was held arrives. */
  async arrive(): Promise<void> {
    this.arriving.shift()?.();
    await settle();
  }

  async hangUp(): Promise<void> {
    this.connection.onClose();
    await settle();
  }

  /** What came since it was last looked at, each kind by its name. */
  get news(): string[] {
    return this.heard
      .splice(0)
      .map((message) => ('reason' in message ? `${message.t} ${message.reason}` : message.t));
  }

  all<T extends ServerMessage['t']>(t: T): Extract<ServerMessage, { t: T }>[] {
    return this.heard.filter((message): message is Extract<ServerMessage, { t: T }> => message.t === t);
  }

  get seqs(): number[] {
    return this.all('entries').flatMap(({ entries }) => entries.map(({ seq }) => seq));
  }
}
