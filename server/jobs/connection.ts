import type { Logger } from 'pino';
import * as z from 'zod/mini';
import type { Input } from '../../src/conversation/input.ts';
import { toInput } from '../../src/conversation/inputs.ts';
import { entryJson } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { MessageId } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { ONLY_THE_PANEL } from '../../src/phrases/admission.ts';
import {
  badFieldText,
  HELLO_FIRST,
  HELLO_MISSING,
  HELLO_TWICE,
  NOT_JSON,
  PAGE_TOO_NEW,
  PAGE_TOO_OLD,
  TOO_MANY_BAD,
} from '../../src/phrases/bad-requests.ts';
import {
  DAY_OF_LOG_FULL,
  DAY_OF_PLACE_FULL,
  NOT_LISTENING,
  TOO_MANY_MESSAGES,
  tooManyWatchersText,
} from '../../src/phrases/limits.ts';
import {
  closeThereText,
  NO_JOB_LINK,
  ONLY_THE_LADDER,
  ONLY_WATCHERS_SIGN,
  ONLY_WATCHING,
  revokedText,
  UNKNOWN_LINK,
} from '../../src/phrases/links.ts';
import { CONNECTION_FAILED, HISTORY_FAILED, logEndsText } from '../../src/phrases/log-failures.ts';
import type { Role } from '../../src/protocol/access.ts';
import { type FieldFault, incomingFaults } from '../../src/protocol/incoming.ts';
import {
  CLOSE_CODES,
  ClientMessage,
  type ClosingRefusal,
  OLDEST_PROTOCOL_VERSION,
  PROTOCOL_VERSION,
  type ServerMessage,
} from '../../src/protocol/socket.ts';
import { Bucket, type DailyAllowances, type TokenAllowances } from '../guard/allowance.ts';
import type { LastSeen } from '../guard/last-seen.ts';
import type { Limits } from '../guard/limits.ts';
import { digest, keyIdOf } from '../guard/secrets.ts';
import type { HeavyWork } from '../guard/turns.ts';
import { IN_WORDS } from '../http/http.ts';
import type { Clock } from '../process/clock.ts';
import { type Reads, readerOf } from '../reads/reads.ts';
import type { SpeechService } from '../speech/service.ts';
import { HeldElsewhere } from '../store/leases.ts';
import type { Digest, Pass, Store } from '../store/store.ts';
import type { Telemetry } from '../telemetry/telemetry.ts';
import type { LineElsewhere, PhoneEnd } from './line-elsewhere.ts';
import type { Member, Outcome, Room } from './room.ts';
import type { Rooms } from './rooms.ts';
import { Talks } from './talks.ts';

/** The text of a message; as its bytes where it goes to several phones. */
export type Frame = string | Buffer;

/** A websocket as the protocol needs it. Tests have their own, which they flush by hand. */
export interface Wire {
  /** `sent`: called when the frame has left, or will never leave. */
  send(frame: Frame, sent?: () => void): void;
  close(code: number, reason: string): void;
  /** Cuts without a closing frame. */
  cut(): void;
  /** Bytes that still wait to leave. */
  readonly waiting: number;
  /** Of addresses: where the phone is. */
  readonly block: string;
  /** Of who is signed in on the phone: the name of the account. */
  readonly signedIn?: string | undefined;
  /** Carries the phone to another process, unless it was carried here already. */
  readonly carry?: ((url: string, phone: PhoneEnd) => LineElsewhere) | undefined;
}

export interface ConnectionDeps {
  rooms: Rooms;
  store: Store;
  seen: LastSeen;
  reads: Reads;
  speech: SpeechService;
  clock: Clock;
  limits: Limits;
  allowances: TokenAllowances;
  daily: DailyAllowances;
  heavy: Pick<HeavyWork, 'talks'>;
  log: Logger;
  telemetry: Telemetry;
}

type Hello = Extract<ClientMessage, { t: 'hello' }>;
/** What has its turn; a ping has none. */
type Message = Exclude<ClientMessage, { t: 'ping' }>;
type Remark = Extract<ClientMessage, { t: 'remark' }>;
type Invitation = Extract<ClientMessage, { t: 'invite' }>;
type Admission = Extract<ClientMessage, { t: 'admit' }>;

/** RFC 6455, section 7.4.1. */
export const GOING_AWAY = 1001;
export const SERVER_STOPS = 'the server stops';

/** A ping as our pages write it: most of what comes, and no schema could say more of it. */
const PLAIN_PING = /^\{"t":"ping","n":(0|[1-9]\d{0,14})\}$/;

const FRAMES = new WeakMap<readonly Entry[], Buffer>();

/** The same entries go to every phone of a job: their frame is made once. */
function frameOf(entries: readonly Entry[]): Buffer {
  const known = FRAMES.get(entries);
  if (known !== undefined) return known;
  const frame = Buffer.from(`{"t":"entries","entries":[${entries.map(entryJson).join()}]}`);
  FRAMES.set(entries, frame);
  return frame;
}

/**
 * One phone's connection. It takes frames in the order they come, finishes each one (up to its acknowledgement)
 * before the next, and sends history before anything live.
 */
export class Connection implements Member {
  role: Role = 'watcher';
  /** Of the token, once it was let in. */
  key: Digest = '';
  /** Of a watcher who gave one. */
  name: string | undefined;
  private room: Room | undefined;
  /** Where another process has the job. */
  private elsewhere: LineElsewhere | undefined;
  private talks: Talks | undefined;
  private inbox: Promise<void> = Promise.resolve();
  /** The next entry this phone has not been sent. */
  private next = 0;
  /** All history is sent; new entries are passed on as they come. */
  private live = false;
  /** `gone`: the phone hung up; what it sent before still counts. `over`: we ended it; nothing more counts. */
  private line: 'open' | 'gone' | 'over' = 'open';
  private badFrames = 0;
  /** The server stops: what comes now is not taken, and the phone sends it again to the next one. */
  private isFinishing = false;
  /** For pings and hello, and for frames that are none. */
  private readonly frames: Bucket;
  /** Of the token, once it is named: at the first hello, before anything is awaited. */
  private messages: Bucket;
  private sound: Bucket;
  private readonly refusals: Bucket;
  private readonly helloTimer: NodeJS.Timeout;
  private saidHello = false;

  constructor(
    private readonly wire: Wire,
    private readonly deps: ConnectionDeps,
  ) {
    const now = performance.now();
    this.frames = new Bucket(deps.limits.messages, now);
    this.messages = this.frames;
    this.refusals = new Bucket(deps.limits.refusals, now);
    this.sound = new Bucket(deps.limits.sound, now);
    this.helloTimer = setTimeout(() => {
      // What came while the server itself was late is read first.
      setImmediate(() => this.saidHello || this.dismiss('bad-message', HELLO_MISSING));
    }, deps.limits.helloWithinMs);
  }

  // ---- frames from the phone

  onText(text: string): void {
    if (this.line !== 'open' || this.isFinishing) return;
    const now = performance.now();
    const message = this.parse(text);
    if (!message) return;
    const counts = message.t === 'ping' || message.t === 'hello' ? this.frames : this.messages;
    if (!counts.take(now)) {
      const id = 'id' in message ? message.id : undefined;
      if (this.refusals.take(now)) this.refuse('too-fast', TOO_MANY_MESSAGES, id);
      else this.dismiss('too-fast', NOT_LISTENING);
      return;
    }
    if (message.t === 'hello') {
      this.saidHello = true;
      clearTimeout(this.helloTimer);
      this.countFor(message.token, now);
    }
    // Answered at once, before its turn: it asks about the line, not about the log.
    if (message.t === 'ping') {
      if (this.elsewhere) this.elsewhere.send(text);
      else this.send({ t: 'pong', n: message.n, now: this.deps.clock.now() });
      return;
    }
    const bytes = Buffer.byteLength(text);
    if (!this.deps.daily.bytes.of(this.wire.block, now).take(now, bytes)) {
      this.refuse('too-fast', DAY_OF_PLACE_FULL, 'id' in message ? message.id : undefined);
      return;
    }
    this.enqueue(async () => {
      if (this.elsewhere) this.elsewhere.send(text);
      else await this.take(message, bytes);
      this.deps.telemetry.handled(message.t, bytes, performance.now() - now, this.room?.job);
    });
  }

  /** Only the first token counts: a second hello is refused, and must not open another allowance. */
  private countFor(token: string, now: number): void {
    if (this.messages !== this.frames) return;
    const key = digest(token);
    this.messages = this.deps.allowances.messages.of(key, now);
    this.sound = this.deps.allowances.sound.of(key, now);
  }

  /** Whether a job has let this connection in. */
  get isIn(): boolean {
    return this.room !== undefined || this.elsewhere !== undefined;
  }

  onSound(part: Buffer): void {
    if (this.line !== 'open' || this.isFinishing) return;
    const tooFast = !this.sound.take(performance.now(), part.length);
    this.enqueue(async () => {
      if (this.line === 'over') return;
      if (this.elsewhere) this.elsewhere.send(part);
      else if (!this.room) this.dismiss('bad-message', HELLO_FIRST);
      else if (!this.talks) this.bad(ONLY_WATCHING, undefined, 'read-only');
      else await this.talks.sound(part, tooFast);
    });
  }

  onClose(): void {
    this.end('gone');
    if (this.key !== '') this.deps.seen.saw(this.key, this.deps.clock.now());
    this.enqueue(async () => this.talks?.cutShort());
    this.enqueue(async () => this.elsewhere?.close());
    if (this.room) this.deps.telemetry.left(this.room.job, this.role);
    this.room?.leave(this);
  }

  private parse(text: string): ClientMessage | undefined {
    const ping = PLAIN_PING.exec(text);
    if (ping) return { t: 'ping', n: Number(ping[1]) };
    let json: unknown;
    try {
      json = JSON.parse(text);
    } catch {
      this.bad(NOT_JSON);
      return undefined;
    }
    const parsed = ClientMessage.safeParse(json, IN_WORDS);
    const [fault] = parsed.error?.issues ?? incomingFaults(ClientMessage, json, false);
    if (parsed.success && !fault) return parsed.data;
    const id = z.object({ id: MessageId }).safeParse(json).data?.id;
    const { path, message } = fault as FieldFault;
    const tooLong = parsed.error?.issues[0]?.code === 'too_big' && path.join('.') === 'text';
    this.bad(badFieldText(path, message), id, tooLong ? 'too-long' : 'bad-message');
    return undefined;
  }

  private bad(text: string, id?: string, reason: Refusal = 'bad-message'): void {
    this.badFrames += 1;
    if (this.badFrames > this.deps.limits.maxBadFrames) this.dismiss('bad-message', TOO_MANY_BAD);
    else this.refuse(reason, text, id);
  }

  private enqueue(work: () => Promise<void> | undefined): void {
    this.inbox = this.inbox.then(work).catch((error: unknown) => {
      this.deps.log.error({ err: error }, 'a frame could not be handled');
      this.dismiss('store-failed', CONNECTION_FAILED);
    });
  }

  private async take(message: Message, bytes: number): Promise<void> {
    if (this.line === 'over') return;
    if (message.t === 'hello') return this.hello(message);
    const { role, room, talks } = this;
    if (!room) return this.dismiss('bad-message', HELLO_FIRST);
    if (message.t === 'receipt') {
      if (role === 'emitter') return room.received(message);
      return this.refuse('read-only', ONLY_THE_LADDER);
    }
    const { id } = message;
    if (role === 'watcher' || !talks) {
      if (message.t === 'remark' && message.by !== undefined) return this.watcherRemark(room, message, bytes);
      return this.refuse('read-only', ONLY_WATCHING, id);
    }
    if (message.t === 'remark' && message.by !== undefined)
      return this.refuse('bad-message', ONLY_WATCHERS_SIGN, id);
    switch (message.t) {
      case 'talk':
        return talks.open(id, message);
      case 'read':
        return talks.open(id, 'reading');
      case 'talk-end':
        return talks.end(id);
      case 'talk-drop':
        return talks.drop(id);
      case 'invite':
        return this.invite(room, role, message);
      case 'admit':
        return this.admit(room, role, message);
      default:
        return this.submit(room, toInput(message, role), id, bytes);
    }
  }

  /** Gives an input to the log, and says what became of it. */
  private async submit(room: Room, input: Input, id: MessageId, bytes: number): Promise<void> {
    const now = performance.now();
    if (!this.deps.daily.logBytes.of(room.job, now).take(now, bytes)) {
      return this.refuse('too-fast', DAY_OF_LOG_FULL, id);
    }
    this.answer(await room.submit(input, id), id);
  }

  private answer(outcome: Outcome, id: MessageId): void {
    if (outcome.kind === 'taken') this.send({ t: 'ack', id, seq: outcome.seq });
    else if (outcome.kind === 'refused') this.refuse(outcome.reason, outcome.text, id);
  }

  /** Who speaks is known by that name from then on. */
  private watcherRemark(room: Room, { id, text, by = '' }: Remark, bytes: number): Promise<void> {
    if (this.name !== by) {
      this.name = by;
      room.tellPresence();
    }
    return this.submit(room, { kind: 'watcher-remark', by, text }, id, bytes);
  }

  private async admit(room: Room, own: Role, message: Admission): Promise<void> {
    if (own !== 'panel') return this.refuse('read-only', ONLY_THE_PANEL, message.id);
    this.answer(await this.deps.rooms.asks.admit(room, message), message.id);
  }

  private async invite(room: Room, own: Role, { id, seat }: Invitation): Promise<void> {
    if (seat !== own && room.isOnline(seat)) {
      return this.refuse('seat-in-use', closeThereText(seat), id);
    }
    this.send({ t: 'invite', id, invite: await this.deps.rooms.invite(room, seat) });
  }

  // ---- hello and history

  private async hello(hello: Hello): Promise<void> {
    if (this.room) return this.bad(HELLO_TWICE);
    if (hello.v < OLDEST_PROTOCOL_VERSION) {
      return this.dismiss('version', PAGE_TOO_OLD);
    }
    if (hello.v > PROTOCOL_VERSION) return this.dismiss('version', PAGE_TOO_NEW);
    const pass = await this.deps.store.pass(digest(hello.token));
    const room = pass && (await this.roomOf(pass, hello));
    if (this.elsewhere) return;
    if (room) await room.inTurn(() => this.comeIn(room, hello));
    else this.dismiss('bad-token', UNKNOWN_LINK);
  }

  /** Where another process has it, the phone is carried there: undefined. */
  private async roomOf({ job, role }: Pass, hello: Hello): Promise<Room | undefined> {
    try {
      return await this.deps.rooms.get(job);
    } catch (error) {
      if (!(error instanceof HeldElsewhere)) throw error;
      // That process has just lost the job, or gained it: the phone comes again in a moment.
      if (!this.wire.carry) return void this.goAway();
      if (role !== 'desk') this.role = role;
      this.key = digest(hello.token);
      this.elsewhere = this.wire.carry(error.url, {
        frame: (data) => this.sendFrame(data),
        closed: (code, reason) => this.endedElsewhere(code, reason),
      });
      this.elsewhere.send(JSON.stringify(hello));
      return undefined;
    }
  }

  private endedElsewhere(code: number, reason: string): void {
    if (!Object.values<number>(CLOSE_CODES).includes(code)) this.goAway();
    if (this.line !== 'open') return;
    this.end('over');
    this.wire.close(code, reason);
  }

  /** In the room's turn, so that nobody else can get the pass between this check and the seat. */
  private async comeIn(room: Room, { token, after, name }: Hello): Promise<void> {
    const pass = await this.deps.store.pass(digest(token));
    if (this.line !== 'open' || !pass) return;
    const { role } = pass;
    if (role === 'desk') return this.dismiss('bad-token', NO_JOB_LINK);
    if (pass.revoked) return this.dismiss(pass.revoked, revokedText(pass.revoked, role));
    // Another process may have had this job, and we may not know of it yet.
    if (after >= room.head.count) await room.catchUp();
    const { head } = room;
    if (after >= head.count) {
      return this.dismiss('from-the-future', room.brokenText ?? logEndsText(after, head.count));
    }
    const { maxWatchers } = this.deps.limits;
    if (role === 'watcher' && room.presence().watchers >= maxWatchers) {
      return this.dismiss('too-fast', tooManyWatchersText(maxWatchers));
    }
    this.role = role;
    this.key = digest(token);
    this.deps.seen.saw(this.key, this.deps.clock.now());
    // Not awaited: nobody of the crew waits for it.
    void this.deps.reads.note({
      ...{ log: room.job, what: 'record', role, key: keyIdOf(this.key) },
      ...readerOf(this.wire.signedIn),
    });
    if (role === 'watcher') this.name = name;
    this.room = room;
    this.next = after + 1;
    if (role !== 'watcher') this.talks = new Talks(role, room, this.deps, this, this.wire.block);
    this.send({
      t: 'welcome',
      v: PROTOCOL_VERSION,
      role,
      job: room.job,
      head,
      now: this.deps.clock.now(),
      speech: this.deps.speech.state,
      ...(role === 'panel' && { word: this.deps.rooms.asks.wordOf(room.job) }),
    });
    room.enter(this);
    const asks = role === 'panel' ? this.deps.rooms.asks.waitingIn(room) : undefined;
    if (asks) this.send({ t: 'ask', asks });
    this.deps.telemetry.connected(room.job, role);
    // Not awaited: a long history must not delay messages of this phone or of others.
    this.sendHistory(room).catch((error: unknown) => {
      this.deps.log.error({ err: error }, 'history could not be sent');
      this.dismiss('store-failed', HISTORY_FAILED);
    });
  }

  private async sendHistory(room: Room): Promise<void> {
    while (this.line === 'open' && this.next < room.head.count) {
      const batch = await this.deps.store.read(room.job, this.next - 1, this.deps.limits.historyBatch);
      const sound = batch.filter((entry) => entry.seq < room.head.count);
      if (sound.length === 0) throw new Error(`entry ${this.next} cannot be found`);
      await new Promise<void>((sent) => this.sendEntries(sound, sent));
    }
    if (this.line !== 'open') return;
    this.live = true;
    this.send({ t: 'caught-up', seq: this.next - 1 });
  }

  // ---- to the phone

  entries(entries: readonly Entry[]): void {
    if (this.live) this.sendEntries(entries);
  }

  private sendEntries(entries: readonly Entry[], sent?: () => void): void {
    const last = entries.at(-1);
    if (!last) {
      sent?.();
      return;
    }
    this.next = last.seq + 1;
    this.sendFrame(frameOf(entries), sent);
  }

  send(message: ServerMessage, sent?: () => void): void {
    this.sendFrame(JSON.stringify(message), sent);
  }

  private sendFrame(frame: Frame, sent?: () => void): void {
    if (this.line === 'open' && this.wire.waiting > this.deps.limits.maxBufferedBytes) {
      this.deps.log.warn({ role: this.role }, 'a phone reads too slowly and was cut; it can resume');
      this.end('gone');
      this.wire.cut();
    }
    if (this.line === 'open') this.wire.send(frame, sent);
    else sent?.();
  }

  refuse(reason: Refusal, text: string, id?: MessageId): void {
    this.deps.telemetry.refused('message', reason, this.wire.block);
    this.send({ t: 'refused', reason, text, ...(id !== undefined && { id }) });
  }

  dismiss(reason: ClosingRefusal, text: string): void {
    if (this.line !== 'open') return;
    this.refuse(reason, text);
    this.end('over');
    this.wire.close(CLOSE_CODES[reason], reason);
  }

  /** Says that the server stops, takes nothing more, and resolves when all that came before is answered. */
  finish(): Promise<void> {
    if (this.isIn) this.send({ t: 'stopping' });
    this.isFinishing = true;
    return this.inbox;
  }

  goAway(): void {
    if (this.line !== 'open') return;
    this.end('gone');
    this.wire.close(GOING_AWAY, SERVER_STOPS);
  }

  private end(line: 'gone' | 'over'): void {
    if (this.line === 'open') this.line = line;
    clearTimeout(this.helloTimer);
  }
}
