import { nanoid } from 'nanoid';
import type { Input, Response } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import { emptyHead, findFault, headAfter } from '../../src/log/chain.ts';
import { sealAll } from '../../src/log/seal-all.ts';
import { isOnePhone } from '../../src/model/alone.ts';
import type { Entry } from '../../src/model/entry.ts';
import { Seat } from '../../src/model/facts.ts';
import { SALT_BYTES } from '../../src/model/forgotten.ts';
import type { Head, MessageId, Seq } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { namesBeside } from '../../src/model/written.ts';
import { HERE_LOST, NOT_KEPT_SAY_AGAIN, OPEN_TWICE } from '../../src/phrases/kept-here.ts';
import { closeThereText, NEWER_CONNECTION } from '../../src/phrases/links.ts';
import type { Sitter } from '../../src/protocol/access.ts';
import { receiptNews } from '../../src/protocol/receipt.ts';
import { sittingOf } from '../../src/protocol/sitting.ts';
import { DEAD_AFTER_MS, type Presence, type Receipt, type ServerMessage } from '../../src/protocol/socket.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { trustworthy } from '../link/known.ts';
import { addEntries, NotKept, readEntries } from './log-store.ts';

const JOB_ID_LENGTH = 12;
/** 128 bits, base64url. */
const TOKEN_LENGTH = 22;
/** No rule can keep the page busy for ever. */
const SHORTEST_WAKE_MS = 20;
const TICK_AGAIN_MS = 1_000;

export const newToken = (): string => nanoid(TOKEN_LENGTH);

export type Outcome =
  | { kind: 'taken'; seq: Seq }
  | { kind: 'refused'; reason: Extract<Response, { kind: 'refused' }>['reason']; text: string };

/** The log that this phone kept is not whole. */
export class LostHere extends Error {
  override name = 'LostHere';
}

/** Someone in a room: this page, or the phone at the emitter that this one has met. */
export interface Member {
  readonly seat: Seat;
  tell(message: ServerMessage): void;
  /** Entries, once they are kept. */
  give(entries: readonly Entry[]): void;
}

/**
 * One job without a server. What the room of a server does is done by this page: each step is respond, seal, keep, and only then
 * tell. The state is the fold of what is kept, and never ahead of it.
 */
export class RoomHere {
  private queue: Promise<unknown> = Promise.resolve();
  private wake: ReturnType<typeof setTimeout> | undefined;
  private grace: ReturnType<typeof setTimeout> | undefined;
  private readonly members = new Set<Member>();
  private isOver = false;
  /** What the phone at the emitter has shown last. */
  private receipt: Receipt | undefined;

  private constructor(
    readonly entries: Entry[],
    private end: Head,
    private state: JobState,
  ) {}

  /** A new job, with this phone at the panel. Gives its id. @throws {NotKept} */
  static async begin(setup: JobSetup, sitter: Sitter): Promise<string> {
    const job = nanoid(JOB_ID_LENGTH);
    const room = new RoomHere([], emptyHead(job), EMPTY);
    await room.take({ kind: 'open', setup });
    await room.take({ kind: 'seated', seat: 'panel', ...sittingOf(job, sitter), takeover: false });
    room.close();
    return job;
  }

  /** @throws {NotKept} @throws {LostHere} */
  static async load(job: string): Promise<RoomHere> {
    const kept = await readEntries(job);
    const entries = trustworthy(kept);
    const last = entries.at(-1);
    if (!last || entries.length < kept.length || findFault(entries, headAfter(last)))
      throw new LostHere(HERE_LOST);
    return new RoomHere(entries, headAfter(last), entries.reduce<JobState>(fold, EMPTY));
  }

  get head(): Head {
    return this.end;
  }

  /** Site and beam pair. */
  get title(): string {
    const { setup } = this.state;
    return setup ? `${setup.site}, ${setup.pair}` : '';
  }

  presence(): Presence {
    const at = (seat: Seat) =>
      this.isOnline(seat) ? 'online' : this.state.seats[seat] === undefined ? 'empty' : 'away';
    return { panel: at('panel'), emitter: at('emitter'), watchers: 0 };
  }

  /** A newer connection of a seat takes the place of the one before. */
  enter(member: Member): void {
    for (const before of this.members) {
      if (before.seat !== member.seat) continue;
      this.members.delete(before);
      before.tell({ t: 'refused', reason: 'replaced', text: NEWER_CONNECTION });
    }
    this.members.add(member);
    this.tell({ t: 'presence', presence: this.presence() });
    if (this.receipt) member.tell({ t: 'receipt', ...this.receipt });
    void this.submit({ kind: 'tick' });
    this.syncLink(member.seat);
    // A phone that was here when this page was closed comes back in a moment, or is gone.
    clearTimeout(this.grace);
    this.grace = setTimeout(() => {
      for (const seat of Seat.options) this.syncLink(seat);
    }, DEAD_AFTER_MS);
  }

  leave(member: Member): void {
    if (!this.members.delete(member)) return;
    this.tell({ t: 'presence', presence: this.presence() });
    this.syncLink(member.seat);
    if (this.members.size === 0) this.close();
  }

  /** The phone on the ladder has shown or spoken an instruction. */
  received(told: Receipt): void {
    const news = receiptNews(told, this.receipt, this.state.instruction?.seq);
    if (!news) return;
    this.receipt = news;
    this.tell({ t: 'receipt', ...news });
  }

  /** Gives the seat at the emitter to a phone that this one has met. The phone that has it keeps it. */
  seatGuest(sitter: Sitter): Promise<Outcome> {
    return this.inTurn(async () => {
      const sitting = sittingOf(this.end.job, sitter);
      const before = this.state.seats.emitter;
      if (before?.phone !== undefined && before.phone === sitting.phone)
        return { kind: 'taken', seq: this.end.count - 1 };
      if (this.isOnline('emitter'))
        return { kind: 'refused', reason: 'seat-in-use', text: closeThereText('emitter') };
      this.receipt = undefined;
      return this.take({ kind: 'seated', seat: 'emitter', ...sitting, takeover: before !== undefined });
    });
  }

  /** The log is no longer kept here. Nothing comes to it from here on, and the phone at the emitter is told why. */
  finish(reason: Refusal, text: string): void {
    this.isOver = true;
    this.close();
    for (const member of this.members)
      if (member.seat === 'emitter') member.tell({ t: 'refused', reason, text });
    this.members.clear();
  }

  /** A message that the log already has gives its first outcome again. Never rejects. */
  submit(input: Input, ref?: MessageId): Promise<Outcome> {
    return this.inTurn(() => this.take(input, ref));
  }

  private inTurn<T extends Outcome | undefined>(work: () => Promise<T>): Promise<T | Outcome> {
    const done = this.queue.then(() =>
      work().catch((error: unknown): Outcome => {
        const isTwice = error instanceof NotKept && error.isOpenElsewhere;
        return { kind: 'refused', reason: 'store-failed', text: isTwice ? OPEN_TWICE : NOT_KEPT_SAY_AGAIN };
      }),
    );
    this.queue = done;
    return done;
  }

  private tell(message: ServerMessage): void {
    for (const member of this.members) member.tell(message);
  }

  /** The one phone of a person alone is at both ends. */
  private isOnline(seat: Seat): boolean {
    const end = isOnePhone(this.state.setup?.alone) ? 'panel' : seat;
    return [...this.members].some((member) => member.seat === end);
  }

  /** Logs that a phone has come or gone, if the log does not say so yet. One phone alone never meets another. */
  private syncLink(seat: Seat): void {
    void this.inTurn(async () => {
      const online = this.isOnline(seat);
      const known = this.state.seats[seat];
      if (!known || known.online === online || isOnePhone(this.state.setup?.alone)) return undefined;
      return this.take({ kind: 'link', seat, online });
    });
  }

  /** Nothing wakes it any more. */
  private close(): void {
    clearTimeout(this.wake);
    clearTimeout(this.grace);
  }

  private async take(input: Input, ref?: MessageId): Promise<Outcome> {
    const before = ref === undefined ? undefined : this.entries.find((entry) => entry.ref === ref);
    if (before) return { kind: 'taken', seq: before.seq };
    if (this.isOver) return { kind: 'refused', reason: 'store-failed', text: OPEN_TWICE };
    const now = Date.now();
    const response = respond(this.state, input, now);
    if (response.kind === 'refused') return response;
    const { entries: sealed } = sealAll(this.end, response.drafts, now, {
      ref,
      salt: namesBeside(response.state.logVersion) ? newSalt : undefined,
    });
    if (sealed.length > 0) await addEntries(this.end.job, sealed);
    this.entries.push(...sealed);
    this.state = response.state;
    const last = sealed.at(-1);
    if (last) {
      this.end = headAfter(last);
      for (const member of this.members) member.give(sealed);
    }
    this.wakeAt(response.wakeAt);
    return { kind: 'taken', seq: sealed[0]?.seq ?? Math.max(0, this.end.count - 1) };
  }

  private wakeAt(at: number | undefined): void {
    clearTimeout(this.wake);
    if (at === undefined || this.isOver) return;
    const tick = async () => {
      const outcome = await this.submit({ kind: 'tick' });
      if (outcome.kind === 'refused') this.wakeAt(Date.now() + TICK_AGAIN_MS);
    };
    this.wake = setTimeout(() => void tick(), Math.max(at - Date.now(), SHORTEST_WAKE_MS));
  }
}

/** Hashed with the names that lie beside an entry, so that its hash tells nobody what they were. */
const newSalt = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(SALT_BYTES)), (byte) =>
    byte.toString(16).padStart(2, '0'),
  ).join('');
