import type { WordGraph } from '../grammar/graph.ts';
import { withEdges } from './edges.ts';
import { heardOf, weigher } from './hear.ts';
import type { Heard, HearOptions } from './heard.ts';
import type { Alphabet, Logits } from './logits.ts';
import { secondHearer, type WordModel } from './second.ts';
import { knownTo, type SingleWordModel, spot } from './single-words.ts';

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

/** The hearers that stand beside the letters, where a model has them. */
export interface OtherHearers {
  readonly second: WordModel | undefined;
  readonly single: SingleWordModel | undefined;
}

/** What a model's letters say, read with a grammar, and weighed by the other hearers. */
export function recogniser(
  model: LetterModel,
  grammar: WordGraph,
  { second, single }: Partial<OtherHearers> = {},
): Recogniser {
  const weighing = weigher(grammar, model.alphabet);
  const opinionOf = second && secondHearer(second.words);
  return {
    async hear(samples, options) {
      if (samples.length < SHORTEST) return { text: '', confidence: 1, alternatives: [], freeText: '' };
      const sound = withEdges(samples);
      const letters = await model.logits(sound);
      const weighed = weighing(letters, options, second && opinionOf?.(await second.logits(sound)));
      const likeliest = weighed.weighed?.sentences[0]?.text ?? '';
      return heardOf(weighed, single && knownTo(single, likeliest) ? await spot(single, sound) : undefined);
    },
  };
}
