import { FILLERS } from '../grammar/grammar.ts';
import type { WordGraph } from '../grammar/graph.ts';
import { belief } from './belief.ts';
import { search } from './decode.ts';
import { type FreeText, freeText } from './free-text.ts';
import type { Heard, HearOptions } from './heard.ts';
import { type Alphabet, type Logits, logSoftmax } from './logits.ts';
import type { SecondOpinion } from './second.ts';
import { Spelling } from './spelling.ts';
import { type Weighed, weigh } from './weigh.ts';

/** The cost of each word of a sentence, natural log; words without meaning cost more. */
const WORD_COST = 0.5;
const FILLER_COST = 3;
const MOST_ALTERNATIVES = 8;
/** Begins free text, which is not in the grammar. */
const REMARK = /^(note|remark|for the record)\b.+/;

const wordCost = (word: string): number => (FILLERS.has(word) ? FILLER_COST : WORD_COST);

/** What was heard without the grammar, and the sentences of the grammar that it may have been. */
export interface Weighing {
  free: FreeText;
  weighed: Weighed | undefined;
}

/** No more is believed of what a second hearer hears otherwise: it is asked about, and not taken. Ours, no source. */
const DISPUTED = 0.6;

/** To the second hearer the other meanings together are likelier. */
const isDisputed = ({ agreed }: Weighed): boolean => agreed !== undefined && agreed < 0.5;

/** Weighs a model's letters by a grammar. The first sentences are slower, because words are spelled out then. */
export function weigher(
  graph: WordGraph,
  alphabet: Alphabet,
): (logits: Logits, options?: HearOptions, opinion?: SecondOpinion) => Weighing {
  const spelling = new Spelling(graph, alphabet);
  return (logits, options = {}, opinion?) => {
    const logProbs = logSoftmax(logits);
    const free = freeText(logProbs, logits.tokens, alphabet);
    if (free.text === '') return { free, weighed: undefined };
    const found = search(logProbs, logits.tokens, alphabet, spelling, { cost: wordCost });
    return { free, weighed: weigh(found, free, options, opinion) };
  };
}

/** Makes a listener from a model's letters and a grammar. */
export function hearer(
  graph: WordGraph,
  alphabet: Alphabet,
): (logits: Logits, options?: HearOptions, opinion?: SecondOpinion) => Heard {
  const weighing = weigher(graph, alphabet);
  return (logits, options, opinion) => {
    const { free, weighed } = weighing(logits, options, opinion);
    if (free.text === '') return { text: '', confidence: 1, alternatives: [], freeText: '' };
    if (REMARK.test(free.text)) return remark(free);
    const [first] = weighed?.sentences ?? [];
    if (!weighed || !first) return { text: free.text, confidence: 0, alternatives: [], freeText: free.text };
    const right = isDisputed(weighed) ? Math.min(belief(weighed), DISPUTED) : belief(weighed);
    const alternatives = weighed.sentences.slice(0, MOST_ALTERNATIVES).map(({ text, share, meaning }) => ({
      text,
      confidence: meaning === first.meaning ? (right * share) / weighed.share : (1 - right) * share,
    }));
    const { text, confidence } = alternatives[0] as (typeof alternatives)[number];
    return { text, confidence, alternatives, freeText: free.text };
  };
}

/** Free text: believed letter by letter. */
const remark = ({ text, score }: FreeText): Heard => {
  const confidence = Math.exp(score / text.length);
  return { text, confidence, alternatives: [{ text, confidence }], freeText: text };
};
