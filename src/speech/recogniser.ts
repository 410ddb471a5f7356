import type { WordGraph } from '../grammar/graph.ts';
import { withEdges } from './edges.ts';
import { hearer } from './hear.ts';
import type { Heard, HearOptions } from './heard.ts';
import type { Alphabet, Logits } from './logits.ts';

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

/** What a model's letters say, read with a grammar. */
export function recogniser(model: LetterModel, grammar: WordGraph): Recogniser {
  const hear = hearer(grammar, model.alphabet);
  return {
    async hear(samples, options) {
      if (samples.length < SHORTEST) return { text: '', confidence: 1, alternatives: [], freeText: '' };
      return hear(await model.logits(withEdges(samples)), options);
    },
  };
}
