import { isSame } from '../formats/same.ts';
import { confusableWith } from '../grammar/confusable.ts';
import type { Intent, Understanding } from '../grammar/intent.ts';
import { parse } from '../grammar/parse.ts';
import type { Alternative, Via } from '../model/facts.ts';
import { valueReading } from '../model/reading.ts';

/**
 * How sure the speech model must be, summed over all alternatives with the same meaning. From `TAKE` the
 * words are taken and read back, between the two the crew is asked, below `ASK` it must say them again.
 */
export const TAKE = 0.91;
export const ASK = 0.4;

/** "Thirteen" is not taken while "thirty" has this probability, however sure the rest is. */
const CONFUSABLE = 0.005;
/** A question names at most this many, each with at least this share of the likeliest. */
const MOST_OPTIONS = 3;
const WORTH_ASKING = 0.1;

/** Words that only make things safer or slower are taken even when others would be asked about. */
export const SAFE: ReadonlySet<Intent['kind']> = new Set(['stop', 'wait', 'repeat', 'undo']);

export type Decision =
  | { kind: 'taken'; intents: Intent[] }
  /** Probably one of these, likeliest first; ask. */
  | { kind: 'doubtful'; options: Intent[][] }
  | { kind: 'unclear'; unknown: string[] };

export interface Words {
  via: Via;
  text: string;
  confidence?: number;
  alternatives?: readonly Alternative[];
}

/** What words mean, and whether that may be acted on. Typed words and buttons are certain. */
export function decide(words: Words): Decision {
  if (words.via !== 'voice') return certain(parse(words.text));
  const [best, ...others] = meanings(words);
  if (best === undefined || best.weight < ASK) return { kind: 'unclear', unknown: [] };
  const confusable = others.find(
    (other) => other.weight >= CONFUSABLE && areConfusable(best.intents, other.intents),
  );
  const sure = (best.weight >= TAKE && !confusable) || best.intents.every((intent) => SAFE.has(intent.kind));
  if (sure && !best.ambiguous) return { kind: 'taken', intents: best.intents };
  const worth = others.filter((other) => other === confusable || other.weight >= WORTH_ASKING * best.weight);
  return { kind: 'doubtful', options: [best, ...worth].slice(0, MOST_OPTIONS).map(({ intents }) => intents) };
}

/** Whether the two differ only by "thirteen" for "thirty", in a reading or in the grade of a filter. */
function areConfusable(one: readonly Intent[], other: readonly Intent[]): boolean {
  const swapped = one.map(swappedIn);
  return !isSame(one, swapped) && isSame(swapped, other);
}

function swappedIn(intent: Intent): Intent {
  if ('reading' in intent && intent.reading.kind === 'value') {
    const confusable = confusableWith(intent.reading.value);
    return confusable === undefined ? intent : { ...intent, reading: valueReading(confusable) };
  }
  if (intent.kind !== 'path' || intent.filter === undefined) return intent;
  const filter = confusableWith(intent.filter);
  return filter === undefined ? intent : { ...intent, filter };
}

function certain(understanding: Understanding): Decision {
  switch (understanding.kind) {
    case 'understood':
      return { kind: 'taken', intents: understanding.intents };
    case 'ambiguous':
      return { kind: 'doubtful', options: understanding.options };
    case 'unclear':
      return understanding;
  }
}

interface Meaning {
  intents: Intent[];
  weight: number;
  ambiguous: boolean;
}

/** The different meanings among what may have been said, each with its share of the model's belief. */
function meanings({ text, confidence = 0, alternatives = [] }: Words): Meaning[] {
  const found = new Map<string, Meaning>();
  const add = (intents: Intent[], weight: number, ambiguous: boolean) => {
    const key = JSON.stringify(intents);
    const meaning = found.get(key) ?? { intents, weight: 0, ambiguous };
    meaning.weight += weight;
    found.set(key, meaning);
  };
  const heard = alternatives.some((alternative) => alternative.text === text)
    ? alternatives
    : [{ text, confidence }, ...alternatives];
  for (const { text: words, confidence: weight } of heard) {
    const understanding = parse(words);
    if (understanding.kind === 'understood') add(understanding.intents, weight, false);
    if (understanding.kind === 'ambiguous') {
      for (const option of understanding.options) add(option, weight, true);
    }
  }
  return [...found.values()].sort((a, b) => b.weight - a.weight);
}
