import type { Passage } from './exchange.ts';

/** The lines that contain all of the words, in any case; "#12" is an entry. */
export function matching(passages: readonly Passage[], wanted: string): readonly Passage[] {
  const words = wanted.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return passages;
  return passages.filter((passage) => {
    const items = [passage, ...passage.madeOfIt];
    const text = items.map((item) => item.text.toLowerCase()).join('\n');
    return words.every((word) => text.includes(word) || items.some(({ seq }) => word === `#${seq}`));
  });
}
