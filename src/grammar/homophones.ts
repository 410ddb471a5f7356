import type { Token } from './normalise.ts';

/** Words that sound like a figure, and the figure. */
const SOUNDS_LIKE: Readonly<Record<string, string>> = {
  won: 'one',
  to: 'two',
  too: 'two',
  for: 'four',
  fore: 'four',
  ate: 'eight',
};

/** The figure that sounds like a word, or the word. */
export const soundsLike = (word: string): string => SOUNDS_LIKE[word] ?? word;

const FIGURES = new Set(
  'zero oh one two three tree four fower five fife six seven eight nine niner hundred thousand tousand point decimal minus double triple'.split(
    ' ',
  ),
);

/**
 * The tokens, with words that sound like a digit replaced by that digit, where everything else is digits:
 * "one for two" is 142. Not replaced are "to" and "for" where they may be real words: at the beginning ("for
 * forty"), "to" between figures ("three to five"), and next to a single digit ("five for").
 */
export const soundAlike = (tokens: readonly Token[]): readonly Token[] => {
  const words = tokens.map((token) => (token.kind === 'word' ? token.word : ''));
  const sure = words.filter((word) => FIGURES.has(word)).length;
  const safe = words.every((word, i) => {
    if (FIGURES.has(word)) return true;
    if (word === 'to') return sure > 1 && i === words.length - 1;
    if (word === 'for') return sure > 1 && i > 0;
    return word in SOUNDS_LIKE && sure > 0;
  });
  if (!safe) return tokens;
  return words.map((word) => ({ kind: 'word', word: SOUNDS_LIKE[word] ?? word }));
};
