import type { WordGraph } from '../grammar/graph.ts';
import { withEdges } from './edges.ts';
import { hearer } from './hear.ts';
import type { Heard, HearOptions } from './heard.ts';
import type { Alphabet, Logits } from './logits.ts';
import { secondHearer, type WordModel } from './second.ts';

/** A model that writes letters, on the phone or the server. */
export interface LetterModel {
  readonly alphabet: Alphabet;
  /** Mono, 16 kHz. */
  logits(samples: Float32Array): Promise<Logits>;
}

export interface Recogniser {
  /** Mono, 16 kHz, -1 to 1. */
  hear(samples: Float32Array, options?: HearOptions): Promise<Heard>;
}

/** Too short for any word; 0.05 s. */
const SHORTEST = 800;

/** What a model's letters say, read with a grammar, and weighed by a second hearer where there is one. */
export function recogniser(model: LetterModel, grammar: WordGraph, second?: WordModel): Recogniser {
  const hear = hearer(grammar, model.alphabet);
  const opinionOf = second && secondHearer(second.words);
  return {
    async hear(samples, options) {
      if (samples.length < SHORTEST) return { text: '', confidence: 1, alternatives: [], freeText: '' };
      const sound = withEdges(samples);
      const letters = await model.logits(sound);
      return hear(letters, options, second && opinionOf?.(await second.logits(sound)));
    },
  };
}
