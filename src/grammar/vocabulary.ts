import { ENGLISH, type Grammar, wordingsOf } from './grammar.ts';
import type { Part } from './pattern.ts';

const wordsOf = (part: Part): string[] => {
  switch (part.kind) {
    case 'word':
      return [part.word];
    case 'rule':
      return [];
    case 'sequence':
      return part.parts.flatMap(wordsOf);
    case 'choice':
      return part.options.flatMap(wordsOf);
  }
};

const allWords = (grammar: Grammar): ReadonlySet<string> =>
  new Set([
    ...grammar.fillers,
    ...Object.keys(grammar.rules).flatMap((rule) =>
      wordingsOf(rule, grammar).flatMap(({ part }) => wordsOf(part)),
    ),
  ]);

const known = new WeakMap<Grammar, ReadonlySet<string>>();

const wordsIn = (grammar: Grammar): ReadonlySet<string> => {
  const words = known.get(grammar) ?? allWords(grammar);
  known.set(grammar, words);
  return words;
};

/** Every word of the English grammar and every filler, sorted; letters a to z and the apostrophe only. */
export const vocabulary = (): string[] => [...wordsIn(ENGLISH)].sort();

export const knows = (word: string, grammar: Grammar = ENGLISH): boolean => wordsIn(grammar).has(word);
