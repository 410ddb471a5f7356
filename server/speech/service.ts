import type { Logger } from 'pino';
import type { Expectation } from '../../src/conversation/expectation.ts';
import type { Alternative } from '../../src/model/facts.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import type { Voice } from '../../src/model/voice.ts';
import { SAMPLE_RATE, type SpeechState } from '../../src/protocol/socket.ts';
import type { Limits } from '../guard/limits.ts';
import { SpeechTimeout, SpeechUnavailable, type Transcriber } from './transcriber.ts';

/** What became of the sound of one talk. */
export type Outcome =
  | { kind: 'words'; text: string; confidence: number; alternatives: Alternative[]; language?: TypedLanguage }
  | Unheard;

interface Unheard {
  kind: 'unheard';
  why: 'silence' | 'unavailable' | 'timeout' | 'failed';
}

/** A speech engine. It may still be loading: then `ready` resolves once it is loaded, or rejects if it cannot be. */
export type SpeechEngine = Transcriber & { ready?: Promise<void> };

/** A moment of silence, to test whether the speech engine works again. */
const PROBE = new Float32Array(SAMPLE_RATE / 2);

/** 16-bit little-endian PCM as samples for the speech engine, -1 to 1. An odd last byte is left out. */
export function toSamples(pcm: Buffer): Float32Array {
  const samples = new Float32Array(pcm.length >> 1);
  for (let i = 0; i < samples.length; i++) samples[i] = pcm.readInt16LE(2 * i) / 32768;
  return samples;
}

function reasonOf(error: unknown): Unheard['why'] {
  if (error instanceof SpeechUnavailable) return 'unavailable';
  return error instanceof SpeechTimeout ? 'timeout' : 'failed';
}

/** The speech engine with a time limit. All phones know its state: without it, people type. */
export class SpeechService {
  private ready: boolean;
  private retry: NodeJS.Timeout | undefined;
  /** Called when `state` has changed. */
  onChange: () => void = () => {};

  constructor(
    private readonly transcriber: SpeechEngine | undefined,
    private readonly limits: Limits,
    private readonly log: Logger,
  ) {
    this.ready = transcriber !== undefined && transcriber.ready === undefined;
    transcriber?.ready?.then(
      () => this.becomeReady(true),
      () => this.becomeReady(false),
    );
  }

  get isInstalled(): boolean {
    return this.transcriber !== undefined;
  }

  get state(): SpeechState {
    return { name: this.transcriber?.name ?? 'off', ready: this.ready };
  }

  /** `expect`: what people are likely to say now; `voice`: what is known of the one that speaks. Never rejects. */
  async hear(pcm: Buffer, expect?: Expectation, voice?: Voice): Promise<Outcome> {
    if (!this.transcriber) return { kind: 'unheard', why: 'unavailable' };
    const samples = toSamples(pcm);
    if (samples.length === 0) return { kind: 'unheard', why: 'silence' };
    const options = { ...(expect && { expect }), ...(voice && { voice }) };
    const result = await this.within(this.transcriber.transcribe(samples, options));
    if (result.kind === 'unheard') {
      this.becomeReady(false);
      return result;
    }
    this.becomeReady(true);
    const { text, confidence, alternatives, language } = result.value;
    if (text.trim() === '') return { kind: 'unheard', why: 'silence' };
    return { kind: 'words', text, confidence, alternatives, ...(language && { language }) };
  }

  /** What ten digits that somebody read say of that voice; without one, they were not heard as such. Never rejects. */
  async learn(pcm: Buffer): Promise<{ kind: 'learnt'; voice: Voice | undefined } | Unheard> {
    if (!this.transcriber?.learn) return { kind: 'unheard', why: 'unavailable' };
    const result = await this.within(this.transcriber.learn(toSamples(pcm)));
    return result.kind === 'done' ? { kind: 'learnt', voice: result.value } : result;
  }

  private async within<T>(work: Promise<T>): Promise<{ kind: 'done'; value: T } | Unheard> {
    let timer: NodeJS.Timeout | undefined;
    const late = new Promise<Unheard>((resolve) => {
      timer = setTimeout(() => resolve({ kind: 'unheard', why: 'timeout' }), this.limits.transcribeWithinMs);
    });
    const done = work.then(
      (value) => ({ kind: 'done' as const, value }),
      (error: unknown) => {
        this.log.warn({ err: error }, 'the speech engine gave no text');
        return { kind: 'unheard' as const, why: reasonOf(error) };
      },
    );
    const result = await Promise.race([done, late]);
    clearTimeout(timer);
    return result;
  }

  private becomeReady(ready: boolean): void {
    if (!ready) this.probeLater();
    if (ready === this.ready) return;
    this.ready = ready;
    this.onChange();
  }

  private probeLater(): void {
    this.retry ??= setTimeout(async () => {
      this.retry = undefined;
      if (!this.transcriber) return;
      const { kind } = await this.within(this.transcriber.transcribe(PROBE));
      this.becomeReady(kind === 'done');
    }, this.limits.speechRetryMs).unref();
  }

  close(): void {
    clearTimeout(this.retry);
  }
}
