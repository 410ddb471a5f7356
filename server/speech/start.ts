import { fork } from 'node:child_process';
import { join } from 'node:path';
import type { Voice } from '../../src/model/voice.ts';
import type { Heard } from '../../src/speech/heard.ts';
import { ROOT_FOLDER } from '../process/program.ts';
import type { Ask } from './engine-process.ts';
import {
  SpeechTimeout,
  SpeechUnavailable,
  type TranscribeOptions,
  type Transcriber,
  type Transcript,
} from './transcriber.ts';

/** No queue of one hall is longer than this; after it the engine is stuck, ms. */
const WITHIN_MS = 15_000;

const FROM_SOURCES = import.meta.url.endsWith('.ts');
const PROGRAM = FROM_SOURCES
  ? join(ROOT_FOLDER, 'server', 'speech', 'engine-process.ts')
  : join(ROOT_FOLDER, 'dist', 'server', 'speech-engine.js');

type Answer =
  | { ready: true }
  | { id: number; heard: Heard }
  | { id: number; learnt: Voice | undefined }
  | { id: number; failed: string }
  | { broken: string };

interface Waiting {
  /** Starts when the engine is ready: loading may take as long as it needs. */
  timer: NodeJS.Timeout | undefined;
  resolve(answer: Heard | Voice | undefined): void;
  reject(error: Error): void;
}

/**
 * The model in `folder`, in its own process, so that the server goes on while it listens, and also when its native
 * runtime crashes. It loads in the background, and calls wait until it is ready. If the folder has no model, or the
 * process ends, every call rejects with `SpeechUnavailable`.
 */
export function openTranscriber(
  folder: string,
  { withinMs = WITHIN_MS } = {},
): Transcriber & { ready: Promise<void> } {
  const engine = fork(PROGRAM, [folder], {
    cwd: ROOT_FOLDER,
    execArgv: FROM_SOURCES ? ['--import', 'tsx'] : [],
    serialization: 'advanced',
  });
  const ended = new Promise<void>((resolve) => engine.once('exit', () => resolve()));
  const waiting = new Map<number, Waiting>();
  let broken: SpeechUnavailable | undefined;
  let lastId = 0;

  let becomeReady: () => void = () => {};
  let neverReady: (error: Error) => void = () => {};
  const ready = new Promise<void>((resolve, reject) => {
    becomeReady = resolve;
    neverReady = reject;
  });
  ready.catch(() => {}); // A caller that does not wait for `ready` hears of it from `transcribe`.

  const take = (id: number): Waiting | undefined => {
    const one = waiting.get(id);
    waiting.delete(id);
    clearTimeout(one?.timer);
    return one;
  };
  const breakDown = (why: string): void => {
    broken ??= new SpeechUnavailable(why);
    neverReady(broken);
    for (const id of [...waiting.keys()]) take(id)?.reject(broken);
  };

  engine.on('message', (answer: Answer) => {
    if ('ready' in answer) becomeReady();
    else if ('broken' in answer) breakDown(answer.broken);
    else {
      const one = take(answer.id);
      if ('failed' in answer) one?.reject(new SpeechUnavailable(answer.failed));
      else one?.resolve('learnt' in answer ? answer.learnt : answer.heard);
    }
  });
  engine.on('error', (error) => breakDown(`The speech engine failed: ${error.message}`));
  engine.on('exit', () => breakDown('The speech engine has ended.'));

  const ask = <T extends Heard | Voice | undefined>(
    samples: Float32Array,
    options: Ask['options'],
  ): Promise<T> => {
    if (broken) return Promise.reject(broken);
    const id = ++lastId;
    return new Promise<T>((resolve, reject) => {
      const waits: Waiting = { timer: undefined, resolve: (answer) => resolve(answer as T), reject };
      waiting.set(id, waits);
      ready.then(
        () => {
          if (!waiting.has(id)) return;
          waits.timer = setTimeout(
            () => take(id)?.reject(new SpeechTimeout(`No text after ${withinMs / 1000} s. Type it.`)),
            withinMs,
          );
          engine.send({ id, samples, options } satisfies Ask);
        },
        () => {}, // `breakDown` has answered everyone who waits.
      );
    });
  };

  return {
    name: 'ladderline model',
    ready,
    async transcribe(samples: Float32Array, options: TranscribeOptions = {}): Promise<Transcript> {
      const since = performance.now();
      return { ...(await ask<Heard>(samples, options)), ms: performance.now() - since };
    },
    learn: (samples: Float32Array) => ask<Voice | undefined>(samples, 'learn'),
    async close() {
      // False when it has ended, or never started.
      if (engine.kill('SIGKILL')) await ended;
    },
  };
}
