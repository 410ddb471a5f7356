import type { Logger } from 'pino';
import { z } from 'zod';
import { type Entry, MessageId } from '../src/log/entry.ts';
import {
  CLOSE_CODES,
  ClientMessage,
  type ClosingRefusal,
  OLDEST_PROTOCOL_VERSION,
  PROTOCOL_VERSION,
  type Refusal,
  type Role,
  type ServerMessage,
} from '../src/protocol.ts';
import { Bucket } from './allowance.ts';
import type { Clock } from './clock.ts';
import type { Hearing } from './hearing.ts';
import { toInput } from './inputs.ts';
import type { Limits } from './limits.ts';
import type { Member, Room } from './room.ts';
import type { Rooms } from './rooms.ts';
import { digest } from './secrets.ts';
import type { Store } from './store/store.ts';
import { Talks } from './talks.ts';

/** A websocket as the protocol needs it; tests have one of their own that is flushed by hand. */
export interface Wire {
  /** `sent`: called when the frame has left, or never will. */
  send(text: string, sent?: () => void): void;
  close(code: number, reason: string): void;
  /** Cuts without a word. */
  cut(): void;
  /** Bytes that wait to be sent. */
  readonly waiting: number;
}

export interface ConnectionDeps {
  rooms: Rooms;
  store: Store;
  hearing: Hearing;
  clock: Clock;
  limits: Limits;
  log: Logger;
}

type Hello = Extract<ClientMessage, { t: 'hello' }>;
/** What has its turn; a ping has none. */
type Message = Exclude<ClientMessage, { t: 'ping' }>;
type Invitation = Extract<ClientMessage, { t: 'invite' }>;

const GOING_AWAY = 1001;
const FIRST_HELLO = 'Say hello first.';
const ONLY_WATCHING = 'This link is for watching: it cannot write.';

/**
 * One phone's connection: takes frames in the order they come, lets each run to its acknowledgement before
 * the next, and sends history before anything live.
 */
export class Connection implements Member {
  role: Role = 'watcher';
  private room: Room | undefined;
  private talks: Talks | undefined;
  private inbox: Promise<void> = Promise.resolve();
  /** The next entry this phone has not been sent. */
  private next = 0;
  /** History is through; entries are passed on as they come. */
  private live = false;
  /** `gone`: the phone hung up, and what it had sent still counts. `over`: we ended it, and nothing does. */
  private line: 'open' | 'gone' | 'over' = 'open';
  private badFrames = 0;
  private readonly messages: Bucket;
  private readonly sound: Bucket;
  private readonly helloTimer: NodeJS.Timeout;

  constructor(
    private readonly wire: Wire,
    private readonly deps: ConnectionDeps,
  ) {
    const now = performance.now();
    this.messages = new Bucket(deps.limits.messages, now);
    this.sound = new Bucket(deps.limits.sound, now);
    this.helloTimer = setTimeout(
      () => this.dismiss('bad-message', 'No hello came.'),
      deps.limits.helloWithinMs,
    );
  }

  // ---- frames from the phone

  onText(text: string): void {
    if (this.line !== 'open') return;
    const tooFast = !this.messages.take(performance.now());
    const message = this.parse(text);
    if (!message) return;
    if (tooFast) {
      const id = 'id' in message ? message.id : undefined;
      this.refuse('too-fast', 'Too many messages at once. Wait a second and send it again.', id);
      return;
    }
    // At once and out of turn: it asks whether the line is alive, not whether the log is.
    if (message.t === 'ping') {
      this.send({ t: 'pong', n: message.n, now: this.deps.clock.now() });
      return;
    }
    this.enqueue(() => this.take(message));
  }

  onSound(part: Buffer): void {
    if (this.line !== 'open') return;
    const tooFast = !this.sound.take(performance.now(), part.length);
    this.enqueue(async () => {
      if (this.line === 'over') return;
      if (!this.room) this.dismiss('bad-message', FIRST_HELLO);
      else if (!this.talks) this.bad(ONLY_WATCHING, undefined, 'read-only');
      else await this.talks.sound(part, tooFast);
    });
  }

  onClose(): void {
    this.end('gone');
    this.enqueue(async () => this.talks?.cutShort());
    this.room?.leave(this);
  }

  private parse(text: string): ClientMessage | undefined {
    let json: unknown;
    try {
      json = JSON.parse(text);
    } catch {
      this.bad('This is not JSON.');
      return undefined;
    }
    const parsed = ClientMessage.safeParse(json);
    if (parsed.success) return parsed.data;
    const id = z.object({ id: MessageId }).safeParse(json).data?.id;
    const [issue] = parsed.error.issues;
    const where = issue?.path.join('.');
    const tooLong = issue?.code === 'too_big' && where === 'text';
    this.bad(`${where ? `${where}: ` : ''}${issue?.message}`, id, tooLong ? 'too-long' : 'bad-message');
    return undefined;
  }

  private bad(text: string, id?: string, reason: Refusal = 'bad-message'): void {
    this.badFrames += 1;
    if (this.badFrames > this.deps.limits.maxBadFrames) this.dismiss('bad-message', 'Too many bad messages.');
    else this.refuse(reason, text, id);
  }

  private enqueue(work: () => Promise<void> | undefined): void {
    this.inbox = this.inbox.then(work).catch((error: unknown) => {
      this.deps.log.error({ err: error }, 'a frame could not be handled');
      this.dismiss('store-failed', 'The server could not read or write its log. Connect again.');
    });
  }

  private async take(message: Message): Promise<void> {
    if (this.line === 'over') return;
    if (message.t === 'hello') return this.hello(message);
    const { role, room, talks } = this;
    if (!room) return this.dismiss('bad-message', FIRST_HELLO);
    if (role === 'watcher' || !talks) return this.refuse('read-only', ONLY_WATCHING, message.id);
    const { id } = message;
    switch (message.t) {
      case 'talk':
        return talks.open(id, message.re);
      case 'talk-end':
        return talks.end(id);
      case 'talk-drop':
        return talks.drop(id);
      case 'invite':
        return this.invite(room, role, message);
      default: {
        const outcome = await room.submit(toInput(message, role), id);
        if (outcome.kind === 'taken') this.send({ t: 'ack', id, seq: outcome.seq });
        else if (outcome.kind === 'refused') this.refuse(outcome.reason, outcome.text, id);
      }
    }
  }

  private async invite(room: Room, own: Role, { id, seat }: Invitation): Promise<void> {
    if (seat !== own && room.isOnline(seat)) {
      return this.refuse('seat-in-use', `The ${seat} phone of this job is connected.`, id);
    }
    this.send({ t: 'invite', id, invite: await this.deps.rooms.invite(room, seat) });
  }

  // ---- hello and history

  private async hello(hello: Hello): Promise<void> {
    if (this.room) return this.bad('Hello was said already.');
    if (hello.v < OLDEST_PROTOCOL_VERSION) {
      return this.dismiss('version', 'This page is too old for the server. Load it again.');
    }
    if (hello.v > PROTOCOL_VERSION) return this.dismiss('version', 'This page is newer than the server.');
    const pass = await this.deps.store.pass(digest(hello.token));
    const room = pass && (await this.deps.rooms.get(pass.job));
    if (room) await room.inTurn(() => this.comeIn(room, hello));
    else this.dismiss('bad-token', 'This link is not known here.');
  }

  /** In the room's turn, so that the pass is not given to another phone between the look at it and the seat. */
  private async comeIn(room: Room, { token, after }: Hello): Promise<void> {
    const pass = await this.deps.store.pass(digest(token));
    if (this.line !== 'open' || !pass) return;
    const { role } = pass;
    if (role === 'desk') return this.dismiss('bad-token', 'This link is for a site, not for a job.');
    if (pass.revoked) return this.dismiss('seat-lost', `Another phone has taken the ${role} seat.`);
    const { head } = room;
    if (after >= head.count) {
      return this.dismiss(
        'from-the-future',
        room.brokenText ??
          `This phone holds entry ${after}, and the log here ends before entry ${head.count}. Was an older backup put back?`,
      );
    }
    clearTimeout(this.helloTimer);
    this.role = role;
    this.room = room;
    this.next = after + 1;
    if (role !== 'watcher') this.talks = new Talks(role, room, this.deps, this);
    this.send({
      t: 'welcome',
      v: PROTOCOL_VERSION,
      role,
      job: room.job,
      head,
      now: this.deps.clock.now(),
      speech: this.deps.hearing.state,
    });
    room.enter(this);
    // Not awaited: a long history must not hold up what the phone, or anyone, has to say.
    this.sendHistory(room).catch((error: unknown) => {
      this.deps.log.error({ err: error }, 'history could not be sent');
      this.dismiss('store-failed', 'The server could not read its log. Connect again.');
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
    this.send({ t: 'entries', entries: [...entries] }, sent);
  }

  send(message: ServerMessage, sent?: () => void): void {
    if (this.line === 'open' && this.wire.waiting > this.deps.limits.maxBufferedBytes) {
      this.deps.log.warn({ role: this.role }, 'a phone takes in too slowly and is cut; it can resume');
      this.end('gone');
      this.wire.cut();
    }
    if (this.line === 'open') this.wire.send(JSON.stringify(message), sent);
    else sent?.();
  }

  refuse(reason: Refusal, text: string, id?: MessageId): void {
    this.send({ t: 'refused', reason, text, ...(id !== undefined && { id }) });
  }

  dismiss(reason: ClosingRefusal, text: string): void {
    if (this.line !== 'open') return;
    this.refuse(reason, text);
    this.end('over');
    this.wire.close(CLOSE_CODES[reason], reason);
  }

  goAway(): void {
    if (this.line !== 'open') return;
    this.end('gone');
    this.wire.close(GOING_AWAY, 'the server stops');
  }

  private end(line: 'gone' | 'over'): void {
    if (this.line === 'open') this.line = line;
    clearTimeout(this.helloTimer);
  }
}
