import { nanoid } from 'nanoid';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Seq } from '../../src/advice.ts';
import { type Resampler, resampler, toPcm16 } from '../../src/audio/resample.ts';
import type { Seat } from '../../src/facts.ts';
import { SAMPLE_RATE } from '../../src/protocol.ts';
import type { Connection, Talk } from '../link/connection.ts';
import { levelOf, TOO_LOUD } from './level.ts';
import { type Microphone, MicrophoneError, openMicrophone } from './microphone.ts';
import { IDLE, type TalkEvent, type TalkState, talk } from './talk.ts';

export interface TalkView {
  state: TalkState;
  /** Loudness now, dB below full scale. */
  db: number;
  clipping: boolean;
  /** What went wrong the last time. */
  failure: string | undefined;
  feed(event: TalkEvent): void;
}

interface Shown {
  state: TalkState;
  db: number;
  clipping: boolean;
  failure: string | undefined;
}

const TICK_MS = 100;
/** People let go of the button with their last word: the sound goes on a little. */
const TAIL_MS = 180;
const LINK_LOST = 'The link was lost. Say it again when it is back, or type it: typed words are kept.';
const NO_LINK = 'There is no link now. Type it: typed words are kept and sent later.';

/**
 * The talk button of one seat. `keepOpenMs`: how long the microphone stays open after an utterance, so that
 * the next one is not cut at its start; 0 on a phone whose loudspeaker matters more.
 */
export function useTalk(
  connection: Connection,
  seat: Seat,
  re: Seq | undefined,
  keepOpenMs: number,
): TalkView {
  const [shown, setShown] = useState<Shown>({ state: IDLE, db: -100, clipping: false, failure: undefined });
  const ref = useRef<TalkRunner>(undefined);
  ref.current ??= new TalkRunner(connection, keepOpenMs, (patch) =>
    setShown((old) => ({ ...old, ...patch })),
  );
  const runner = ref.current;
  runner.re = re;

  const { hearing, complaints } = connection.link;
  useEffect(() => {
    const heard = hearing[seat];
    if (heard && (heard.stage === 'done' || heard.stage === 'failed'))
      runner.feed({ on: 'answered', id: heard.id });
    for (const { id } of complaints) if (id) runner.feed({ on: 'answered', id });
  }, [hearing, complaints]);
  useEffect(() => {
    const timer = setInterval(() => runner.feed({ on: 'tick' }), TICK_MS);
    const hidden = () => {
      if (document.visibilityState === 'hidden') runner.giveUp();
    };
    document.addEventListener('visibilitychange', hidden);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', hidden);
      runner.giveUp();
    };
  }, []);

  return { ...shown, feed: (event) => runner.feed(event) };
}

/** Runs a `TalkState` on the microphone and the link. */
class TalkRunner {
  re: Seq | undefined;
  #state: TalkState = IDLE;
  #microphone: Microphone | undefined;
  #closing: ReturnType<typeof setTimeout> | undefined;
  #resampler: Resampler | undefined;
  #talk: Talk | undefined;

  constructor(
    private readonly connection: Connection,
    private readonly keepOpenMs: number,
    private readonly show: (patch: Partial<Shown>) => void,
  ) {}

  feed(event: TalkEvent): void {
    const { state, effects } = talk(this.#state, event, Date.now());
    const changed = state !== this.#state;
    this.#state = state;
    for (const effect of effects) {
      if (effect === 'open') void this.#open();
      if (effect === 'send') this.#send();
      if (effect === 'drop') this.#drop();
      if (effect === 'close') this.#closeLater();
    }
    if (changed) this.show({ state });
  }

  giveUp(): void {
    this.feed({ on: 'failed' });
    this.#close();
  }

  async #open(): Promise<void> {
    clearTimeout(this.#closing);
    this.show({ failure: undefined, clipping: false });
    try {
      this.#microphone ??= await openMicrophone((samples) => this.#take(samples));
    } catch (error) {
      if (!(error instanceof MicrophoneError)) throw error;
      this.#fail(error.message);
      return;
    }
    if (this.#state.phase !== 'opening') {
      this.#closeLater();
      return;
    }
    this.#talk = this.connection.talk(nanoid(), this.re);
    if (!this.#talk) {
      this.#fail(NO_LINK);
      return;
    }
    this.#resampler = resampler(this.#microphone.rate, SAMPLE_RATE);
    this.feed({ on: 'opened', id: this.#talk.id });
  }

  #take(samples: Float32Array): void {
    if (!this.#talk || !this.#resampler) return;
    const { db, clipped } = levelOf(samples);
    this.show(clipped > TOO_LOUD ? { db, clipping: true } : { db });
    const sent = this.#talk.sound(toPcm16(this.#resampler.push(samples)) as Int16Array<ArrayBuffer>);
    if (!sent) this.#fail(LINK_LOST);
  }

  #send(): void {
    const [spoken, tail] = [this.#talk, this.#resampler];
    setTimeout(() => {
      if (this.#talk === spoken) {
        this.#talk = undefined;
        this.#resampler = undefined;
      }
      if (!spoken || !tail) return;
      spoken.sound(toPcm16(tail.flush()) as Int16Array<ArrayBuffer>);
      if (!spoken.end()) this.#fail(LINK_LOST);
      this.show({ db: -100 });
    }, TAIL_MS);
  }

  #drop(): void {
    this.#talk?.drop();
    this.#talk = undefined;
    this.#resampler = undefined;
    this.show({ db: -100 });
  }

  #fail(failure: string): void {
    this.show({ failure });
    this.feed({ on: 'failed' });
  }

  #closeLater(): void {
    clearTimeout(this.#closing);
    this.#closing = setTimeout(() => this.#close(), Math.max(this.keepOpenMs, 2 * TAIL_MS));
  }

  #close(): void {
    clearTimeout(this.#closing);
    if (this.#state.phase === 'talking') return;
    this.#microphone?.close();
    this.#microphone = undefined;
  }
}
