import { DEFAULT_MODEL_FOLDER } from '../../../server/process/program.ts';
import { openTranscriber } from '../../../server/speech/start.ts';
import type { Utterance } from './recordings.ts';

const SECONDS = 20;
/** How often a crew says something. */
const EVERY_MS = 5_000;

/** The time from the end of speech to the text, while several crews talk at the same time. */
export async function measureLoad(utterances: readonly Utterance[]): Promise<void> {
  const sounds = await Promise.all(utterances.slice(0, 40).map((one) => one.sound()));
  const engine = openTranscriber(DEFAULT_MODEL_FOLDER);
  await engine.ready;
  for (const sound of sounds) await engine.transcribe(sound);
  console.log('\nEnd of speech to text        n   median      p95');
  for (const crews of [1, 10, 50]) {
    const waits: number[] = [];
    const one = async (crew: number): Promise<void> => {
      await pause((EVERY_MS * crew) / crews);
      for (let said = 0; said < (1000 * SECONDS) / EVERY_MS; said++) {
        const next = pause(EVERY_MS);
        const sound = sounds[(crew * 7 + said) % sounds.length] as Float32Array;
        waits.push((await engine.transcribe(sound)).ms);
        await next;
      }
    };
    await Promise.all(Array.from({ length: crews }, (_, crew) => one(crew)));
    waits.sort((a, b) => a - b);
    const at = (share: number): string =>
      `${Math.round(waits[Math.floor(share * (waits.length - 1))] ?? 0)} ms`;
    console.log(
      `${`${crews} crews`.padEnd(22)} ${String(waits.length).padStart(7)} ${at(0.5).padStart(8)} ${at(0.95).padStart(8)}`,
    );
  }
  await engine.close();
}

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
