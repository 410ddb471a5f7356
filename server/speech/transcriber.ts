import type { Expectation } from '../../src/conversation/expectation.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import type { Voice } from '../../src/model/voice.ts';

/** A text that may have been said. `confidence`: 0 to 1; those of all alternatives add up to at most 1. */
export interface Alternative {
  text: string;
  confidence: number;
}

export interface Transcript {
  /** The most likely text. Empty for silence and noise. */
  text: string;
  confidence: number;
  /** All that may have been said, with `text`, most likely first. */
  alternatives: Alternative[];
  /** Of the words; English without it. */
  language?: TypedLanguage | undefined;
  /** From the end of the sound to the text, with waiting, ms. */
  ms: number;
}

export interface TranscribeOptions {
  /** What people are likely to say now. Other words are heard too, but must be clearer. */
  expect?: Expectation;
  /** What a reading said of the voice that speaks. */
  voice?: Voice;
}

/** Turns speech into text. Calls may overlap, and are answered in order. */
export interface Transcriber {
  readonly name: string;
  /** Mono, 16 kHz, -1 to 1. Rejects with `SpeechUnavailable` or `SpeechTimeout`. */
  transcribe(pcm16k: Float32Array, options?: TranscribeOptions): Promise<Transcript>;
  /**
   * What ten digits that somebody read say of that voice; undefined where they were not heard as such. Rejects as `transcribe` does. An engine
   * without it learns nothing of voices.
   */
  learn?(pcm16k: Float32Array): Promise<Voice | undefined>;
  close(): Promise<void>;
}

/** There is no speech engine, or it failed. The message says what to do. */
export class SpeechUnavailable extends Error {
  override name = 'SpeechUnavailable';
}

/** The speech engine did not answer in time. */
export class SpeechTimeout extends Error {
  override name = 'SpeechTimeout';
}
