import { timingSafeEqual } from 'node:crypto';
import { once } from 'node:events';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { StartFailure } from '../process/start-failure.ts';
import { fromBase64, HEAR_PATH, LEARN_PATH, READY_PATH, ToHear, ToLearn } from './over-http.ts';
import type { SpeechEngine } from './service.ts';
import { SpeechTimeout, type TranscribeOptions } from './transcriber.ts';

/** Of one request: two minutes of sound, as base64. */
const MOST_BYTES = 12_000_000;

export interface SpeechServer {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * A speech engine for the servers of other processes and machines. `password`: that each of them must know. Nothing of what is
 * heard is kept. Rejects with `StartFailure`.
 */
export async function serveSpeech(
  engine: SpeechEngine,
  { host, port, password }: { host: string; port: number; password?: string | undefined },
): Promise<SpeechServer> {
  let state: Answer = { status: 503, body: { error: 'The speech engine is loading.' } };
  const loaded = engine.ready ?? Promise.resolve();
  loaded.then(
    () => {
      state = { status: 200, body: { name: engine.name } };
    },
    (error: Error) => {
      state = { status: 500, body: { error: error.message } };
    },
  );
  const server = createServer((request, response) => {
    answer(request).then(
      ({ status, body }) => reply(response, status, body),
      (error: Error) => reply(response, 500, { error: error.message }),
    );
  });

  async function answer(request: IncomingMessage): Promise<Answer> {
    const { method, url, headers } = request;
    if (!isKnown(headers.authorization, password))
      return { status: 401, body: { error: 'The password is wrong.' } };
    if (method === 'GET' && url === READY_PATH) return state;
    if (method !== 'POST' || (url !== HEAR_PATH && url !== LEARN_PATH))
      return {
        status: 404,
        body: { error: `Ask for GET ${READY_PATH}, or POST ${HEAR_PATH} or ${LEARN_PATH}.` },
      };
    const text = await bodyOf(request);
    if (text === undefined) return { status: 413, body: { error: `At most ${MOST_BYTES} bytes.` } };
    const asked = (url === HEAR_PATH ? ToHear : ToLearn).safeParse(jsonOf(text));
    if (!asked.success)
      return { status: 400, body: { error: `That is not what ${url} takes: ${asked.error.message}` } };
    const { sound, ...options } = asked.data;
    try {
      if (url === LEARN_PATH)
        return { status: 200, body: { voice: await engine.learn?.(fromBase64(sound)) } };
      const { ms: _ms, ...heard } = await engine.transcribe(fromBase64(sound), options as TranscribeOptions);
      return { status: 200, body: heard };
    } catch (error) {
      return {
        status: error instanceof SpeechTimeout ? 504 : 503,
        body: { error: (error as Error).message },
      };
    }
  }

  server.listen(port, host);
  await once(server, 'listening').catch((error: Error) => {
    throw new StartFailure(`the speech service cannot listen on ${host}, port ${port} (${error.message}).`);
  });
  return {
    url: `http://${host.includes(':') ? `[${host}]` : host}:${(server.address() as AddressInfo).port}`,
    async close() {
      const closed = once(server, 'close');
      server.close();
      server.closeAllConnections();
      await closed;
      await engine.close();
    },
  };
}

interface Answer {
  readonly status: number;
  readonly body: unknown;
}

function reply(response: ServerResponse, status: number, body: unknown): void {
  response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
}

function isKnown(given: string | undefined, password: string | undefined): boolean {
  if (password === undefined) return true;
  const [is, must] = [Buffer.from(given ?? ''), Buffer.from(`Bearer ${password}`)];
  return is.length === must.length && timingSafeEqual(is, must);
}

/** Undefined where it is too long; it is taken to its end all the same, so that who sends it gets an answer. */
async function bodyOf(request: IncomingMessage): Promise<string | undefined> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    length += part.length;
    if (length <= MOST_BYTES) parts.push(part);
  }
  return length > MOST_BYTES ? undefined : Buffer.concat(parts).toString();
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
