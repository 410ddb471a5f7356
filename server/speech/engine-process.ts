import { loadRecogniser } from './recogniser.ts';
import type { TranscribeOptions } from './transcriber.ts';

/** What the server asks of this process, once it is ready. */
export interface Ask {
  id: number;
  samples: Float32Array;
  /** `learn`: this is a reading. */
  options: TranscribeOptions | 'learn';
}

const tell = (answer: unknown): void => void process.send?.(answer);

// It ends when its server ends, not earlier: Ctrl-C at the terminal reaches both.
process.on('disconnect', () => process.exit());
process.on('SIGINT', () => {});

try {
  const recogniser = await loadRecogniser(process.argv[2] ?? '');
  const answer = async ({ id, samples, options }: Ask): Promise<void> => {
    try {
      tell(
        options === 'learn'
          ? { id, learnt: await recogniser.learn?.(samples) }
          : { id, heard: await recogniser.hear(samples, options) },
      );
    } catch (error) {
      tell({ id, failed: String(error) });
    }
  };
  let last: Promise<void> = Promise.resolve();
  process.on('message', (ask: Ask) => {
    last = last.then(() => answer(ask));
  });
  tell({ ready: true });
} catch (error) {
  tell({ broken: error instanceof Error ? error.message : String(error) });
}
