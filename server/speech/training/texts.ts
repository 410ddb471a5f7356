/**
 * Sentences of the crew's grammar, for synthetic voices to speak, one per line:
 *
 *     npx tsx server/speech/training/texts.ts COUNT SEED > texts.txt
 */
import { ENGLISH, TYPED, wordingsOf } from '../../../src/grammar/grammar.ts';
import type { Part } from '../../../src/grammar/pattern.ts';
import { seeded } from './seeded.ts';

/** How often each rule is drawn. Crews mostly say short sentences. */
const SHARES = {
  level: 5,
  moved: 3,
  gain: 2,
  command: 3,
  correct: 2,
  panel: 1,
  path: 1,
  yes: 1,
  report: 3,
  body: 2,
  sentence: 1,
};

const partsOf = new Map<string, Part[]>();
const sayable = (rule: string): Part[] => {
  const known = partsOf.get(rule);
  if (known) return known;
  const parts = wordingsOf(rule, ENGLISH)
    .map(({ part }) => part)
    .filter(canBeSaid);
  partsOf.set(rule, parts);
  return parts;
};
const canBeSaid = (part: Part): boolean => {
  switch (part.kind) {
    case 'word':
      return true;
    case 'rule':
      return !(TYPED as ReadonlySet<string>).has(part.rule) && sayable(part.rule).length > 0;
    case 'sequence':
      return part.parts.every(canBeSaid);
    case 'choice':
      return part.options.some(canBeSaid);
  }
};

const [count = 25_000, seed = 1] = process.argv.slice(2).map(Number);
const rng = seeded(seed);
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
const rules = Object.entries(SHARES).flatMap(([rule, share]) => Array<string>(share).fill(rule));
for (let i = 0; i < count; i++) console.log(words(pick(sayable(pick(rules)))).join(' '));
