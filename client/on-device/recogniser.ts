import type { Heard } from '../../src/speech/heard.ts';

export type Ask =
  | { id: number; do: 'detect'; frame: Float32Array }
  | { id: number; do: 'load' }
  | { id: number; do: 'hear'; samples: Float32Array };
export type Answer = { id: number; value: unknown } | { id: number; failed: string };

/** The voice detector and the speech model in this page. Sound is mono, 16 kHz, -1 to 1. */
export interface OnDeviceRecogniser {
  /** Probability of speech in this frame of `FRAME` samples, which must follow the last one. Rejects. */
  detect(frame: Float32Array): Promise<number>;
  /** Fetches and prepares the speech model. Rejects when it is not available. */
  load(): Promise<void>;
  /** Rejects when the model is not available. */
  hear(samples: Float32Array): Promise<Heard>;
}

/** 32 ms. */
export const FRAME = 512;

interface Waiting {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

function open(): OnDeviceRecogniser {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, Waiting>();
  let lastId = 0;
  worker.onmessage = ({ data }: MessageEvent<Answer>) => {
    const one = waiting.get(data.id);
    waiting.delete(data.id);
    if ('failed' in data) one?.reject(new Error(data.failed));
    else one?.resolve(data.value);
  };
  worker.onerror = (event) => {
    for (const one of waiting.values()) one.reject(new Error(event.message));
    waiting.clear();
  };
  const ask = <T>(question: Ask): Promise<T> =>
    new Promise<unknown>((resolve, reject) => {
      waiting.set(question.id, { resolve, reject });
      worker.postMessage(question);
    }) as Promise<T>;
  return {
    detect: (frame) => ask({ id: ++lastId, do: 'detect', frame }),
    load: () => ask({ id: ++lastId, do: 'load' }),
    hear: (samples) => ask({ id: ++lastId, do: 'hear', samples }),
  };
}

let opened: OnDeviceRecogniser | undefined;
/** One for the whole page, started at its first use. */
export const onDeviceRecogniser = (): OnDeviceRecogniser => {
  opened ??= open();
  return opened;
};
