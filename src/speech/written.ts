import type { Heard } from './heard.ts';

/** A text that a model wrote whole, without our grammar, and the probability it gave it; over all they sum to at most 1. */
export interface Written {
  text: string;
  probability: number;
}

/**
 * The most that such a text is believed. A model that writes words is fluent whatever it hears, and nobody has
 * measured how often it is right here: below what is taken, so that everything but what is safe is asked.
 */
export const MOST_BELIEVED = 0.9;

/** What a model that writes words has heard. */
export function fromWritten(written: readonly Written[]): Heard {
  const alternatives = written
    .map(({ text, probability }) => ({ text: text.trim(), confidence: MOST_BELIEVED * probability }))
    .sort((a, b) => b.confidence - a.confidence);
  const [first] = alternatives;
  if (!first || first.text === '') return { text: '', confidence: 1, alternatives: [], freeText: '' };
  return { ...first, alternatives: alternatives.filter(({ text }) => text !== ''), freeText: first.text };
}
