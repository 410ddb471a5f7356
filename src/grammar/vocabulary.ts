import { FILLERS, GRAMMAR, wordingsOf } from './grammar.ts';
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

const WORDS: ReadonlySet<string> = new Set([
  ...FILLERS,
  ...Object.keys(GRAMMAR).flatMap((rule) => wordingsOf(rule).flatMap(({ part }) => wordsOf(part))),
]);

/** Every word of the grammar and every filler, sorted; letters a to z and the apostrophe only. */
export const vocabulary = (): string[] => [...WORDS].sort();

export const knows = (word: string): boolean => WORDS.has(word);
