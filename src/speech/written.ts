import type { Heard } from './heard.ts';

/** A text that a model wrote without the grammar, and its probability; all together they add up to at most 1. */
export interface Written {
  text: string;
  probability: number;
}

/**
 * The most that such a text is believed. A model that writes words sounds right whatever it hears, and nobody
 * has measured how often it is right here. So this is below the level that is taken at once: everything but
 * the safe words is asked about.
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
