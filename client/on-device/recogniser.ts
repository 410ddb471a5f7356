import type { Voice } from '../../src/model/voice.ts';
import type { Heard } from '../../src/speech/heard.ts';
import { type Asked, callsTo } from '../browser/calls.ts';

type Question =
  | { do: 'detect'; frame: Float32Array }
  | { do: 'load' }
  | { do: 'hear'; samples: Float32Array; voice: Voice | undefined };
export type Ask = Asked<Question>;

/** The voice detector and the speech model in this page. Sound is mono, 16 kHz, -1 to 1. */
export interface OnDeviceRecogniser {
  /** Probability of speech in this frame of `FRAME` samples, which must follow the last one. Rejects. */
  detect(frame: Float32Array): Promise<number>;
  /** Fetches and prepares the speech model. Rejects when it is not available. */
  load(): Promise<void>;
  /** `voice`: what is known of whoever speaks. Rejects when the model is not available. */
  hear(samples: Float32Array, voice: Voice | undefined): Promise<Heard>;
}

/** 32 ms. */
export const FRAME = 512;

function open(): OnDeviceRecogniser {
  const ask = callsTo<Question>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
  return {
    detect: (frame) => ask({ do: 'detect', frame }),
    load: () => ask({ do: 'load' }),
    hear: (samples, voice) => ask({ do: 'hear', samples, voice }),
  };
}

let opened: OnDeviceRecogniser | undefined;
/** One for the whole page, started at its first use. */
export const onDeviceRecogniser = (): OnDeviceRecogniser => {
  opened ??= open();
  return opened;
};
