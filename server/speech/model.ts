import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { AutoModelForCTC, AutoProcessor, env } from '@xenova/transformers';
import { alphabetOf } from '../../src/speech/alphabet.ts';
import type { Alphabet } from '../../src/speech/logits.ts';
import type { LetterModel } from '../../src/speech/recogniser.ts';
import { SpeechUnavailable } from './transcriber.ts';

/** What a folder must hold to be a speech model. */
export const NEEDED = [
  'config.json',
  'preprocessor_config.json',
  'tokenizer.json',
  'onnx/model_quantized.onnx',
];

/** The model in a folder of this machine; the network is never asked. Rejects with `SpeechUnavailable` when the folder holds no such model. */
export async function loadModel(folder: string): Promise<LetterModel> {
  const missing = NEEDED.filter((file) => !existsSync(join(folder, file)));
  if (missing.length > 0) {
    throw new SpeechUnavailable(`There is no speech model in ${folder}: ${missing.join(', ')} missing.`);
  }
  const alphabet = readAlphabet(folder);
  env.allowRemoteModels = false;
  env.localModelPath = `${dirname(resolve(folder))}/`;
  const name = basename(resolve(folder));
  const processor = await AutoProcessor.from_pretrained(name);
  const model = await AutoModelForCTC.from_pretrained(name, { quantized: true });
  return {
    alphabet,
    async logits(samples) {
      const { input_values } = await processor(samples);
      const { logits } = await model({ input_values });
      const [, frames, tokens] = logits.dims as [number, number, number];
      return { data: logits.data as Float32Array, frames, tokens };
    },
  };
}

function readAlphabet(folder: string): Alphabet {
  try {
    return alphabetOf(JSON.parse(readFileSync(join(folder, 'tokenizer.json'), 'utf8')));
  } catch (error) {
    throw new SpeechUnavailable(`${folder}: ${error instanceof Error ? error.message : error}`);
  }
}
