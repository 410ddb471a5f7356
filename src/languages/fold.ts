import type { Grammar } from '../grammar/grammar.ts';
import type { Part } from '../grammar/pattern.ts';
import type { Rules, Wording } from '../grammar/rule.ts';

/** "veintidós" is "veintidos": accents are left out on a phone. Lower case comes in. */
export const withoutMarks = (text: string): string =>
  text.normalize('NFD').replace(/\p{M}/gu, '').normalize('NFC').replaceAll('œ', 'oe');

/** "fünf" is "fuenf": what a keyboard without the letter writes. */
export const spelledOut = (text: string): string =>
  text.replaceAll('ä', 'ae').replaceAll('ö', 'oe').replaceAll('ü', 'ue').replaceAll('ß', 'ss');

const foldPart = (part: Part, fold: (text: string) => string): Part => {
  switch (part.kind) {
    case 'word':
      return { ...part, word: fold(part.word) };
    case 'rule':
      return part;
    case 'sequence':
      return { ...part, parts: part.parts.map((each) => foldPart(each, fold)) };
    case 'choice':
      return { ...part, options: part.options.map((each) => foldPart(each, fold)) };
  }
};

/** A grammar whose words are written as the language writes them, for words that have been through `fold`. */
export const folded = (
  rules: Rules,
  fillers: readonly string[],
  fold: (text: string) => string,
): Grammar => ({
  rules: Object.fromEntries(
    Object.entries(rules).map(([name, wordings]) => [
      name,
      (wordings as readonly Wording<unknown>[]).map((wording) => ({
        ...wording,
        part: foldPart(wording.part, fold),
      })),
    ]),
  ) as Rules,
  fillers: new Set(fillers.map(fold)),
});
