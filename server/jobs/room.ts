import type { Logger } from 'pino';
import { type Expectation, expectation } from '../../src/conversation/expectation.ts';
import type { Input } from '../../src/conversation/input.ts';
import { emptyHead, headAfter } from '../../src/log/chain.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import { sealAll } from '../../src/log/seal-all.ts';
import type { AdmissionAnswer } from '../../src/model/admission.ts';
import { isOnePhone } from '../../src/model/alone.ts';
import type { Draft, Entry } from '../../src/model/entry.ts';
import { Seat } from '../../src/model/facts.ts';
import type { Head, JobId, MessageId, Seq } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { type LogVersion, namesBeside } from '../../src/model/written.ts';
import { KEY_TAKEN } from '../../src/phrases/keys.ts';
import { closeThereText, NEWER_CONNECTION } from '../../src/phrases/links.ts';
import {
  brokenLogText,
  NOT_SAVED_SENT_AGAIN,
  OTHER_RECORD,
  RULES_FAILED,
} from '../../src/phrases/log-failures.ts';
import type { Role, Sitter } from '../../src/protocol/access.ts';
import { receiptNews } from '../../src/protocol/receipt.ts';
import { sittingOf } from '../../src/protocol/sitting.ts';
import type { ClosingRefusal, Presence, Receipt, ServerMessage } from '../../src/protocol/socket.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { digest, newSalt } from '../guard/secrets.ts';
import type { Clock } from '../process/clock.ts';
import { type SoundToKeep, soundToKeep } from '../sounds/kept-sound.ts';
import { checkNamed } from '../store/check.ts';
import type { Leases } from '../store/leases.ts';
import type { Digest, HeldPass, KeyChange, Store } from '../store/store.ts';
import type { Telemetry } from '../telemetry/telemetry.ts';
import type { Question } from './door.ts';
import { type Decision, RULES_HERE, type Rules, RulesFailed } from './rules.ts';

/** What a room needs from the server. */
export interface RoomDeps {
  store: Store;
  /** Where this server is several processes. */
  leases?: Leases | undefined;
  clock: Clock;
  log: Logger;
  telemetry: Telemetry;
  /** Who works out what inputs lead to; by itself this thread. */
  rules?: Rules | undefined;
  /** Told of entries once they are stored. */
  onStored?: (entries: readonly Entry[]) => void;
  /** So long may a phone that should be online take to connect; after that the log says that it is gone, ms. */
  graceMs: number;
}

/** Someone connected to a room. */
export interface Member {
  readonly role: Role;
  /** Of its token. */
  readonly key: Digest;
  /** Of a watcher who gave one. */
  readonly name: string | undefined;
  /** New entries of the log. */
  entries(entries: readonly Entry[]): void;
  send(message: ServerMessage): void;
  /** Says why, and ends the connection. */
  dismiss(reason: ClosingRefusal, text: string): void;
  /** Ends the connection because the server stops. */
  goAway(): void;
}

export type Outcome =
  /** Stored in the log, from entry `seq` on. */
  { kind: 'taken'; seq: Seq } | { kind: 'refused'; reason: Refusal; text: string } | { kind: 'spent' };

const refused = (reason: Refusal, text: string): { kind: 'refused'; reason: Refusal; text: string } => ({
  kind: 'refused',
  reason,
  text,
});

/** The same count, but another last entry. The rules of signing deal with another count. */
const isOfOther = (end: Head, read: Head): boolean => end.count === read.count && end.hash !== read.hash;

const READ_BATCH = 500;
/** The next try after the store failed on a tick. */
const TICK_AGAIN_MS = 1_000;
/** Even a wake that is due now waits this long, so that no rule can keep the server busy for ever. */
const SHORTEST_WAKE_MS = 20;

/** Chains drafts onto a head, hashed by the engine below us. `version`: of the log; a log without one, of a site, names nobody. */
export const sealHere = (
  head: Head,
  drafts: readonly Draft[],
  at: number,
  { ref, version }: { ref?: MessageId | undefined; version?: LogVersion | undefined } = {},
): ReturnType<typeof sealAll> =>
  sealAll(head, drafts, at, { ref, hash: digest, salt: namesBeside(version) ? newSalt : undefined });

/**
 * One live job. Everything that happens to it goes through one queue. Each step is: respond, seal, store, and only
 * then tell the phones. The state is the fold of what is stored, and never ahead of it.
 */
export class Room {
  private state: JobState = EMPTY;
  private end: Head;
  /** Where the stored log fails its check. Such a room only reads. */
  private fault: ChainFault | undefined;
  /** The store failed during an append, so it may hold more than we know. */
  private unsure = false;
  /** Read from the store, and no one of the crew has come since. */
  private asleep = false;
  private queue: Promise<unknown> = Promise.resolve();
  private readonly members = new Set<Member>();
  private cancelWake: (() => void) | undefined;
  private grace: NodeJS.Timeout | undefined;
  private closed = false;
  private lastUsed = performance.now();
  /** What the person who is on the ladder now was shown last. */
  private receipt: Receipt | undefined;
  /** Utterances that the speech engine works on now. */
  readonly talksUnderWay = new Set<MessageId>();

  private constructor(
    readonly job: JobId,
    private readonly deps: RoomDeps,
  ) {
    this.end = emptyHead(job);
  }

  /** Folds a stored log that something names. Undefined when it is a site's. Rejects with `StoreFailure`. */
  static async load(job: JobId, deps: RoomDeps): Promise<Room | undefined> {
    const room = new Room(job, deps);
    room.fault = await checkNamed(deps.store, job);
    if (room.fault) deps.telemetry.damaged(job, room.fault);
    await room.readOn();
    if (room.state.setup === undefined && !room.fault) return undefined;
    room.asleep = true;
    return room;
  }

  /** Lets the job's time go on once someone of its crew is back. Only looking at a record must not add to it. */
  private wake(): void {
    if (!this.asleep) return;
    this.asleep = false;
    // A phone that was online when the server stopped comes back in a moment, or is gone.
    this.syncLinksLater();
    this.submit({ kind: 'tick' });
  }

  /** Where the log ends. Of a broken log: where its good part ends. */
  get head(): Head {
    return this.end;
  }

  /** Takes nothing more: the stored log was found to be damaged meanwhile. */
  breakAt(fault: ChainFault): void {
    this.fault ??= fault;
  }

  /** In words for people: what is wrong with the log, if anything. */
  get brokenText(): string | undefined {
    return this.fault && brokenLogText('job', this.fault);
  }

  /** Somebody is here. */
  get isInUse(): boolean {
    return this.members.size > 0;
  }

  /** Nobody is here, nothing is due, and nothing has happened since `then` (a time of `performance.now`). */
  isIdleSince(then: number): boolean {
    return this.members.size === 0 && this.cancelWake === undefined && this.lastUsed < then;
  }

  /** Someone is about to come in. */
  touch(): void {
    this.lastUsed = performance.now();
  }

  /** The one phone of a person alone is at both ends. */
  isOnline(seat: Seat): boolean {
    return this.memberAt(isOnePhone(this.state.setup?.alone) ? 'panel' : seat) !== undefined;
  }

  private memberAt(seat: Seat): Member | undefined {
    for (const member of this.members) if (member.role === seat) return member;
    return undefined;
  }

  /** Whether a phone has ever taken this seat. */
  isSeated(seat: Seat): boolean {
    return this.state.seats[seat] !== undefined;
  }

  /** Signed, and nothing has changed since. */
  get isSigned(): boolean {
    return this.state.signed !== undefined && this.state.changedBy === undefined;
  }

  /** What people are likely to say now. */
  get expected(): Expectation | undefined {
    return expectation(this.state);
  }

  /** The sound of a talk, made ready to be kept where the crew wants that. */
  soundToKeep(pcm: Buffer): SoundToKeep | undefined {
    const { soundDays = 0 } = this.state;
    return soundDays > 0 && pcm.length > 1 ? soundToKeep(pcm, soundDays, this.deps.clock.now()) : undefined;
  }

  presence(): Presence {
    const at = (seat: Seat) => (this.isOnline(seat) ? 'online' : this.isSeated(seat) ? 'away' : 'empty');
    const watchers = [...this.members].filter((m) => m.role === 'watcher');
    const watching = [...new Set(watchers.flatMap(({ name }) => (name === undefined ? [] : [name])))];
    return {
      panel: at('panel'),
      emitter: at('emitter'),
      watchers: watchers.length,
      ...(watching.length > 0 && { watching }),
    };
  }

  tellPresence(): void {
    this.tell({ t: 'presence', presence: this.presence() });
  }

  /** The phone on the ladder has shown or spoken an instruction. Not logged: it says so again when it comes back. */
  received(told: Receipt): void {
    const news = receiptNews(told, this.receipt, this.state.instruction?.seq);
    if (!news) return;
    this.receipt = news;
    this.tell({ t: 'receipt', ...news });
  }

  /** Only in turn, and after checking the member's pass in the same turn: the seat may go to another phone. */
  enter(member: Member): void {
    if (member.role !== 'watcher') {
      const before = this.memberAt(member.role);
      if (before) {
        this.members.delete(before);
        before.dismiss('replaced', NEWER_CONNECTION);
      }
    }
    this.members.add(member);
    this.tellPresence();
    if (this.receipt) member.send({ t: 'receipt', ...this.receipt });
    if (member.role === 'watcher') return;
    this.wake();
    this.syncLink(member.role);
  }

  leave(member: Member): void {
    if (!this.members.delete(member)) return;
    this.tellPresence();
    if (member.role !== 'watcher') this.syncLink(member.role);
  }

  tell(message: ServerMessage): void {
    for (const member of this.members) member.send(message);
  }

  /** To the phone that has the seat now, which may not be the connection that asked. */
  tellSeat(seat: Seat, message: ServerMessage): void {
    this.memberAt(seat)?.send(message);
  }

  /**
   * Gives an input to the job. A message id that the log already has gives its first outcome again.
   * `enclosure`: lies beside the first entry that the input leads to. Never rejects.
   */
  submit(input: Input, ref?: MessageId, enclosure?: Enclosure): Promise<Outcome> {
    return this.enqueue(() => this.take(input, ref, undefined, enclosure));
  }

  /**
   * Seats a phone that has a join code, unless the seat's phone is online. `keys` uses up the code, and is stored
   * together with the entry.
   */
  seat(seat: Seat, sitter: Sitter, keys: KeyChange): Promise<Outcome> {
    return this.enqueue(async () => {
      if (this.isOnline(seat)) {
        return refused('seat-in-use', closeThereText(seat));
      }
      const takeover = this.isSeated(seat);
      const outcome = await this.take(
        { kind: 'seated', seat, ...sittingOf(this.job, sitter, digest), takeover },
        undefined,
        keys,
      );
      if (outcome.kind === 'taken') this.seated(seat);
      return outcome;
    });
  }

  /**
   * The panel's answer to a phone that asks. After a yes the key of its question is that of the seat, and no code for the
   * seat is good any more.
   */
  admit(
    seat: Seat,
    { key, mark, sitter }: Question,
    answer: AdmissionAnswer,
    ref: MessageId,
  ): Promise<Outcome> {
    return this.enqueue(async () => {
      if (answer === 'yes' && this.isOnline(seat)) return refused('seat-in-use', closeThereText(seat));
      const takeover = this.isSeated(seat);
      const keys: KeyChange = { revoke: seat, issue: [{ token: key, role: seat }], voids: seat };
      const outcome = await this.take(
        { kind: 'admission', seat, mark, answer, ...sittingOf(this.job, sitter, digest), takeover },
        ref,
        answer === 'yes' ? keys : undefined,
      );
      if (outcome.kind === 'taken' && answer === 'yes') this.seated(seat);
      return outcome;
    });
  }

  /** Another phone has the seat. */
  private seated(seat: Seat): void {
    // What the phone before it has shown says nothing about this one.
    if (seat === 'emitter') this.receipt = undefined;
    this.tellPresence();
    this.syncLinksLater();
  }

  /** Everyone who is connected. */
  get present(): Iterable<Member> {
    return this.members;
  }

  /** Takes a key away, and ends what is connected with it. `next`: of a link, what takes its place. */
  withdraw(
    by: 'panel' | 'supervisor',
    { token, role }: HeldPass,
    next: Digest | undefined,
    ref: MessageId,
  ): Promise<Outcome> {
    return this.enqueue(async () => {
      const keys: KeyChange = { withdraw: token, ...(next && { issue: [{ token: next, role }] }) };
      const outcome = await this.take({ kind: 'key-withdrawn', by, role }, ref, keys);
      if (outcome.kind !== 'taken') return outcome;
      for (const member of [...this.members]) if (member.key === token) member.dismiss('revoked', KEY_TAKEN);
      return outcome;
    });
  }

  /** Stores a change of keys without an entry. Rejects with `StoreFailure`. */
  async changeKeys(keys: KeyChange): Promise<void> {
    await this.deps.store.append(this.job, [], keys);
  }

  /**
   * Sends everyone away and waits until all work in progress is stored. That the phones are gone is not logged: it
   * is the server that leaves, and they come back to the next one.
   */
  async close(): Promise<void> {
    for (const member of this.members) member.goAway();
    this.members.clear();
    clearTimeout(this.grace);
    await this.queue;
    this.closed = true;
    this.cancelWake?.();
  }

  /** Runs `work` after everything before it; everything after it waits. */
  inTurn<T>(work: () => Promise<T>): Promise<T> {
    this.touch();
    const done = this.queue.then(work);
    this.queue = done.catch(() => {});
    return done;
  }

  private enqueue<T extends Outcome | undefined>(work: () => Promise<T>): Promise<T | Outcome> {
    return this.inTurn(() =>
      work().catch((error: unknown) => {
        this.deps.telemetry.notStored(this.job, error);
        this.unsure = true;
        return refused('store-failed', NOT_SAVED_SENT_AGAIN);
      }),
    );
  }

  private async take(
    input: Input,
    ref?: MessageId,
    keys?: KeyChange,
    enclosure?: Enclosure,
  ): Promise<Outcome> {
    if (this.closed) return refused('store-failed', NOT_SAVED_SENT_AGAIN);
    if (this.unsure) await this.readOn();
    if (this.fault) return refused('log-broken', brokenLogText('job', this.fault));
    const now = this.deps.clock.now();
    const response =
      input.kind === 'sign' && isOfOther(this.end, input.head)
        ? refused('not-signable', OTHER_RECORD)
        : await this.respondTo(input, now);
    // Only here: the store itself finds a message that is in the log already when there is something to be stored.
    if (ref !== undefined && (response.kind === 'refused' || response.drafts.length === 0)) {
      const seq = await this.deps.store.seqOf(this.job, ref);
      if (seq !== undefined) return { kind: 'taken', seq };
    }
    if (response.kind === 'refused') return response;

    const { entries } = sealHere(this.end, response.drafts, now, { ref, version: this.state.logVersion });
    if (entries.length > 0 || keys) {
      const appended = await this.deps.store.append(this.job, entries, keys, {
        ...(enclosure && entries[0] && { put: { ...enclosure, seq: entries[0].seq } }),
        ...(input.kind === 'remove-photo' && { remove: input.fact.photo }),
        ...(input.kind === 'forget-names' && { forget: input.fact.entries }),
      });
      if (appended.kind === 'duplicate') return { kind: 'taken', seq: appended.seq };
      if (appended.kind === 'spent') return appended;
      if (appended.kind === 'conflict')
        throw new Error(
          `the stored log has ${appended.head.count} entries, this room knows ${this.end.count}`,
        );
    }
    this.follow(entries, response.state);
    this.rules.stored(this.job, this.state);
    if (input.kind === 'forget-names') await this.foldAgain();
    this.deps.onStored?.(entries);
    this.wakeAt(response.wakeAt);
    return { kind: 'taken', seq: entries[0]?.seq ?? Math.max(0, this.end.count - 1) };
  }

  private get rules(): Rules {
    return this.deps.rules ?? RULES_HERE;
  }

  /** A bug in the rules must not make a phone send the same words for ever. */
  private async respondTo(input: Input, now: number): Promise<Decision> {
    try {
      return await this.rules.respond(this.job, this.state, input, now);
    } catch (error) {
      if (!(error instanceof RulesFailed)) throw error;
      this.deps.log.error(
        { job: this.job, input: input.kind, err: error.cause },
        'the rules failed on an input',
      );
      return {
        kind: 'refused',
        reason: 'bad-message',
        text: RULES_FAILED,
      };
    }
  }

  /** Stored entries are sent to the members. `state`: after them, where they are folded already. */
  private follow(entries: readonly Entry[], state = entries.reduce<JobState>(fold, this.state)): void {
    const last = entries.at(-1);
    if (!last) return;
    this.state = state;
    this.end = headAfter(last);
    for (const member of this.members) member.entries(entries);
  }

  /** So that names which were forgotten are not in memory either. */
  private async foldAgain(): Promise<void> {
    let state = EMPTY;
    while (state.count < this.end.count) {
      const batch = await this.deps.store.read(this.job, state.count - 1, READ_BATCH);
      if (batch.length === 0) return;
      state = batch.reduce(fold, state);
    }
    this.state = state;
  }

  /** In turn: knows afterwards all that the store has. Rejects with `StoreFailure`. */
  catchUp(): Promise<void> {
    return this.readOn();
  }

  /** Reads what the store holds after our head, up to the first fault. */
  private async readOn(): Promise<void> {
    for (;;) {
      const sound = (this.fault?.seq ?? Number.POSITIVE_INFINITY) - this.end.count;
      const batch = await this.deps.store.read(this.job, this.end.count - 1, Math.min(READ_BATCH, sound));
      if (batch.length === 0) break;
      this.follow(batch);
    }
    this.unsure = false;
  }

  /** Logs that a phone has come or gone, if the log does not say so yet. */
  private syncLink(seat: Seat): void {
    this.enqueue(async () => {
      const online = this.isOnline(seat);
      const known = this.state.seats[seat];
      return known && known.online !== online ? this.take({ kind: 'link', seat, online }) : undefined;
    });
  }

  private syncLinksLater(): void {
    clearTimeout(this.grace);
    this.grace = setTimeout(() => {
      for (const seat of Seat.options) this.syncLink(seat);
    }, this.deps.graceMs);
  }

  private wakeAt(at: number | undefined): void {
    this.cancelWake?.();
    this.cancelWake = undefined;
    if (at === undefined || this.closed) return;
    this.cancelWake = this.deps.clock.after(
      Math.max(at - this.deps.clock.now(), SHORTEST_WAKE_MS),
      async () => {
        this.cancelWake = undefined;
        const outcome = await this.submit({ kind: 'tick' });
        if (outcome.kind === 'refused') this.wakeAt(this.deps.clock.now() + TICK_AGAIN_MS);
      },
    );
  }
}
