import { existsSync, readFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { AutoModelForCTC, AutoProcessor, env } from '@xenova/transformers';
import type { Alphabet, Logits } from '../../src/speech/logits.ts';
import { SpeechUnavailable } from './transcriber.ts';

/** A model that writes letters, loaded from a folder of this machine; the network is never asked. */
export interface LetterModel {
  readonly alphabet: Alphabet;
  /** Mono, 16 kHz. */
  logits(samples: Float32Array): Promise<Logits>;
}

const NEEDED = ['config.json', 'preprocessor_config.json', 'tokenizer.json', 'onnx/model_quantized.onnx'];

/** Rejects with `SpeechUnavailable` when the folder holds no such model. */
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

/** Upper-case letters, as some models write, are taken as ours. */
function readAlphabet(folder: string): Alphabet {
  const { model } = JSON.parse(readFileSync(join(folder, 'tokenizer.json'), 'utf8'));
  const vocabulary: Record<string, number> = model?.vocab ?? {};
  const letters = new Map<string, number>();
  for (const [token, id] of Object.entries(vocabulary)) {
    const letter = token.toLowerCase();
    if (/^[a-z']$/.test(letter)) letters.set(letter, id);
  }
  const blank = vocabulary['<pad>'] ?? vocabulary['[PAD]'];
  const space = vocabulary['|'];
  if (blank === undefined || space === undefined || letters.size < 26) {
    throw new SpeechUnavailable(`The speech model in ${folder} does not write English letters one by one.`);
  }
  return { blank, space, letters };
}
