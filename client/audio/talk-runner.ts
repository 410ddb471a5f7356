import { type Resampler, resampler } from '../../src/audio/resample.ts';
import type { MessageId, Seq } from '../../src/model/ids.ts';
import type { Voice } from '../../src/model/voice.ts';
import { handsFreeStoppedText, LINK_LOST, NO_LINK, NO_ON_DEVICE, NO_WORDS } from '../../src/phrases/talk.ts';
import { SAMPLE_RATE } from '../../src/protocol/socket.ts';
import type { Heard } from '../../src/speech/heard.ts';
import type { Connection } from '../link/connection.ts';
import type { Learnt } from '../link/link.ts';
import { onDeviceRecogniser } from '../on-device/recogniser.ts';
import { HandsFree } from './hands-free.ts';
import { levelOf, TOO_LOUD } from './level.ts';
import { type Microphone, MicrophoneError, openMicrophone } from './microphone.ts';
import { IDLE, type TalkEvent, type TalkState, talk } from './talk.ts';
import type { Shown, TalkWorld } from './talk-view.ts';
import { readToServer, toOnDevice, toServer, type Utterance } from './utterance.ts';

/** People release the button with their last word, so recording continues a little longer. */
const TAIL_MS = 180;

/** Runs a `TalkState` on the microphone and the link. */
export class TalkRunner {
  #state: TalkState = IDLE;
  #microphone: Microphone | undefined;
  #closing: ReturnType<typeof setTimeout> | undefined;
  #resampler: Resampler | undefined;
  #talk: Utterance | undefined;
  #handsFree: HandsFree | undefined;
  /** Hands-free talk ended only because the page was hidden. */
  #interrupted = false;
  #onDevice: Shown['onDevice'] = 'off';
  /** Of whoever talks here. It is nowhere else, and gone with the page. */
  #voice: Voice | undefined;
  /** A reading of ten digits, and whether hands-free talk waits for its end. */
  #reading: { handsFree: boolean; id?: MessageId; answered?: true } | undefined;

  constructor(
    private readonly connection: Connection,
    private readonly keepOpenMs: number,
    private readonly show: (patch: Partial<Shown>) => void,
    public world: TalkWorld,
  ) {}

  /** `at`: this phone's clock, ms. */
  feed(event: TalkEvent, at = Date.now()): void {
    const { state, effects } = talk(this.#state, event, at);
    const changed = state !== this.#state;
    this.#state = state;
    for (const effect of effects) {
      if (effect === 'open') void this.#open();
      if (effect === 'send') this.#send();
      if (effect === 'drop') this.#drop();
      if (effect === 'close') this.#closeLater();
    }
    if (changed) this.show({ state });
    if (state.phase === 'idle') this.#endReading();
  }

  /** The button is free for it: nothing else is said meanwhile. */
  read(): void {
    if (this.#state.phase !== 'idle' || this.#reading) return;
    const handsFree = this.#handsFree !== undefined;
    if (handsFree) this.setHandsFree(false);
    this.#reading = { handsFree };
    this.show({ voice: 'reading' });
    this.feed({ on: 'press' });
    this.feed({ on: 'release' });
  }

  learnt({ id, voice }: Learnt): void {
    if (!this.#reading || this.#reading.id !== id) return;
    this.#reading.answered = true;
    this.#voice = voice;
    this.show({ voice: voice ? this.#howHeard() : 'unclear' });
  }

  forgetVoice(): void {
    this.#voice = undefined;
    this.show({ voice: this.#howHeard() });
  }

  #howHeard(): Shown['voice'] {
    if (!this.#voice) return 'unknown';
    return this.#voice.shift < 0 ? 'badly' : 'well';
  }

  /** However it ended: what was before is as it was. */
  #endReading(): void {
    const reading = this.#reading;
    if (!reading) return;
    this.#reading = undefined;
    if (!reading.answered) this.show({ voice: this.#howHeard() });
    if (reading.handsFree) this.setHandsFree(true);
  }

  giveUp(): void {
    this.feed({ on: 'failed' });
    this.#close();
    this.#interrupted = this.#handsFree !== undefined;
    if (this.#handsFree) this.setHandsFree(false);
  }

  /** The page is seen again: who talked without a button goes on so. */
  comeBack(): void {
    if (this.#interrupted) this.setHandsFree(true);
    this.#interrupted = false;
  }

  setHandsFree(on: boolean): void {
    this.#handsFree?.stop();
    this.#handsFree = undefined;
    this.show({ handsFree: on ? 'opening' : 'off', tooLoud: false, db: -100 });
    if (!on) return;
    this.feed({ on: 'failed' });
    this.#close();
    const fail = (failure: unknown) => {
      if (this.#handsFree !== handsFree) return;
      this.#handsFree = undefined;
      const text = failure instanceof Error ? failure.message : String(failure);
      this.show({ handsFree: 'off', failure: handsFreeStoppedText(text) });
    };
    const handsFree = new HandsFree({
      recogniser: onDeviceRecogniser(),
      speaking: () => this.world.speaking,
      begin: () => {
        const begun = this.#begin();
        this.show({ failure: begun ? undefined : NO_LINK });
        return begun;
      },
      lost: () => this.show({ failure: LINK_LOST }),
      show: ({ open, ...shown }) => this.show({ ...shown, handsFree: open ? 'hearing' : 'listening' }),
      failed: fail,
    });
    this.#handsFree = handsFree;
    this.show({ failure: undefined });
    handsFree.start().catch(fail);
  }

  setOnDevice(on: boolean): void {
    const show = (onDevice: Shown['onDevice']) => {
      this.#onDevice = onDevice;
      this.show({ onDevice });
    };
    show(on ? 'loading' : 'off');
    if (!on) return;
    onDeviceRecogniser()
      .load()
      .then(
        () => {
          if (this.#onDevice === 'loading') show('ready');
        },
        () => {
          show('off');
          this.show({ failure: NO_ON_DEVICE });
        },
      );
  }

  /** The server's recogniser, if it can be reached. If not, this phone's. */
  #begin(): Utterance | undefined {
    if (this.#reading) return readToServer(this.connection);
    const { re } = this.world;
    const { phase, speech } = this.connection.link;
    if (this.#onDevice !== 'ready' || (phase === 'live' && speech?.ready))
      return toServer(this.connection, re, this.#voice);
    return toOnDevice(onDeviceRecogniser(), this.#voice, (id, heard) => this.#heard(id, heard, re));
  }

  #heard(id: MessageId, heard: Heard | undefined, re: Seq | undefined): void {
    if (heard) this.world.heard(heard, re);
    else this.show({ failure: NO_WORDS });
    this.feed({ on: 'answered', id });
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
    this.#talk = this.#begin();
    if (!this.#talk) {
      this.#fail(NO_LINK);
      return;
    }
    this.#resampler = resampler(this.#microphone.rate, SAMPLE_RATE);
    if (this.#reading) this.#reading.id = this.#talk.id;
    this.feed({ on: 'opened', id: this.#talk.id });
  }

  #take(samples: Float32Array): void {
    if (!this.#talk || !this.#resampler) return;
    const { db, clipped } = levelOf(samples);
    this.show(clipped > TOO_LOUD ? { db, clipping: true } : { db });
    const sent = this.#talk.sound(this.#resampler.push(samples));
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
      spoken.sound(tail.flush());
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
