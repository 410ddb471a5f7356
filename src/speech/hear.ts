import { FILLERS } from '../grammar/grammar.ts';
import type { WordGraph } from '../grammar/graph.ts';
import { parse } from '../grammar/parse.ts';
import type { Voice } from '../model/voice.ts';
import { belief, loweredBy } from './belief.ts';
import { search } from './decode.ts';
import { type FreeText, freeText } from './free-text.ts';
import type { Heard, HearOptions } from './heard.ts';
import { type Alphabet, type Logits, logSoftmax } from './logits.ts';
import type { SecondOpinion } from './second.ts';
import { isStringOfDigits, type Spotted } from './single-words.ts';
import { Spelling } from './spelling.ts';
import { agreedShare, meaningOf, type Understand, type Weighed, weigh } from './weigh.ts';

/** The cost of each word of a sentence, natural log; words without meaning cost more. */
const WORD_COST = 0.5;
const FILLER_COST = 3;
const MOST_ALTERNATIVES = 8;

/** What is spoken: which words carry nothing, what a text means, and what begins free text, which is the first group and not in the grammar. */
export interface Spoken {
  readonly fillers: ReadonlySet<string>;
  readonly understand: Understand;
  readonly remark: RegExp;
}
export const ENGLISH_SPOKEN: Spoken = {
  fillers: FILLERS,
  understand: parse,
  remark: /^(?:note|remark|for the record)\b(.+)/,
};

/** What was heard without the grammar, and the sentences of the grammar that it may have been. */
export interface Weighing {
  free: FreeText;
  weighed: Weighed | undefined;
  /** What the second hearer thinks of any text, where there is one. */
  opinion?: SecondOpinion | undefined;
}

/** No more is believed of what another hearer hears otherwise: it is asked about, and not taken. Ours, no source. */
const DISPUTED = 0.6;
/** What another hearer heard instead is believed this much, so that the question names it. */
const RIVAL = 0.3;
/** How much better another number may explain the single words before it is asked about, natural log. */
const RIVAL_LEAD = 1;

/** How much better the same string of digits must fit the second hearer before the two outvote the letters, natural log. Ours, no source. */
const OUTVOTED_LEAD = 1;

/** The least share that the second hearer must give to what the letters heard, of all that letters and single words found. */
const AGREED = 0.8;

/** A text of which the second hearer is asked. */
interface Found {
  text: string;
  meaning: string;
}

/**
 * What the second hearer doubts: it finds the other meanings together too likely. Of what single words found, too: letters that are
 * sure of an "eight" do not even list the "six". `unheard`: the likeliest of these, for the question.
 */
function doubtOf(
  { sentences }: Weighed,
  opinion: SecondOpinion,
  spotted?: Spotted,
): { unheard: string | undefined } | undefined {
  const meaning = sentences[0]?.meaning as string;
  const heard = new Set(sentences.map(({ text }) => text));
  const more = (spotted?.rivals ?? []).flatMap(({ text }): Found[] =>
    heard.has(text) ? [] : [{ text, meaning: meaningOf(text) }],
  );
  if (agreedShare([...sentences, ...more], meaning, opinion) >= AGREED) return undefined;
  const [unheard] = more
    .filter((one) => one.meaning !== meaning)
    .sort((a, b) => opinion(b.text) - opinion(a.text));
  const isLikeliest =
    unheard && sentences.every((one) => one.meaning === meaning || opinion(one.text) < opinion(unheard.text));
  return { unheard: isLikeliest ? unheard.text : undefined };
}

/** From so much speech on that no word of the likeliest meaning covers, in 10 ms, it is asked about. Chosen on left-out people: docs/speech.md. */
const LEFT_OUT = 40;

/** Whether single words leave out that much speech in every wording of the likeliest meaning that they know. */
function leavesOut({ sentences }: Weighed, { leftOut }: Spotted): boolean {
  const meaning = sentences[0]?.meaning;
  const left = sentences.flatMap((one) => (one.meaning === meaning ? (leftOut(one.text) ?? []) : []));
  return left.length > 0 && Math.min(...left) >= LEFT_OUT;
}

/**
 * What the hearer of single words would rather have heard: the words that explain the sound better than any wording of the
 * likeliest meaning does. Undefined where it agrees, or does not know the words.
 */
function rivalOf({ sentences }: Weighed, { score, rivals }: Spotted): string | undefined {
  const meaning = sentences[0]?.meaning;
  const scores = sentences.flatMap((one) => (one.meaning === meaning ? (score(one.text) ?? []) : []));
  if (scores.length === 0) return undefined;
  const rival = rivals.find(({ text }) => meaningOf(text) !== meaning);
  return rival && rival.score - Math.max(...scores) > RIVAL_LEAD ? rival.text : undefined;
}

/**
 * Whether second hearer and single words outvote the letters: the rival is a string of digits, and fits what the second hearer
 * heard better than all else does that anyone found. Both must be clear; and only strings, where letters drop a digit that is
 * quiet or cut tight.
 */
function isOutvoted(
  { sentences }: Weighed,
  rival: string,
  { rivals }: Spotted,
  opinion: SecondOpinion,
): boolean {
  if (!isStringOfDigits(rival)) return false;
  const meaning = meaningOf(rival);
  const others = [...sentences, ...rivals].filter(({ text }) => meaningOf(text) !== meaning);
  return opinion(rival) - Math.max(...others.map(({ text }) => opinion(text))) > OUTVOTED_LEAD;
}

/** Weighs a model's letters by a grammar. The first sentences are slower, because words are spelled out then. */
export function weigher(
  graph: WordGraph,
  alphabet: Alphabet,
  { fillers, understand }: Spoken = ENGLISH_SPOKEN,
): (logits: Logits, options?: HearOptions, opinion?: SecondOpinion) => Weighing {
  const spelling = new Spelling(graph, alphabet);
  const cost = (word: string): number => (fillers.has(word) ? FILLER_COST : WORD_COST);
  return (logits, options = {}, opinion?) => {
    const logProbs = logSoftmax(logits);
    const free = freeText(logProbs, logits.tokens, alphabet);
    if (free.text === '') return { free, weighed: undefined, opinion };
    const found = search(logProbs, logits.tokens, alphabet, spelling, { cost });
    return { free, weighed: weigh(found, free, options, understand), opinion };
  };
}

/**
 * What was heard, with what the hearer of single words says of it where there is one. `believe`: how likely the likeliest
 * meaning is right; `voice`: of whoever said it, where it is known.
 */
export function heardOf(
  { free, weighed, opinion }: Weighing,
  spotted?: Spotted,
  believe = belief,
  voice?: Voice,
  spoken = ENGLISH_SPOKEN,
): Heard {
  if (free.text === '') return { text: '', confidence: 1, alternatives: [], freeText: '' };
  if (spoken.remark.exec(free.text)?.[1]?.trim()) return remark(free);
  const [first] = weighed?.sentences ?? [];
  if (!weighed || !first) return { text: free.text, confidence: 0, alternatives: [], freeText: free.text };
  const clearRival = spotted && rivalOf(weighed, spotted);
  const believed = voice ? loweredBy(voice, believe(weighed)) : believe(weighed);
  if (spotted && opinion && clearRival !== undefined && isOutvoted(weighed, clearRival, spotted, opinion))
    return outvoted(weighed, clearRival, believed, free.text);
  const doubt = opinion && doubtOf(weighed, opinion, spotted);
  const rival = clearRival ?? doubt?.unheard;
  const isDoubted = doubt || rival !== undefined || (spotted && leavesOut(weighed, spotted));
  const right = isDoubted ? Math.min(believed, DISPUTED) : believed;
  const rest = rival === undefined ? 1 - right : Math.max(0, 1 - right - RIVAL);
  const alternatives = weighed.sentences.slice(0, MOST_ALTERNATIVES).map(({ text, share, meaning }) => ({
    text,
    confidence: meaning === first.meaning ? (right * share) / weighed.share : rest * share,
  }));
  if (rival !== undefined) {
    const known = alternatives.find(({ text }) => text === rival);
    if (known) known.confidence += Math.min(RIVAL, 1 - right);
    else alternatives.push({ text: rival, confidence: Math.min(RIVAL, 1 - right) });
  }
  const { text, confidence } = alternatives[0] as (typeof alternatives)[number];
  return { text, confidence, alternatives, freeText: free.text };
}

/** What two of the three heard. It is believed as much as the letters are sure that this was one of our sentences. */
function outvoted({ sentences }: Weighed, text: string, believed: number, freeText: string): Heard {
  const meaning = meaningOf(text);
  const rest = sentences
    .filter((one) => one.meaning !== meaning)
    .slice(0, MOST_ALTERNATIVES)
    .map((one) => ({ text: one.text, confidence: (1 - believed) * one.share }));
  return { text, confidence: believed, alternatives: [{ text, confidence: believed }, ...rest], freeText };
}

/** Free text: believed letter by letter. */
const remark = ({ text, score }: FreeText): Heard => {
  const confidence = Math.exp(score / text.length);
  return { text, confidence, alternatives: [{ text, confidence }], freeText: text };
};
