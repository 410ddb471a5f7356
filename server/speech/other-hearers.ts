import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { AutoModelForCTC, Tensor } from '@xenova/transformers';
import * as z from 'zod/mini';
import type { WordModel } from '../../src/speech/second.ts';
import type { SingleWordModel } from '../../src/speech/single-words.ts';
import { inOneRow, WINDOW } from '../../src/speech/window.ts';
import { type ModelFolder, SECOND, SINGLE } from './model-folder.ts';
import { loadNetwork } from './network.ts';

/** The words that a hearer of this folder knows. Undefined where the folder has no such hearer. */
const wordsOf = ({ path, json }: ModelFolder, part: string): string[] | undefined =>
  existsSync(join(path, part, 'words.json'))
    ? z.array(z.string()).parse(json(`${part}/words.json`))
    : undefined;

/** The second hearer of a model's folder. */
export async function loadSecondHearer(folder: ModelFolder): Promise<WordModel | undefined> {
  const words = wordsOf(folder, SECOND);
  return words && { words, logits: await loadNetwork(`${folder.name}/${SECOND}`, true) };
}

/** The hearer of single words of a model's folder. */
export async function loadSingleWords(folder: ModelFolder): Promise<SingleWordModel | undefined> {
  const words = wordsOf(folder, SINGLE);
  if (!words) return undefined;
  const model = await AutoModelForCTC.from_pretrained(`${folder.name}/${SINGLE}`, { quantized: true });
  return {
    words,
    async logits(windows) {
      const input_values = new Tensor('float32', inOneRow(windows), [windows.length, WINDOW]);
      const { logits } = await model({ input_values });
      const [frames, tokens] = logits.dims as [number, number];
      return { data: logits.data as Float32Array, frames, tokens };
    },
  };
}
