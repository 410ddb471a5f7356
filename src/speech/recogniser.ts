import type { WordGraph } from '../grammar/graph.ts';
import type { Voice } from '../model/voice.ts';
import { belief } from './belief.ts';
import { withEdges } from './edges.ts';
import { ENGLISH_SPOKEN, heardOf, type Spoken, type Weighing, weigher } from './hear.ts';
import type { Heard, HearOptions } from './heard.ts';
import type { Alphabet, Logits } from './logits.ts';
import { type SecondOpinion, secondHearer, type WordModel } from './second.ts';
import { knownTo, type SingleWordModel, spot } from './single-words.ts';
import { TO_READ } from './to-read.ts';
import { type ReadDigit, readDigit, tenOf, voiceOf } from './voice.ts';

/** A model that writes letters, on the phone or the server. */
export interface LetterModel {
  readonly alphabet: Alphabet;
  /** Mono, 16 kHz. */
  logits(samples: Float32Array): Promise<Logits>;
}

export interface Recogniser {
  /** Mono, 16 kHz, -1 to 1. */
  hear(samples: Float32Array, options?: HearOptions): Promise<Heard>;
  /**
   * What ten digits that somebody read say of that voice. Undefined where they were not heard as such. A model that writes words cannot tell.
   */
  learn?(samples: Float32Array): Promise<Voice | undefined>;
}

/** Too short for any word; 0.05 s. */
const SHORTEST = 800;

/** The hearers that stand beside the letters, where a model has them. */
export interface OtherHearers {
  readonly second: WordModel | undefined;
  readonly single: SingleWordModel | undefined;
}

/** What a model's letters say, read with a grammar, and weighed by the other hearers. `spoken`: of another language than English. */
export function recogniser(
  model: LetterModel,
  grammar: WordGraph,
  { second, single }: Partial<OtherHearers> = {},
  spoken: Spoken = ENGLISH_SPOKEN,
): Recogniser {
  const weighing = weigher(grammar, model.alphabet, spoken);
  const opinionOf = second && secondHearer(second.words);
  const letters = async (
    sound: Float32Array,
    options?: HearOptions,
    opinion?: SecondOpinion,
  ): Promise<Weighing> => weighing(await model.logits(sound), options, opinion);
  return {
    async hear(samples, options) {
      if (samples.length < SHORTEST) return { text: '', confidence: 1, alternatives: [], freeText: '' };
      const sound = withEdges(samples);
      const weighed = await letters(sound, options, second && opinionOf?.(await second.logits(sound)));
      const likeliest = weighed.weighed?.sentences[0]?.text ?? '';
      const spotted = single && knownTo(single, likeliest) ? await spot(single, sound) : undefined;
      return heardOf(weighed, spotted, belief, options?.voice, spoken);
    },
    async learn(samples) {
      const digits: ReadDigit[] = [];
      for (const [i, sound] of (tenOf(samples) ?? []).entries())
        digits.push(readDigit(await letters(withEdges(sound)), TO_READ[i] as string));
      return voiceOf(digits);
    },
  };
}
