import { soundsLike } from '../grammar/homophones.ts';
import { type Logits, logAdd, logSoftmax } from './logits.ts';
import { remembered } from './remembered.ts';

/**
 * A second hearer, of another kind than the letters: a network that names whole words. It finds no sentences. It says
 * how well those that the letters found fit what it heard. Two that fail differently are seldom wrong together.
 */
export interface WordModel {
  /** In the order of their tokens, which begin with 2: 0 is "nothing new", 1 is any other word. */
  readonly words: readonly string[];
  /** Mono, 16 kHz. */
  logits(samples: Float32Array): Promise<Logits>;
}

const BLANK = 0;
const OTHER = 1;
const FIRST_WORD = 2;

/** Log probability of one utterance being these words, as the second hearer hears it. */
export type SecondOpinion = (text: string) => number;

/** Makes opinions from a model's words. */
export function secondHearer(words: readonly string[]): (logits: Logits) => SecondOpinion {
  const tokenOf = new Map(words.map((word, i) => [word, i + FIRST_WORD]));
  const sequence = (text: string): number[] =>
    text.split(' ').map((word) => tokenOf.get(soundsLike(word)) ?? OTHER);
  return (logits) => {
    const logProbs = logSoftmax(logits);
    return remembered((text) => sequenceScore(logProbs, logits.tokens, sequence(text)));
  };
}

/**
 * Log probability of a sequence of tokens, by the forward algorithm of connectionist temporal classification (Graves et
 * al. 2006). `logProbs`: frames × tokens, row by row. Minus infinity where the sequence does not fit into the frames.
 */
export function sequenceScore(logProbs: Float64Array, tokens: number, sequence: readonly number[]): number {
  const labels = [BLANK, ...sequence.flatMap((token) => [token, BLANK])];
  let before = labels.map(() => Number.NEGATIVE_INFINITY);
  for (let at = 0; at < logProbs.length; at += tokens) {
    before = labels.map((label, i) => {
      if (at === 0) return i < 2 ? (logProbs[label] as number) : Number.NEGATIVE_INFINITY;
      const stays = logAdd(before[i] as number, before[i - 1] ?? Number.NEGATIVE_INFINITY);
      // A blank between two tokens may be left out, but for two that are the same.
      const skips = label !== BLANK && label !== labels[i - 2] ? before[i - 2] : undefined;
      return logAdd(stays, skips ?? Number.NEGATIVE_INFINITY) + (logProbs[at + label] as number);
    });
  }
  return logAdd(before.at(-1) as number, before.at(-2) ?? Number.NEGATIVE_INFINITY);
}
