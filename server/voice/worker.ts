import { parentPort, workerData } from 'node:worker_threads';
import type { Synthesise } from './synthesiser.ts';

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

/** Given by name: the package is not there when this is built. */
const synthesise: Promise<Synthesise> = import(/* @vite-ignore */ workerData).then(
  (module) => module.default,
);

async function say({ id, text, speed }: Saying): Promise<void> {
  const wav = await (await synthesise)(text, { voice: 'en', speed: `${speed}` });
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
