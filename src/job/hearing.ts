import type { Alternative, Via } from '../facts.ts';
import type { Intent, Understanding } from '../grammar/intent.ts';
import { parse } from '../grammar/parse.ts';

/**
 * How sure the speech model must be, in the sum over all alternatives that mean the same: at `TAKE` it is
 * taken and read back, between the two it is asked, below `ASK` it must be said again.
 */
export const TAKE = 0.8;
export const ASK = 0.4;

/** Words that only ever make things safer or slower are taken already when asking would do. */
const SAFE: ReadonlySet<Intent['kind']> = new Set(['stop', 'wait', 'repeat', 'undo']);

export type Hearing =
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

/** What words mean, and whether that may be acted on. Typed words and buttons are certain as they stand. */
export function hear(words: Words): Hearing {
  if (words.via !== 'voice') return certain(parse(words.text));
  const [best, ...others] = meanings(words);
  if (best === undefined || best.weight < ASK) return { kind: 'unclear', unknown: [] };
  const sure = best.weight >= TAKE || best.intents.every((intent) => SAFE.has(intent.kind));
  if (sure && !best.ambiguous) return { kind: 'taken', intents: best.intents };
  return { kind: 'doubtful', options: [best, ...others].map((meaning) => meaning.intents) };
}

function certain(understanding: Understanding): Hearing {
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
