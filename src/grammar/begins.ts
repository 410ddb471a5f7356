import { FILLERS, TYPED, wordingsOf } from './grammar.ts';
import type { Token } from './normalise.ts';
import type { Part } from './pattern.ts';
import type { RuleName, Wording } from './rule.ts';
import { knows } from './vocabulary.ts';

/** How a part can begin. With it the parser skips nearly all of the grammar. */
export interface Beginnings {
  /** Words it can begin with, and the names of typed rules. */
  readonly words: ReadonlySet<string>;
  /** It can be empty. */
  readonly empty: boolean;
}

const known = new Map<string, Beginnings>();

const beginsRule = (name: string): Beginnings => {
  const before = known.get(name);
  if (before) return before;
  const made: Beginnings = TYPED.has(name as RuleName)
    ? { words: new Set([name]), empty: false }
    : oneOf(wordingsOf(name).map(({ part }) => begins(part)));
  known.set(name, made);
  return made;
};

const ofParts = new WeakMap<Part, Beginnings>();

export const begins = (part: Part): Beginnings => {
  const made = ofParts.get(part) ?? work(part);
  ofParts.set(part, made);
  return made;
};

const work = (part: Part): Beginnings => {
  switch (part.kind) {
    case 'word':
      return { words: new Set([part.word]), empty: false };
    case 'rule':
      return beginsRule(part.rule);
    case 'choice':
      return oneOf(part.options.map(begins));
    case 'sequence': {
      const words = new Set<string>();
      for (const next of part.parts.map(begins)) {
        for (const word of next.words) words.add(word);
        if (!next.empty) return { words, empty: false };
      }
      return { words, empty: true };
    }
  }
};

const oneOf = (options: readonly Beginnings[]): Beginnings => ({
  words: new Set(options.flatMap(({ words }) => [...words])),
  empty: options.some(({ empty }) => empty),
});

/** The name of a token among the beginnings; all tokens that begin no sentence share one name. */
export const beginning = (token: Token): string => {
  if (token.kind !== 'word') return token.kind;
  return knows(token.word) ? token.word : '';
};

const candidates = new Map<string, readonly Wording<unknown>[]>();

/** The wordings of a rule that can begin with it; after a filler, any wording may follow. */
export const wordingsBeginning = (rule: string, first: string): readonly Wording<unknown>[] => {
  if (FILLERS.has(first)) return wordingsOf(rule);
  const key = `${rule} ${first}`;
  const found =
    candidates.get(key) ??
    wordingsOf(rule).filter(({ part }) => begins(part).empty || begins(part).words.has(first));
  candidates.set(key, found);
  return found;
};
