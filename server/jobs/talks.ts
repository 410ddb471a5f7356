import type { Input } from '../../src/conversation/input.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { MessageId } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { TOO_MANY_TALKS } from '../../src/phrases/limits.ts';
import { HALF_SAMPLE, NO_ENGINE, NO_TALK, SOUND_TOO_FAST } from '../../src/phrases/no-speech.ts';
import type { ServerMessage } from '../../src/protocol/socket.ts';
import type { Limits } from '../guard/limits.ts';
import type { HeavyWork } from '../guard/turns.ts';
import type { SpeechService } from '../speech/service.ts';
import type { Store } from '../store/store.ts';
import type { Room } from './room.ts';
import { type Purpose, Talk } from './talk.ts';

interface Phone {
  send(message: ServerMessage): void;
  refuse(reason: Refusal, text: string, id?: MessageId): void;
}

interface TalksDeps {
  speech: SpeechService;
  store: Store;
  limits: Limits;
  heavy: Pick<HeavyWork, 'talks'>;
}

type UnheardWhy = Extract<Input, { kind: 'unheard' }>['why'];
type Stage = Extract<ServerMessage, { t: 'hearing' }>['stage'];

/**
 * The utterances of one connection. One arrives at a time, and what was heard is handled like typed words. Sound
 * without an open talk is ignored in silence: frames may still arrive after their talk was refused.
 */
export class Talks {
  private coming: Talk | undefined;
  /** A reading that was cut short. No log knows it, and its end may still come. */
  private readingOver: MessageId | undefined;

  constructor(
    private readonly seat: Seat,
    private readonly room: Room,
    private readonly deps: TalksDeps,
    private readonly phone: Phone,
    /** The block of addresses of the phone. */
    private readonly place: string,
  ) {}

  async open(id: MessageId, purpose: Purpose): Promise<void> {
    await this.cutShort();
    if (await this.isKnown(id)) return;
    if (!this.deps.speech.isInstalled) {
      this.phone.refuse('speech-unavailable', NO_ENGINE, id);
      return;
    }
    this.coming = new Talk(id, purpose, this.deps.limits.maxTalkBytes);
    this.stage(id, 'listening');
  }

  async sound(part: Buffer, tooFast: boolean): Promise<void> {
    const talk = this.coming;
    if (!talk) return;
    if (part.length % 2 !== 0) {
      this.giveUp(talk, 'bad-message', HALF_SAMPLE);
    } else if (tooFast) {
      this.giveUp(talk, 'too-fast', SOUND_TOO_FAST);
    } else if (!talk.add(part)) {
      this.coming = undefined;
      await this.notWhole(talk, talk.id);
    }
  }

  async end(id: MessageId): Promise<void> {
    const talk = this.coming;
    if (talk?.id === id) {
      this.coming = undefined;
      // Not awaited: other words must not wait for the speech engine.
      void this.listen(talk);
    } else if (id !== this.readingOver && !(await this.isKnown(id))) {
      this.phone.refuse('bad-message', NO_TALK, id);
    }
  }

  async drop(id: MessageId): Promise<void> {
    if (this.coming?.id !== id) return;
    this.coming = undefined;
    this.stage(id, 'done');
  }

  /** The connection or a new talk cut this one short. Logged without its id: it may be sent again, whole. */
  async cutShort(): Promise<void> {
    const talk = this.coming;
    this.coming = undefined;
    if (talk) await this.notWhole(talk);
  }

  private async listen(talk: Talk): Promise<void> {
    const { id, purpose } = talk;
    this.room.talksUnderWay.add(id);
    try {
      this.stage(id, 'working');
      await (purpose === 'reading' ? this.learn(talk) : this.hear(talk, purpose));
    } finally {
      this.room.talksUnderWay.delete(id);
    }
  }

  private async hear({ id, pcm }: Talk, { re, voice }: Exclude<Purpose, 'reading'>): Promise<void> {
    const { seat, room } = this;
    const heard = await this.inTurn(id, () => this.deps.speech.hear(pcm, room.expected, voice));
    if (!heard) return;
    const kept = room.soundToKeep(pcm);
    const sound = kept && { sound: kept.fact };
    if (heard.kind === 'unheard') {
      const input: Input = { kind: 'unheard', seat, why: heard.why, ...sound };
      return this.submit(id, input, 'failed', id, kept?.enclosure);
    }
    const { kind: _, ...said } = heard;
    const words: Input = { kind: 'words', seat, via: 'voice', ...said, ...sound };
    await this.submit(id, re === undefined ? words : { ...words, re }, 'done', id, kept?.enclosure);
  }

  /** What a reading says of the voice goes to the phone, and nowhere else. */
  private async learn({ id, pcm }: Talk): Promise<void> {
    const learnt = await this.inTurn(id, () => this.deps.speech.learn(pcm));
    if (!learnt) return;
    const voice = learnt.kind === 'learnt' ? learnt.voice : undefined;
    this.room.tellSeat(this.seat, { t: 'voice', id, ...(voice && { voice }) });
    this.stage(id, learnt.kind === 'learnt' ? 'done' : 'failed');
  }

  /** Undefined where too much waits already; the phone is told. */
  private async inTurn<T>(id: MessageId, work: () => Promise<T>): Promise<T | undefined> {
    const { room, place } = this;
    const done = this.deps.heavy.talks.take({ key: room.job, place }, work);
    if (done) return done;
    this.phone.refuse('too-fast', TOO_MANY_TALKS, id);
    this.stage(id, 'failed');
    return undefined;
  }

  /** Of a reading that was cut short nothing is logged either. */
  private async notWhole({ id, purpose }: Talk, ref?: MessageId): Promise<void> {
    if (purpose !== 'reading') return this.unheard(id, 'cut-short', ref);
    this.readingOver = id;
    this.room.tellSeat(this.seat, { t: 'voice', id });
    this.stage(id, 'failed');
  }

  private unheard(id: MessageId, why: UnheardWhy, ref?: MessageId): Promise<void> {
    return this.submit(id, { kind: 'unheard', seat: this.seat, why }, 'failed', ref);
  }

  private async submit(
    id: MessageId,
    input: Input,
    stage: Stage,
    ref?: MessageId,
    enclosure?: Enclosure,
  ): Promise<void> {
    const outcome = await this.room.submit(input, ref, enclosure);
    // To the seat, not to this connection: by now the phone may be back on another one.
    if (outcome.kind === 'refused') {
      const { reason, text } = outcome;
      this.room.tellSeat(this.seat, { t: 'refused', id, reason, text });
    } else if (outcome.kind === 'taken' && ref !== undefined) {
      this.room.tellSeat(this.seat, { t: 'ack', id, seq: outcome.seq });
    }
    this.stage(id, outcome.kind === 'taken' ? stage : 'failed');
  }

  /** Whether this talk is in the log (then it is acknowledged again) or with the speech engine. */
  private async isKnown(id: MessageId): Promise<boolean> {
    if (this.room.talksUnderWay.has(id)) return true;
    const seq = await this.deps.store.seqOf(this.room.job, id);
    if (seq === undefined) return false;
    this.phone.send({ t: 'ack', id, seq });
    return true;
  }

  private giveUp(talk: Talk, reason: Refusal, text: string): void {
    this.coming = undefined;
    this.phone.refuse(reason, text, talk.id);
    this.stage(talk.id, 'failed');
  }

  private stage(id: MessageId, stage: Stage): void {
    this.room.tell({ t: 'hearing', seat: this.seat, id, stage });
  }
}
