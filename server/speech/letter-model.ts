import { AutoModelForCTC, AutoProcessor } from '@xenova/transformers';
import { alphabetOf } from '../../src/speech/alphabet.ts';
import type { Alphabet } from '../../src/speech/logits.ts';
import type { LetterModel } from '../../src/speech/recogniser.ts';
import type { ModelFolder } from './model-folder.ts';
import { SpeechUnavailable } from './transcriber.ts';

/** A model that writes letters. Rejects with `SpeechUnavailable` when they are not English letters. */
export async function loadLetterModel({ path, name, quantized, json }: ModelFolder): Promise<LetterModel> {
  const alphabet = readAlphabet(path, json('tokenizer.json'));
  const processor = await AutoProcessor.from_pretrained(name);
  const model = await AutoModelForCTC.from_pretrained(name, { quantized });
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

function readAlphabet(folder: string, tokenizer: unknown): Alphabet {
  try {
    return alphabetOf(tokenizer);
  } catch (error) {
    throw new SpeechUnavailable(`${folder}: ${error instanceof Error ? error.message : error}`);
  }
}
