import assert from 'node:assert/strict';
import fc from 'fast-check';
import { pino } from 'pino';
import { DailyAllowances, TokenAllowances } from '../../server/guard/allowance.ts';
import { LastSeen } from '../../server/guard/last-seen.ts';
import { LIMITS } from '../../server/guard/limits.ts';
import { HeavyWork } from '../../server/guard/turns.ts';
import { Connection, type ConnectionDeps, type Wire } from '../../server/jobs/connection.ts';
import { Rooms } from '../../server/jobs/rooms.ts';
import { Reads } from '../../server/reads/reads.ts';
import { SpeechService } from '../../server/speech/service.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { Telemetry } from '../../server/telemetry/telemetry.ts';
import type { Entry } from '../../src/model/entry.ts';
import { PROTOCOL_VERSION, type ServerMessage } from '../../src/protocol/socket.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { ManualClock, settle } from './manual-clock.ts';
import { SETUP } from './phone.ts';

/**
 * What goes wrong between phones and server, one thing after the other. The rooms, the connections and the log are the
 * server's own; the phones, the lines and the clock are models. What no model can show is in other tests: a process that
 * is killed, a file that is torn.
 */

/** Two phones hold the token of the panel, as when a page is open twice. */
const PHONES = ['panel', 'panel again', 'emitter', 'watcher'] as const;
const ILLS = ['before', 'after', 'full'] as const;
const WORDS = ['forty two', 'done', 'no signal', 'accept', 'why?'] as const;

const whose = fc.nat(PHONES.length - 1);
/** Of a line, counted from the one in use to the oldest that the server still takes for open. */
const line = fc.nat(2);

export const step = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({ do: fc.constant('say'), phone: whose, text: fc.constantFrom(...WORDS) }),
  },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('remark'), phone: whose }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('connect'), phone: whose }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('hang up'), phone: whose, line }) },
  { weight: 8, arbitrary: fc.record({ do: fc.constant('move up'), phone: whose, line }) },
  { weight: 8, arbitrary: fc.record({ do: fc.constant('move down'), phone: whose }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('send twice'), phone: whose }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('reorder'), phone: whose }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('cut a frame'), phone: whose }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('disk'), ill: fc.constantFrom(...ILLS) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('disk well') }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('restart') }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('kill') }) },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('clock'), ms: fc.integer({ min: -86_400_000, max: 86_400_000 }) }),
  },
  { weight: 8, arbitrary: fc.record({ do: fc.constant('settle') }) },
);
export type Step = typeof step extends fc.Arbitrary<infer S> ? S : never;
export const schedule = fc.array(step, { minLength: 20, maxLength: 300, size: 'max' });

/** A store that can fail on an append: before anything is stored, after all of it, or on every one while the disk is full. */
class FrailStore extends MemoryStore {
  ill: (typeof ILLS)[number] | 'no' = 'no';

  override async append(...args: Parameters<MemoryStore['append']>) {
    const { ill } = this;
    if (ill === 'full') throw new StoreFailure('the disk is full');
    this.ill = 'no';
    if (ill === 'before') throw new StoreFailure('before');
    const appended = await super.append(...args);
    if (ill === 'after') throw new StoreFailure('after');
    return appended;
  }
}

/** The store as one process has it: once that is killed, nothing it began comes to an end, and it begins nothing more. */
function asSeenBy(store: FrailStore): { store: FrailStore; kill(): void } {
  let dead = false;
  const forever = new Promise<never>(() => {});
  const seen = new Proxy(store, {
    get(target, name) {
      const value = Reflect.get(target, name, target);
      if (typeof value !== 'function') return value;
      return async (...args: unknown[]) => {
        if (dead) return forever;
        try {
          const result = await value.apply(target, args);
          return dead ? forever : result;
        } catch (error) {
          if (dead) return forever;
          throw error;
        }
      };
    },
  });
  return {
    store: seen,
    kill: () => {
      dead = true;
    },
  };
}

type Frame = { text: string; sent?: (() => void) | undefined } | 'close';

/** A connection whose frames wait until the schedule moves them. */
class Line {
  readonly up: string[] = [];
  readonly down: Frame[] = [];
  private readonly connection: Connection;
  private hungUp = false;

  constructor(deps: ConnectionDeps) {
    const { down } = this;
    const wire: Wire = {
      block: '192.0.2',
      send: (frame, sent) => down.push({ text: String(frame), sent }),
      close: () => down.push('close'),
      cut: () => down.push('close'),
      waiting: 0,
    };
    this.connection = new Connection(wire, deps);
  }

  moveUp(): void {
    const text = this.up.shift();
    if (text !== undefined) this.connection.onText(text);
  }

  /** Frames on the line are lost, in both directions. */
  hangUp(): void {
    if (this.hungUp) return;
    this.hungUp = true;
    this.connection.onClose();
    for (const frame of this.down.splice(0)) if (frame !== 'close') frame.sent?.();
  }
}

interface Letter {
  readonly t: 'say' | 'remark';
  readonly id: string;
  readonly text: string;
  readonly via?: 'typed';
}

/** A phone that does what the protocol requires, and no more. */
class ModelPhone {
  readonly entries: Entry[] = [];
  readonly acked = new Map<string, number>();
  readonly refused = new Set<string>();
  readonly outbox: Letter[] = [];
  line: Line | undefined;
  /** Lines that the phone gave up and the server does not know of yet, newest first. */
  readonly ghosts: Line[] = [];

  constructor(
    readonly name: (typeof PHONES)[number],
    private readonly token: string,
  ) {}

  connect(deps: ConnectionDeps): void {
    if (this.line) this.ghosts.unshift(this.line);
    this.line = new Line(deps);
    this.send({ t: 'hello', v: PROTOCOL_VERSION, token: this.token, after: this.entries.length - 1 });
    for (const letter of this.outbox) this.send(letter);
  }

  /** 0: the one in use. */
  lineAt(index: number): Line | undefined {
    return index === 0 ? this.line : this.ghosts[index - 1];
  }

  hangUp(index: number): void {
    this.lineAt(index)?.hangUp();
    if (index === 0) this.line = undefined;
    else this.ghosts.splice(index - 1, 1);
  }

  post(letter: Letter): void {
    this.outbox.push(letter);
    this.send(letter);
  }

  send(message: object): void {
    this.line?.up.push(JSON.stringify(message));
  }

  async moveDown(store: MemoryStore): Promise<void> {
    const frame = this.line?.down.shift();
    if (frame === undefined) return;
    if (frame === 'close') return this.hangUp(0);
    frame.sent?.();
    const message: ServerMessage = JSON.parse(frame.text);
    if (message.t === 'entries') {
      for (const entry of message.entries) {
        assert.equal(entry.seq, this.entries.length, 'entries come in order, each once');
        this.entries.push(entry);
      }
    }
    if (message.t === 'ack') {
      const { id, seq } = message;
      assert.equal(this.acked.get(id) ?? seq, seq, 'a message has one place in the log');
      const job = this.entries[0]?.job;
      if (job)
        assert.equal((await store.read(job, seq - 1, 1))[0]?.ref, id, 'what is acknowledged is stored');
      this.acked.set(id, seq);
      this.drop(id);
    }
    if (message.t === 'refused' && message.id && message.reason !== 'store-failed') {
      this.refused.add(message.id);
      this.drop(message.id);
    }
  }

  private drop(id: string): void {
    const at = this.outbox.findIndex((letter) => letter.id === id);
    if (at >= 0) this.outbox.splice(at, 1);
  }
}

/** Plays a schedule, lets everyone come back, and holds what they have against the log. Rejects with what is wrong. */
export async function play(steps: readonly Step[]): Promise<void> {
  const store = new FrailStore();
  const clock = new ManualClock();
  const log = pino({ enabled: false });
  const telemetry = new Telemetry(log);
  const limits = { ...LIMITS, messages: { burst: 1e9, perSecond: 0 }, historyBatch: 2 };
  const newProcess = () => {
    const seen = asSeenBy(store);
    const rooms = new Rooms({ store: seen.store, clock, log, telemetry, graceMs: 1e6 }, limits);
    const deps: ConnectionDeps = {
      rooms,
      store: seen.store,
      speech: new SpeechService(undefined, limits, log),
      clock,
      limits,
      heavy: new HeavyWork(limits),
      daily: new DailyAllowances(limits),
      allowances: new TokenAllowances(limits),
      seen: new LastSeen(),
      reads: new Reads({ store: seen.store, clock, log }),
      log,
      telemetry,
    };
    return { deps, kill: seen.kill };
  };
  let server = newProcess();

  const opened = await server.deps.rooms.open({ setup: SETUP, device: '' });
  assert(opened.kind === 'ok');
  const joined = await server.deps.rooms.join(opened.value.invite.code, { device: '' });
  assert(joined.kind === 'ok');
  const { job, token, watch } = opened.value;
  const tokens = [token, token, joined.value.token, watch];
  const phones = PHONES.map((name, i) => new ModelPhone(name, tokens[i] ?? ''));
  const posted = new Set<string>();

  const begin = async (end: () => Promise<void>) => {
    const ending = end();
    for (const phone of phones) {
      for (const each of [phone.line, ...phone.ghosts.splice(0)]) each?.hangUp();
      phone.line = undefined;
    }
    await ending;
    server = newProcess();
  };
  const kill = async () => {
    server.kill();
    // For its timers only: it waits for ever for a store that is gone.
    void server.deps.rooms.close();
  };

  for (const one of steps) {
    const phone = 'phone' in one ? phones[one.phone] : undefined;
    switch (one.do) {
      case 'say':
      case 'remark': {
        if (!phone || phone.name === 'watcher') break;
        const id = `message-${posted.size}`;
        posted.add(id);
        const text = 'text' in one ? one.text : `${phone.name} remarks ${id}`;
        phone.post({ t: one.do, id, text, ...(one.do === 'say' && { via: 'typed' as const }) } as Letter);
        break;
      }
      case 'connect':
        phone?.connect(server.deps);
        break;
      case 'hang up':
        phone?.hangUp('line' in one ? one.line : 0);
        break;
      case 'move up':
        phone?.lineAt('line' in one ? one.line : 0)?.moveUp();
        break;
      case 'move down':
        await phone?.moveDown(store);
        break;
      case 'send twice':
        for (const letter of phone?.outbox ?? []) phone?.send(letter);
        break;
      case 'reorder': {
        const up = phone?.line?.up ?? [];
        const [last, before] = [up.pop(), up.pop()];
        // Hello stays first.
        up.push(
          ...[...(up.length > 0 ? [last, before] : [before, last])].filter((text) => text !== undefined),
        );
        break;
      }
      case 'cut a frame': {
        const text = phone?.line?.up.pop();
        if (text !== undefined) phone?.line?.up.push(text.slice(0, text.length / 2));
        break;
      }
      case 'disk':
        store.ill = 'ill' in one ? one.ill : 'no';
        break;
      case 'disk well':
        store.ill = 'no';
        break;
      case 'restart':
        await begin(() => server.deps.rooms.close());
        break;
      case 'kill':
        await begin(kill);
        break;
      case 'clock':
        clock.advance('ms' in one ? one.ms : 0);
        break;
      default:
        await settle();
    }
  }

  // Everyone comes back, and lines and disk are good.
  store.ill = 'no';
  for (const phone of phones) while (phone.ghosts.length > 0) phone.hangUp(1);
  const drain = async (some: readonly ModelPhone[]) => {
    for (const phone of phones) phone.hangUp(0);
    for (const phone of some) phone.connect(server.deps);
    for (let calm = 0; calm < 3; calm++) {
      await settle();
      for (const phone of some) {
        const { line: own } = phone;
        while (own && (own.up.length > 0 || own.down.length > 0)) {
          calm = 0;
          own.moveUp();
          await phone.moveDown(store);
        }
      }
    }
  };
  const [panel, again, emitter, watcher] = phones as [ModelPhone, ModelPhone, ModelPhone, ModelPhone];
  for (const some of [[again], [panel, emitter, watcher]])
    for (let round = 0; round < 3; round++) await drain(some);

  const entries = await store.read(job, -1, 100_000);
  assert.equal(await store.audit(job), undefined, 'the log is whole');
  const state = entries.reduce(fold, EMPTY);
  for (const phone of phones) {
    const { name } = phone;
    assert.deepEqual(phone.outbox, [], `everything of ${name} has arrived or was refused`);
    assert.deepEqual(
      phone.entries,
      entries.slice(0, phone.entries.length),
      `${name} has the log in its order`,
    );
    if (phone !== again) {
      assert.equal(phone.entries.length, entries.length, `${name} has all of it`);
      assert.deepEqual(phone.entries.reduce(fold, EMPTY), state, `${name} has the same state`);
    }
    for (const [id, seq] of phone.acked) assert.equal(entries[seq]?.ref, id, 'what was acknowledged stays');
  }
  const places = new Map<string | undefined, number>();
  for (const { ref } of entries) places.set(ref, (places.get(ref) ?? 0) + 1);
  for (const id of posted) {
    const isRefused = phones.some(({ refused, acked }) => refused.has(id) && !acked.has(id));
    assert.equal(places.get(id) ?? 0, isRefused ? 0 : 1, `${id} is in the log exactly once, or was refused`);
  }
  for (const phone of phones) phone.hangUp(0);
  await server.deps.rooms.close();
}
