import type { Alphabet } from './logits.ts';

/**
 * The letters of a model's `tokenizer.json`; upper case, as some models write, counts as lower case. Other
 * letters than a to z may be there: another language writes them. Throws a RangeError for a model that does not write letters one by one.
 */
export function alphabetOf(tokenizer: unknown): Alphabet {
  const { model } = tokenizer as { model?: { vocab?: Record<string, number> } };
  const vocabulary = model?.vocab ?? {};
  const letters = new Map<string, number>();
  for (const [token, id] of Object.entries(vocabulary)) {
    const letter = token.toLowerCase();
    if (/^[\p{Ll}']$/u.test(letter)) letters.set(letter, id);
  }
  const blank = vocabulary['<pad>'] ?? vocabulary['[PAD]'];
  const space = vocabulary['|'];
  if (blank === undefined || space === undefined || letters.size < 26) {
    throw new RangeError('This speech model does not write English letters one by one.');
  }
  return { blank, space, letters };
}
