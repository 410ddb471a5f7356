import { nanoid } from 'nanoid';
import type { Input, Response } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import { emptyHead, findFault, headAfter } from '../../src/log/chain.ts';
import { sealAll } from '../../src/log/seal-all.ts';
import type { Entry } from '../../src/model/entry.ts';
import { SALT_BYTES } from '../../src/model/forgotten.ts';
import type { Head, MessageId, Seq } from '../../src/model/ids.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { namesBeside } from '../../src/model/written.ts';
import { HERE_LOST, NOT_KEPT_SAY_AGAIN, OPEN_TWICE } from '../../src/phrases/brought.ts';
import type { Sitter } from '../../src/protocol/access.ts';
import { sittingOf } from '../../src/protocol/sitting.ts';
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

/**
 * One job without a server. What the room of a server does is done by this page: each step is respond, seal, keep, and only then
 * tell. The state is the fold of what is kept, and never ahead of it.
 */
export class RoomHere {
  private queue: Promise<unknown> = Promise.resolve();
  private wake: ReturnType<typeof setTimeout> | undefined;
  /** Told of entries once they are kept. */
  onEntries: (entries: readonly Entry[]) => void = () => {};

  private constructor(
    readonly entries: Entry[],
    private end: Head,
    private state: JobState,
  ) {}

  /** A new job, of one person with this phone. Gives its id. @throws {NotKept} */
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

  /** A message that the log already has gives its first outcome again. Never rejects. */
  submit(input: Input, ref?: MessageId): Promise<Outcome> {
    const done = this.queue.then(() =>
      this.take(input, ref).catch((error: unknown): Outcome => {
        const isTwice = error instanceof NotKept && error.isOpenElsewhere;
        return { kind: 'refused', reason: 'store-failed', text: isTwice ? OPEN_TWICE : NOT_KEPT_SAY_AGAIN };
      }),
    );
    this.queue = done;
    return done;
  }

  /** Nothing wakes it any more. */
  close(): void {
    clearTimeout(this.wake);
  }

  private async take(input: Input, ref?: MessageId): Promise<Outcome> {
    const before = ref === undefined ? undefined : this.entries.find((entry) => entry.ref === ref);
    if (before) return { kind: 'taken', seq: before.seq };
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
      this.onEntries(sealed);
    }
    this.wakeAt(response.wakeAt);
    return { kind: 'taken', seq: sealed[0]?.seq ?? Math.max(0, this.end.count - 1) };
  }

  private wakeAt(at: number | undefined): void {
    this.close();
    if (at === undefined) return;
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
