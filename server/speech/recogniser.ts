import { wordGraph } from '../../src/grammar/graph.ts';
import { type Heard, type HearOptions, hearer } from '../../src/speech/hear.ts';
import { loadModel } from './model.ts';

export interface Recogniser {
  hear(samples: Float32Array, options?: HearOptions): Promise<Heard>;
}

/** Quiet before and after, so that a word cut tight has room; samples. */
const EDGE = 4000;
/** Too short for any word; 0.05 s. */
const SHORTEST = 800;

/** The model in `folder` and the crew's grammar. Rejects with `SpeechUnavailable`. */
export async function loadRecogniser(folder: string): Promise<Recogniser> {
  const model = await loadModel(folder);
  const hear = hearer(wordGraph(), model.alphabet);
  return {
    async hear(samples, options) {
      if (samples.length < SHORTEST) return { text: '', confidence: 1, alternatives: [], open: '' };
      const padded = new Float32Array(samples.length + 2 * EDGE);
      padded.set(samples, EDGE);
      return hear(await model.logits(padded), options);
    },
  };
}
