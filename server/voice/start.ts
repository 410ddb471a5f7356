import type { Worker } from 'node:worker_threads';
import { startThread } from '../process/thread.ts';
import { SYNTHESISER } from './synthesiser.ts';
import { sayable, type VoiceMaker, VoiceUnavailable } from './voice.ts';
import type { Saying } from './worker.ts';

const PROGRAM = { source: 'server/voice/worker.ts', built: 'voice-worker.js' };

/** Words a minute at rate 1: a little slower than talk, for a noisy hall. */
const PACE = 150;
const WITHIN_MS = 10_000;
/** More than this waiting would come too late to be worth saying. */
const LONGEST_QUEUE = 8;
/** Crews are told much the same things; a sentence is some 100 to 200 kB. */
const KEPT = 64;

type Wav = Uint8Array<ArrayBuffer>;

interface Waiting {
  timer: NodeJS.Timeout;
  resolve(wav: Wav): void;
  reject(error: Error): void;
}

interface VoiceOptions {
  /** How long one sentence may take, ms. */
  withinMs?: number;
  /** The module that makes the sound. */
  synthesiser?: string;
}

/** The synthesiser in a thread of its own, begun when it is first needed, and again after it broke down. */
export function openVoice({
  withinMs = WITHIN_MS,
  synthesiser = SYNTHESISER.package,
}: VoiceOptions = {}): VoiceMaker {
  /** The least lately used first. Those being made are in it too, so that two phones ask for one rendering. */
  const kept = new Map<string, Promise<Wav>>();
  const waiting = new Map<number, Waiting>();
  let worker: Worker | undefined;
  let lastId = 0;

  const breakDown = (why: string): void => {
    const broken = worker;
    worker = undefined;
    for (const one of waiting.values()) {
      clearTimeout(one.timer);
      one.reject(new VoiceUnavailable(why));
    }
    waiting.clear();
    void broken?.terminate();
  };

  function start(): Worker {
    const begun = startThread(PROGRAM, { workerData: synthesiser });
    begun.on('message', ({ id, wav }: { id: number; wav: Wav }) => {
      const one = waiting.get(id);
      waiting.delete(id);
      clearTimeout(one?.timer);
      one?.resolve(wav);
    });
    begun.on('error', (error) => {
      if (worker === begun) breakDown(`The synthesiser broke down: ${error.message}`);
    });
    begun.on('exit', () => {
      if (worker === begun) breakDown('The synthesiser has ended.');
    });
    begun.unref();
    return begun;
  }

  function render(text: string, speed: number): Promise<Wav> {
    if (waiting.size >= LONGEST_QUEUE)
      return Promise.reject(new VoiceUnavailable('Too much is waiting to be spoken.'));
    worker ??= start();
    const id = ++lastId;
    const saying: Saying = { id, text, speed };
    worker.postMessage(saying);
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => breakDown('The synthesiser did not answer.'), withinMs);
      waiting.set(id, { timer, resolve, reject });
    });
  }

  return {
    say(text, rate) {
      const words = sayable(text);
      if (words === '') return Promise.reject(new VoiceUnavailable('There is nothing to say in this.'));
      const speed = Math.round(PACE * rate);
      const key = `${speed} ${words}`;
      const wav = kept.get(key) ?? render(words, speed);
      kept.delete(key);
      kept.set(key, wav);
      wav.catch(() => kept.delete(key));
      const [oldest] = kept.keys();
      if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
      return wav;
    },
    async close() {
      breakDown('The server stops.');
    },
  };
}
