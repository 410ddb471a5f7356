import { ENGLISH, TYPED, wordingsOf } from './grammar.ts';
import type { Part } from './pattern.ts';
import type { RuleName } from './rule.ts';

/**
 * A sentence of the grammar as a person would say it, drawn with `rng` (each call gives a number from 0 up to
 * but not including 1). `rule` narrows it, e.g. to `number` or `command`. Doubtful wordings are left out:
 * every sentence has one meaning.
 */
export const sample = (rng: () => number, rule: RuleName = 'sentence'): string => {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(rng() * from.length)] as T;
  const words = (part: Part): string[] => {
    switch (part.kind) {
      case 'word':
        return [part.word];
      case 'rule':
        return words(pick(sayable(part.rule)));
      case 'sequence':
        return part.parts.flatMap(words);
      case 'choice':
        return words(pick(part.options.filter(canBeSaid)));
    }
  };
  return words(pick(sayable(rule))).join(' ');
};

const known = new Map<string, readonly Part[]>();

/** The wordings of a rule that somebody would say and that mean one thing. */
const sayable = (rule: string): readonly Part[] => {
  const parts =
    known.get(rule) ??
    wordingsOf(rule, ENGLISH).flatMap(({ part, doubtful }) => (!doubtful && canBeSaid(part) ? [part] : []));
  known.set(rule, parts);
  return parts;
};

const canBeSaid = (part: Part): boolean => {
  switch (part.kind) {
    case 'word':
      return true;
    case 'rule':
      return !TYPED.has(part.rule as RuleName) && sayable(part.rule).length > 0;
    case 'sequence':
      return part.parts.every(canBeSaid);
    case 'choice':
      return part.options.some(canBeSaid);
  }
};
