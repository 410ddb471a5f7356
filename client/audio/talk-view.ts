import type { Seq } from '../../src/model/ids.ts';
import type { Heard } from '../../src/speech/heard.ts';
import type { TalkEvent, TalkState } from './talk.ts';

export interface TalkView {
  state: TalkState;
  /** Loudness now, dB below full scale. */
  db: number;
  clipping: boolean;
  /** What went wrong last time. */
  failure: string | undefined;
  /** Talk without the button. `hearing`: speech is let through now. */
  handsFree: 'off' | 'opening' | 'listening' | 'hearing';
  /** The noise is almost as loud as the voice. */
  tooLoud: boolean;
  /** The speech model in this phone, for times without the link or without the server's model. */
  onDevice: 'off' | 'loading' | 'ready';
  /** Of ten digits read once: somebody reads, they were not heard as such, or how they were heard. */
  voice: 'unknown' | 'reading' | 'unclear' | 'well' | 'badly';
  /** Fetches its code, so that the first press does not wait for it. */
  ahead(): void;
  feed(event: TalkEvent): void;
  setHandsFree(on: boolean): void;
  setOnDevice(on: boolean): void;
  /** Begins a reading of ten digits; a press of the talk button ends it. */
  read(): void;
  forgetVoice(): void;
}

export type Shown = Omit<
  TalkView,
  'ahead' | 'feed' | 'setHandsFree' | 'setOnDevice' | 'read' | 'forgetVoice'
>;

/** What the talk needs from the rest of its seat. */
export interface TalkWorld {
  re: Seq | undefined;
  /** This phone is speaking. */
  speaking: boolean;
  /** Words heard by this phone, with the instruction that they answer. */
  heard(words: Heard, re: Seq | undefined): void;
}
