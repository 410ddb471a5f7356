import { type Resampler, resampler } from '../../src/audio/resample.ts';
import { PHONE_TOO_SLOW } from '../../src/phrases/talk.ts';
import { SAMPLE_RATE } from '../../src/protocol/socket.ts';
import { FRAME, type OnDeviceRecogniser } from '../on-device/recogniser.ts';
import { type Gate, newGate, PRE_ROLL, step, tooLoudHere } from './gate.ts';
import { levelOf, TOO_LOUD } from './level.ts';
import { type Microphone, openMicrophone } from './microphone.ts';
import type { Utterance } from './utterance.ts';

export interface HandsFreeShown {
  /** Speech is let through now. */
  open: boolean;
  db: number;
  clipping: boolean;
  tooLoud: boolean;
}

interface HandsFreeWorld {
  recogniser: OnDeviceRecogniser;
  /** Whether this phone is speaking. */
  speaking(): boolean;
  begin(): Utterance | undefined;
  /** An utterance was lost with the link. */
  lost(): void;
  show(shown: HandsFreeShown): void;
  failed(error: unknown): void;
}

/** If more frames than this wait, the phone is too slow. 10 s, because the detector waits while words are made. */
const TOO_FAR_BEHIND = 312;

/** Listens all the time, and lets speech through, as the gate decides. */
export class HandsFree {
  #gate: Gate = newGate();
  #microphone: Microphone | undefined;
  #resampler: Resampler | undefined;
  #rest = new Float32Array(0);
  /** The last frames, for the start of the next utterance. */
  #held: Float32Array[] = [];
  #utterance: Utterance | undefined;
  #clipping = false;
  #behind = 0;
  #last: Promise<void> = Promise.resolve();
  #stopped = false;

  constructor(private readonly world: HandsFreeWorld) {}

  /** Rejects with `MicrophoneError`, or when the voice detector is not available. */
  async start(): Promise<void> {
    await this.world.recogniser.detect(new Float32Array(FRAME));
    const microphone = await openMicrophone((samples) => this.#take(samples));
    if (this.#stopped) return microphone.close();
    this.#microphone = microphone;
    this.#resampler = resampler(microphone.rate, SAMPLE_RATE);
  }

  stop(): void {
    this.#stopped = true;
    this.#utterance?.drop();
    this.#microphone?.close();
  }

  #take(samples: Float32Array): void {
    if (!this.#resampler || this.#stopped) return;
    this.#clipping = levelOf(samples).clipped > TOO_LOUD;
    const fresh = this.#resampler.push(samples);
    const sound = new Float32Array(this.#rest.length + fresh.length);
    sound.set(this.#rest);
    sound.set(fresh, this.#rest.length);
    let at = 0;
    for (; at + FRAME <= sound.length; at += FRAME) this.#queue(sound.slice(at, at + FRAME));
    this.#rest = sound.slice(at);
  }

  #queue(frame: Float32Array): void {
    // Asked when the sound comes, not when it is processed: by then this phone may be silent again.
    const speaking = this.world.speaking();
    if (++this.#behind > TOO_FAR_BEHIND) {
      this.#fail(new Error(PHONE_TOO_SLOW));
      return;
    }
    this.#last = this.#last.then(() => this.#judge(frame, speaking));
  }

  async #judge(frame: Float32Array, speaking: boolean): Promise<void> {
    if (this.#stopped) return;
    try {
      const probability = await this.world.recogniser.detect(frame);
      this.#behind--;
      if (!this.#stopped) this.#follow(frame, probability, speaking);
    } catch (error) {
      this.#fail(error);
    }
  }

  #follow(frame: Float32Array, probability: number, speaking: boolean): void {
    const { db } = levelOf(frame);
    const { gate, effect } = step(this.#gate, { probability, db, speaking });
    this.#gate = gate;
    // Our own voice is not held, or it would come in with the next word.
    this.#held = speaking || gate.deaf > 0 ? [] : [...this.#held.slice(1 - PRE_ROLL), frame];
    if (effect === 'begin') {
      this.#utterance = this.world.begin();
      for (const held of this.#held) this.#utterance?.sound(held);
    } else if (effect === 'drop') {
      this.#utterance?.drop();
      this.#utterance = undefined;
    } else if (effect === 'end') {
      if (this.#utterance && !this.#utterance.end()) this.world.lost();
      this.#utterance = undefined;
    } else if (this.#utterance && !this.#utterance.sound(frame)) {
      this.#utterance = undefined;
      this.world.lost();
    }
    this.world.show({ open: gate.open > 0, db, clipping: this.#clipping, tooLoud: tooLoudHere(gate) });
  }

  #fail(error: unknown): void {
    if (this.#stopped) return;
    this.stop();
    this.world.failed(error);
  }
}
