import type { WordGraph } from '../grammar/graph.ts';
import { type Heard, type HearOptions, hearer } from './hear.ts';
import type { Alphabet, Logits } from './logits.ts';

/** A model that writes letters, wherever it runs. */
export interface LetterModel {
  readonly alphabet: Alphabet;
  /** Mono, 16 kHz. */
  logits(samples: Float32Array): Promise<Logits>;
}

export interface Recogniser {
  /** Mono, 16 kHz, -1 to 1. */
  hear(samples: Float32Array, options?: HearOptions): Promise<Heard>;
}

/** Quiet before and after, so that a word cut tight has room; samples. */
const EDGE = 4000;
/** Too short for any word; 0.05 s. */
const SHORTEST = 800;

/** What a model's letters say by a grammar. */
export function recogniser(model: LetterModel, grammar: WordGraph): Recogniser {
  const hear = hearer(grammar, model.alphabet);
  return {
    async hear(samples, options) {
      if (samples.length < SHORTEST) return { text: '', confidence: 1, alternatives: [], open: '' };
      const padded = new Float32Array(samples.length + 2 * EDGE);
      padded.set(samples, EDGE);
      return hear(await model.logits(padded), options);
    },
  };
}
