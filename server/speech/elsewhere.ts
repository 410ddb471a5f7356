import { setTimeout } from 'node:timers/promises';
import type { Voice } from '../../src/model/voice.ts';
import { HEAR_PATH, HeardText, LEARN_PATH, Learnt, NotHeard, READY_PATH, toBase64 } from './over-http.ts';
import type { SpeechEngine } from './service.ts';
import { SpeechTimeout, SpeechUnavailable, type TranscribeOptions, type Transcript } from './transcriber.ts';

/** No queue is longer than this; after it the service is stuck, ms. */
const WITHIN_MS = 15_000;
/** The HTTP status of an engine that loads. */
const LOADING = 503;
/** Between two looks whether an engine that loads is loaded, ms. */
const LOOK_MS = 500;

/** One service, and how much it has to do for us. */
interface Place {
  readonly url: string;
  underWay: number;
}

/**
 * Speech services in processes of their own, on this machine or others: what is said goes to the one that has the least to do for us,
 * and to the next where one does not answer. `password`: that they ask for.
 */
export function speechAt(
  urls: readonly string[],
  { password, withinMs = WITHIN_MS }: { password?: string | undefined; withinMs?: number } = {},
): SpeechEngine {
  const places: Place[] = urls.map((url) => ({ url: url.replace(/\/+$/, ''), underWay: 0 }));
  const headers = { ...(password !== undefined && { authorization: `Bearer ${password}` }) };
  const closing = new AbortController();

  const ask = (url: string, init: RequestInit): Promise<Response> =>
    fetch(url, {
      ...init,
      headers: { ...headers, 'content-type': 'application/json' },
      signal: AbortSignal.any([closing.signal, AbortSignal.timeout(withinMs)]),
    }).catch((error: Error) => {
      if (closing.signal.aborted) throw new SpeechUnavailable('The speech service is not asked any more.');
      if (error.name === 'TimeoutError')
        throw new SpeechTimeout(`No text after ${withinMs / 1000} s. Type it.`);
      throw new SpeechUnavailable(
        `The speech service at ${new URL(url).origin} does not answer (${causeOf(error)}): see whether it runs.`,
      );
    });

  /** Resolves when this one is loaded. */
  async function loaded({ url }: Place): Promise<void> {
    for (;;) {
      const answer = await ask(url + READY_PATH, {});
      if (answer.ok) return;
      const { error } = NotHeard.parse(await answer.json());
      if (answer.status !== LOADING) throw new SpeechUnavailable(error);
      await setTimeout(LOOK_MS, undefined, { signal: closing.signal, ref: false }).catch(() => undefined);
    }
  }

  async function askAt(place: Place, path: string, body: string): Promise<unknown> {
    place.underWay += 1;
    try {
      const answer = await ask(place.url + path, { method: 'POST', body });
      const json: unknown = await answer.json();
      if (answer.ok) return json;
      const { error } = NotHeard.parse(json);
      throw answer.status === 504 ? new SpeechTimeout(error) : new SpeechUnavailable(error);
    } finally {
      place.underWay -= 1;
    }
  }

  /** Asked of the one that has the least to do, and of the next where that does not answer. */
  async function askAny(path: string, question: object): Promise<unknown> {
    const body = JSON.stringify(question);
    let failure: unknown;
    for (const place of [...places].sort((one, other) => one.underWay - other.underWay)) {
      try {
        return await askAt(place, path, body);
      } catch (error) {
        failure = error;
        // Somebody waits: what took too long is not begun again elsewhere.
        if (error instanceof SpeechTimeout || closing.signal.aborted) break;
      }
    }
    throw failure;
  }

  const ready = Promise.any(places.map(loaded)).catch((error: AggregateError) => {
    throw error.errors[0];
  });
  ready.catch(() => {}); // A caller that does not wait for `ready` hears of it from `transcribe`.

  return {
    name: 'speech service',
    ready,
    async transcribe(samples: Float32Array, options: TranscribeOptions = {}): Promise<Transcript> {
      const since = performance.now();
      const heard = HeardText.parse(await askAny(HEAR_PATH, { sound: toBase64(samples), ...options }));
      return { ...heard, ms: performance.now() - since };
    },
    async learn(samples: Float32Array): Promise<Voice | undefined> {
      return Learnt.parse(await askAny(LEARN_PATH, { sound: toBase64(samples) })).voice;
    },
    async close() {
      closing.abort();
    },
  };
}

const causeOf = (error: Error): string =>
  ((error.cause as NodeJS.ErrnoException | undefined)?.code ?? error.message) || error.name;
