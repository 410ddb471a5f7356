import { parentPort, workerData } from 'node:worker_threads';
import { loadRecogniser } from './recogniser.ts';
import type { TranscribeOptions } from './transcriber.ts';

/** What the transcriber asks of its worker. */
export interface Ask {
  id: number;
  samples: Float32Array;
  options: TranscribeOptions;
}

if (!parentPort) throw new Error('The speech worker runs as a worker thread only.');
const port = parentPort;
const asked: Ask[] = [];
port.on('message', (ask: Ask) => asked.push(ask));

try {
  const recogniser = await loadRecogniser(workerData.folder);
  port.postMessage({ ready: true });
  const answer = async ({ id, samples, options }: Ask): Promise<void> => {
    try {
      port.postMessage({ id, heard: await recogniser.hear(samples, options) });
    } catch (error) {
      port.postMessage({ id, failed: String(error) });
    }
  };
  let last: Promise<void> = Promise.resolve();
  const queue = (ask: Ask): void => {
    last = last.then(() => answer(ask));
  };
  port.removeAllListeners('message');
  port.on('message', queue);
  asked.forEach(queue);
} catch (error) {
  port.postMessage({ broken: error instanceof Error ? error.message : String(error) });
}
