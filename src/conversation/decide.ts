import { isSame } from '../formats/same.ts';
import { confusableWith } from '../grammar/confusable.ts';
import type { Intent, Understanding } from '../grammar/intent.ts';
import type { Context } from '../grammar/rule.ts';
import type { CameraReading } from '../model/camera.ts';
import type { Alternative, Via } from '../model/facts.ts';
import type { TypedLanguage } from '../model/language.ts';
import { valueReading } from '../model/reading.ts';
import type { SensorLook } from '../model/sensor.ts';
import { understand } from '../understand/understand.ts';

/**
 * How sure the speech model must be, summed over all alternatives with the same meaning. From `TAKE` the
 * words are taken and read back, between the two the crew is asked, below `ASK` it must say them again.
 */
export const TAKE = 0.91;
export const ASK = 0.4;
/**
 * Words that end something, such as "accept", need this much: what they end may stand unproven if they were heard
 * wrong. Chosen by hand, above nearly all beliefs in words that a bench heard wrong; not fitted.
 */
export const END = 0.97;

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
  language?: TypedLanguage;
  confidence?: number;
  alternatives?: readonly Alternative[];
  camera?: CameraReading;
  sensor?: SensorLook;
}

/** What is going on when the words come. */
export interface Situation extends Context {
  /** Whether this would end something: an acceptance, a test, an item of a list. */
  ends?(intents: readonly Intent[]): boolean;
  /** Whether exactly this meaning was asked about just before. */
  isAsked?(options: readonly Intent[][]): boolean;
}

/**
 * What words mean, and whether that may be acted on. Typed words and buttons are certain. The same meaning heard again
 * after the question about it is taken: the two hearings agree. Where it ends something, the second one must be as
 * sure as other words must be.
 */
export function decide(words: Words, situation: Situation = {}): Decision {
  const { ends, isAsked, ...context } = situation;
  if (words.via !== 'voice') return certain(understand(words.text, words.language, context));
  const [best, ...others] = meanings(words, context);
  if (best === undefined || best.weight < ASK) return { kind: 'unclear', unknown: [] };
  const confusable = others.find(
    (other) => other.weight >= CONFUSABLE && areConfusable(best.intents, other.intents),
  );
  const isEnd = ends?.(best.intents) ?? false;
  const isSafe = best.intents.every((intent) => SAFE.has(intent.kind));
  const sure = (best.weight >= (isEnd ? END : TAKE) && !confusable) || isSafe;
  if (sure && !best.ambiguous) return { kind: 'taken', intents: best.intents };
  const worth = others.filter((other) => other === confusable || other.weight >= WORTH_ASKING * best.weight);
  const options = [best, ...worth].slice(0, MOST_OPTIONS).map(({ intents }) => intents);
  const isRepeated = options.length === 1 && !best.ambiguous && isAsked?.(options);
  if (isRepeated && (!isEnd || best.weight >= TAKE)) return { kind: 'taken', intents: best.intents };
  return { kind: 'doubtful', options };
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
  if (intent.kind === 'rough') {
    const confusable = confusableWith(intent.value);
    return confusable === undefined ? intent : { ...intent, value: confusable };
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
function meanings({ text, language, confidence = 0, alternatives = [] }: Words, context: Context): Meaning[] {
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
    const understanding = understand(words, language, context);
    if (understanding.kind === 'understood') add(understanding.intents, weight, false);
    if (understanding.kind === 'ambiguous') {
      for (const option of understanding.options) add(option, weight, true);
    }
  }
  return [...found.values()].sort((a, b) => b.weight - a.weight);
}
