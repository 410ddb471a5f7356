import { nanoid } from 'nanoid';
import type * as z from 'zod/mini';
import type { JobId } from '../../src/model/ids.ts';
import {
  ANOTHER_ASKS,
  ASKED_TOO_OFTEN,
  JOB_CLOSED,
  NO_MORE_QUESTIONS,
  NOT_ASKING,
  PANEL_AWAY,
  UNKNOWN_CALL,
} from '../../src/phrases/admission.ts';
import { closeThereText } from '../../src/phrases/links.ts';
import type { Ask, AskAnswer, Asked } from '../../src/protocol/ask.ts';
import type { AskShown } from '../../src/protocol/ask-shown.ts';
import type { ClientMessage } from '../../src/protocol/socket.ts';
import { Buckets } from '../guard/allowance.ts';
import type { Limits } from '../guard/limits.ts';
import { digest, newToken } from '../guard/secrets.ts';
import type { Answer } from '../http/http.ts';
import type { Clock } from '../process/clock.ts';
import type { Digest, Store } from '../store/store.ts';
import { Door, newWord, type Question, stateOf } from './door.ts';
import type { Outcome, Room } from './room.ts';

interface AsksDeps {
  readonly clock: Clock;
  readonly store: Pick<Store, 'pass' | 'seqOf'>;
  readonly limits: Pick<Limits, 'asksPerBlock' | 'askLastsMs' | 'askShutMs'>;
  /** The room of a job that is live. */
  readonly live: (job: JobId) => Promise<Room | undefined>;
}

type Admit = Extract<ClientMessage, { t: 'admit' }>;

const refused = <R extends 'not-now' | 'bad-target' | 'bad-code' | 'too-fast' | 'seat-in-use' | 'log-broken'>(
  reason: R,
  text: string,
) => ({ kind: 'refused' as const, reason, text });

/**
 * Phones without a code that ask the panel to let them in. Kept in memory: a server that starts again has no questions,
 * and new words. What the panel answered is in the log.
 */
export class Asks {
  private readonly doors = new Map<JobId, Door>();
  private readonly jobs = new Map<string, JobId>();
  private readonly questions = new Map<Digest, Question>();
  private readonly asksOf: Buckets;

  constructor(private readonly deps: AsksDeps) {
    this.asksOf = new Buckets(deps.limits.asksPerBlock);
  }

  /** The word of a job that is live. */
  wordOf(job: JobId): string {
    return this.doorOf(job).word;
  }

  /** Nobody is in this job any more. */
  forget(job: JobId): void {
    const door = this.doors.get(job);
    if (door) this.jobs.delete(door.word);
    this.doors.delete(job);
  }

  private doorOf(job: JobId): Door {
    const known = this.doors.get(job);
    if (known) return known;
    const door = new Door(
      newWord((word) => this.jobs.has(word)),
      this.deps.limits.askShutMs,
    );
    this.doors.set(job, door);
    this.jobs.set(door.word, job);
    return door;
  }

  /** `block`: of addresses, where the phone is. The same phone again keeps its question, and gets a new key to it. */
  async ask({ word, ...sitter }: z.output<typeof Ask>, block: string): Promise<Answer<Asked>> {
    if (!this.asksOf.of(block, performance.now()).take(performance.now()))
      return refused('too-fast', ASKED_TOO_OFTEN);
    const job = this.jobs.get(word);
    const room = job === undefined ? undefined : await this.deps.live(job);
    const door = job === undefined ? undefined : this.doors.get(job);
    if (!room || !door) return refused('bad-code', UNKNOWN_CALL);
    const now = this.deps.clock.now();
    const open = door.open(now);
    const key = newToken();
    if (open && sitter.phone !== undefined && open.sitter.phone === sitter.phone) {
      this.questions.delete(open.key);
      open.key = digest(key);
      this.questions.set(open.key, open);
      return { kind: 'ok', value: { asker: key, mark: open.mark, expiresAt: open.expiresAt } };
    }
    const refusal = this.refusal(room, door, now);
    if (refusal) return refusal;
    const question: Question = {
      id: nanoid(12),
      mark: door.nextMark(),
      sitter,
      expiresAt: now + this.deps.limits.askLastsMs,
      key: digest(key),
    };
    door.ask(question);
    this.keep(question, now);
    room.tellSeat('panel', { t: 'ask', asks: this.shown(room, question) });
    return { kind: 'ok', value: { asker: key, mark: question.mark, expiresAt: question.expiresAt } };
  }

  private refusal(room: Room, door: Door, now: number) {
    if (room.brokenText !== undefined) return refused('log-broken', room.brokenText);
    if (room.isSigned) return refused('bad-target', JOB_CLOSED);
    if (room.isOnline('emitter')) return refused('seat-in-use', closeThereText('emitter'));
    if (!room.isOnline('panel')) return refused('not-now', PANEL_AWAY);
    if (door.isShut(now)) return refused('not-now', NO_MORE_QUESTIONS);
    return door.open(now) ? refused('not-now', ANOTHER_ASKS) : undefined;
  }

  /** What waits for the panel of a job, for its phone when it comes. */
  waitingIn(room: Room): AskShown | undefined {
    const question = this.doors.get(room.job)?.open(this.deps.clock.now());
    return question && this.shown(room, question);
  }

  private shown(room: Room, { id, mark, sitter: { device, person }, expiresAt }: Question): AskShown {
    const replaces = room.isSeated('emitter');
    return { ask: id, mark, device, ...(person && { person }), replaces, expiresAt };
  }

  /** The panel answers. Said again, it gets the same outcome. */
  async admit(room: Room, { id: ref, ask, answer }: Admit): Promise<Outcome> {
    const before = await this.deps.store.seqOf(room.job, ref);
    if (before !== undefined) return { kind: 'taken', seq: before };
    const door = this.doors.get(room.job);
    const question = door?.open(this.deps.clock.now());
    if (!door || question?.id !== ask) return refused('bad-target', NOT_ASKING);
    const outcome = await room.admit('emitter', question, answer, ref);
    if (outcome.kind !== 'taken') return outcome;
    door.settle(question, answer, this.deps.clock.now());
    room.tellSeat('panel', { t: 'ask' });
    return outcome;
  }

  /** What became of a question, for whoever has its key; undefined where this server does not know it. */
  async answerTo(key: string): Promise<AskAnswer | undefined> {
    const pass = await this.deps.store.pass(digest(key));
    if (pass && !pass.revoked && pass.role === 'emitter')
      return { state: 'admitted', job: pass.job, seat: 'emitter' };
    const question = this.questions.get(digest(key));
    return question && stateOf(question, this.deps.clock.now());
  }

  private keep(question: Question, now: number): void {
    for (const [key, { expiresAt }] of this.questions)
      if (expiresAt + this.deps.limits.askLastsMs < now) this.questions.delete(key);
    this.questions.set(question.key, question);
  }
}
