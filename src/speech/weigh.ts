import type { Intent, Understanding } from '../grammar/intent.ts';
import { parse } from '../grammar/parse.ts';
import { isShown } from '../model/shown.ts';
import type { Candidate } from './decode.ts';
import type { FreeText } from './free-text.ts';
import type { HearOptions } from './heard.ts';
import type { SecondOpinion } from './second.ts';

/** What the sentences found for an utterance are worth, before calibration. */
export interface Weighed {
  /** Likeliest first; shares of everything that fits sound and grammar; they add up to 1. */
  readonly sentences: readonly { text: string; share: number; meaning: string }[];
  /** Share of the likeliest meaning, in any words. */
  readonly share: number;
  /** How much better free letters fit the sound than the best sentence, natural log, 0 or more. */
  readonly strain: number;
  /** Letters of the free text. */
  readonly letters: number;
  /** How unsure the model was of them: minus the log probability of the free text, for each letter; 0 or more. */
  readonly blur: number;
}

/** Sentences kept from the search. */
const KEPT = 24;
/** Frames depend on each other, so their product says too much; it counts only this much. */
const TRUST = 0.6;
/** What a reading that would surprise costs, natural log; one between the meter's steps does. */
const SURPRISE_COST = 4;
/** What it costs to say what was not asked for. */
const UNASKED_COST = 2;

/** Adds up the sentences with the same meaning, and weighs in what was expected. Undefined if there is none. */
export function weigh(
  found: readonly Candidate[],
  free: FreeText,
  { expect }: HearOptions,
  understand: Understand = parse,
): Weighed | undefined {
  const kept = found.slice(0, KEPT).map(({ text, score, cost }) => {
    const { options, key } = meantBy(text, understand);
    const fit = TRUST * (score - cost - (expect ? surpriseOf(options.flat(), expect) : 0));
    return { text, meaning: key, score, fit };
  });
  const sentences = shared(kept, ({ fit }) => fit)
    .map(({ text, meaning, share }) => ({ text, meaning, share }))
    .sort((a, b) => b.share - a.share);
  const shares = new Map<string, number>();
  for (const { meaning, share } of sentences) shares.set(meaning, (shares.get(meaning) ?? 0) + share);
  const [best] = [...shares].sort((a, b) => b[1] - a[1]);
  if (!best) return undefined;
  const [meaning, share] = best;
  const score = Math.max(...kept.filter((one) => one.meaning === meaning).map((one) => one.score));
  // The best wording of the likeliest meaning comes first, even if another single wording is likelier.
  const first = sentences.find((one) => one.meaning === meaning);
  const letters = free.text.replaceAll(' ', '').length;
  return {
    sentences: first ? [first, ...sentences.filter((one) => one !== first)] : sentences,
    share,
    strain: Math.max(0, free.score - score),
    letters,
    blur: -free.score / Math.max(1, letters),
  };
}

/** Each with its share of all: e to the power of its merit, divided by their sum. */
function shared<T>(all: readonly T[], merit: (one: T) => number): (T & { share: number })[] {
  const top = Math.max(...all.map(merit));
  // Where nothing fits at all, nothing has more of it than the others.
  const weight = (one: T): number => (top === Number.NEGATIVE_INFINITY ? 1 : Math.exp(merit(one) - top));
  const total = all.reduce((sum, one) => sum + weight(one), 0);
  return all.map((one) => ({ ...one, share: weight(one) / total }));
}

/** The share of one meaning among some texts, as a second hearer hears them; 0 to 1. */
export function agreedShare(
  texts: readonly { text: string; meaning: string }[],
  meaning: string,
  opinion: SecondOpinion,
): number {
  return shared(texts, ({ text }) => opinion(text))
    .filter((one) => one.meaning === meaning)
    .reduce((sum, { share }) => sum + share, 0);
}

/** What a text means, in the language of whoever says it. */
export type Understand = (text: string) => Understanding;

/** Each of the things that a text may mean, and all of them as a key: the text itself where it means nothing. */
interface Meant {
  readonly options: readonly (readonly Intent[])[];
  readonly key: string;
}

/** So many texts are remembered with what they mean: the hearers ask about the same ones again and again. */
const REMEMBERED = 2_000;
const remembered = new WeakMap<Understand, Map<string, Meant>>();

function meantBy(text: string, understand: Understand): Meant {
  const all = remembered.get(understand) ?? new Map<string, Meant>();
  remembered.set(understand, all);
  const known = all.get(text);
  if (known) return known;
  const options = optionsOf(understand(text));
  const meant = { options, key: options.length > 0 ? JSON.stringify(options) : text };
  if (all.size >= REMEMBERED) all.clear();
  all.set(text, meant);
  return meant;
}

function optionsOf(understood: Understanding): Meant['options'] {
  if (understood.kind === 'understood') return [understood.intents];
  return understood.kind === 'ambiguous' ? understood.options : [];
}

/** The meaning of a text, as a key. */
export const meaningOf = (text: string, understand: Understand = parse): string =>
  meantBy(text, understand).key;

function surpriseOf(
  intents: readonly Intent[],
  { low, high, steps, asked }: NonNullable<HearOptions['expect']>,
): number {
  const isOff = intents.some(
    (intent) =>
      'reading' in intent &&
      intent.reading.kind === 'value' &&
      (intent.reading.value < low ||
        intent.reading.value > high ||
        (steps !== undefined && !isShown(intent.reading.value, steps))),
  );
  const isUnasked = asked !== undefined && !intents.some(({ kind }) => asked.includes(kind));
  return (isOff ? SURPRISE_COST : 0) + (isUnasked ? UNASKED_COST : 0);
}
