import { parentPort } from 'node:worker_threads';
import text2wav from 'text2wav';

/** What is asked of this worker. */
export interface Saying {
  id: number;
  text: string;
  /** Words a minute. */
  speed: number;
}

if (!parentPort) throw new Error('The voice worker runs as a worker thread only.');
const port = parentPort;

// The synthesiser would try to fetch its own file as a web page does, fail, and complain.
Reflect.deleteProperty(globalThis, 'fetch');

async function say({ id, text, speed }: Saying): Promise<void> {
  // Its types ask for a number, but it hands options on as they are, and only text arrives.
  const wav = await text2wav(text, { voice: 'en', speed: `${speed}` as unknown as number });
  port.postMessage({ id, wav });
  // Each run leaves handlers of its own behind.
  process.removeAllListeners('uncaughtException');
  process.removeAllListeners('unhandledRejection');
}

// One after the other: each run has a synthesiser of its own in memory.
let last: Promise<void> = Promise.resolve();
port.on('message', (saying: Saying) => {
  last = last.then(() => say(saying));
});
