import { FILLERS } from '../grammar/grammar.ts';
import type { WordGraph } from '../grammar/graph.ts';
import { search } from './beam.ts';
import { belief } from './belief.ts';
import { type Alphabet, type Logits, logSoftmax } from './logits.ts';
import { openText } from './open.ts';
import { Spelling } from './spelling.ts';
import { weigh } from './weigh.ts';

export interface Heard {
  /** The likeliest text; empty for silence and noise. */
  text: string;
  /** 0 to 1, that this text was said. */
  confidence: number;
  /**
   * All that may have been said, `text` among them, likeliest first. The confidences of those that mean the
   * same sum to the probability that this was meant; over all they sum to at most 1.
   */
  alternatives: { text: string; confidence: number }[];
  /** What was heard without the grammar. */
  open: string;
}

export interface HearOptions {
  /** Readings that would not surprise now, in the meter's units. */
  expect?: { low: number; high: number };
}

/** What a sentence costs for each word, natural log; words that carry nothing are dear. */
const WORD_COST = 0.5;
const FILLER_COST = 3;
const MOST_ALTERNATIVES = 8;
/** Begins free text, which no grammar holds. */
const REMARK = /^(note|remark|for the record)\b.+/;

const wordCost = (word: string): number => (FILLERS.has(word) ? FILLER_COST : WORD_COST);

/** Makes the listener for a model's letters and a grammar. The first sentences are slower, while words are spelled out. */
export function hearer(
  graph: WordGraph,
  alphabet: Alphabet,
): (logits: Logits, options?: HearOptions) => Heard {
  const spelling = new Spelling(graph, alphabet);
  return (logits, options = {}) => {
    const logProbs = logSoftmax(logits);
    const open = openText(logProbs, logits.tokens, alphabet);
    if (open.text === '') return { text: '', confidence: 1, alternatives: [], open: '' };
    const rejected = { text: open.text, confidence: 0, alternatives: [], open: open.text };
    if (REMARK.test(open.text)) return { ...rejected, confidence: Math.exp(open.score / open.text.length) };
    const weighed = weigh(
      search(logProbs, logits.tokens, alphabet, spelling, { cost: wordCost }),
      open,
      options,
    );
    if (!weighed) return rejected;
    const right = belief(weighed);
    const { meaning } = weighed.sentences[0] as (typeof weighed.sentences)[number];
    const alternatives = weighed.sentences
      .slice(0, MOST_ALTERNATIVES)
      .map(({ text, share, meaning: its }) => ({
        text,
        confidence: its === meaning ? (right * share) / weighed.share : (1 - right) * share,
      }));
    const [best] = alternatives;
    return { text: best?.text ?? '', confidence: best?.confidence ?? 0, alternatives, open: open.text };
  };
}
