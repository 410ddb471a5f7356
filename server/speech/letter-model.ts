import { alphabetOf } from '../../src/speech/alphabet.ts';
import type { Alphabet } from '../../src/speech/logits.ts';
import type { LetterModel } from '../../src/speech/recogniser.ts';
import type { ModelFolder } from './model-folder.ts';
import { loadNetwork } from './network.ts';
import { SpeechUnavailable } from './transcriber.ts';

/** A model that writes letters. Rejects with `SpeechUnavailable` when they are not English letters. */
export async function loadLetterModel({ path, name, quantized, json }: ModelFolder): Promise<LetterModel> {
  const alphabet = readAlphabet(path, json('tokenizer.json'));
  return { alphabet, logits: await loadNetwork(name, quantized) };
}

function readAlphabet(folder: string, tokenizer: unknown): Alphabet {
  try {
    return alphabetOf(tokenizer);
  } catch (error) {
    throw new SpeechUnavailable(`${folder}: ${error instanceof Error ? error.message : error}`);
  }
}
