import { describe, expect, it } from 'vitest';
import { wordGraph } from '../../src/grammar/graph.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { grammarOf, understand } from '../../src/understand/understand.ts';
import { LANGUAGES } from './languages.ts';

/** What a model of letters in that language must find among its sentences: numbers, yes, no. Any dictionary of it. */
const SENTENCES: Record<(typeof LANGUAGES)[number]['code'], readonly string[]> = {
  es: ['ciento cuatro', 'uno cero cuatro', 'cincuenta y dos coma cinco', 'si', 'no'],
  de: ['hundert vier', 'eins null vier', 'zwei und fuenfzig komma fuenf', 'ja', 'nein'],
  fr: ['cent quatre', 'un zero quatre', 'cinquante deux virgule cinq', 'oui', 'non'],
};

describe.each(LANGUAGES)('what a model of letters searches in $code', ({ code }) => {
  const grammar = grammarOf(code);
  const { fillers } = grammar;
  const graph = wordGraph('sentence', grammar);

  it.each(SENTENCES[code])('holds "%s"', (sentence) => {
    const end = sentence
      .split(' ')
      .reduce<number | undefined>(
        (place, word) => (place === undefined ? undefined : graph.next(place).get(word)),
        graph.start,
      );
    expect(end !== undefined && graph.ends(end)).toBe(true);
  });

  it('holds no word of another language', () => {
    const rng = createRng(9);
    let understood = 0;
    for (let walk = 0; walk < 200; walk++) {
      const words: string[] = [];
      for (let place = graph.start; !graph.ends(place) || (words.length < 12 && rng() < 0.8); ) {
        const all = [...graph.next(place)];
        const plain = all.filter(([word]) => !fillers.has(word) || rng() < 0.05);
        const next = plain.length > 0 ? plain : all;
        const step = next[Math.floor(rng() * next.length)];
        if (!step) break;
        words.push(step[0]);
        place = step[1];
      }
      const meant = understand(words.join(' '), code);
      expect(meant.kind === 'unclear' ? meant.unknown : []).toEqual([]);
      if (meant.kind === 'understood') understood++;
    }
    expect(understood).toBeGreaterThan(50);
  });

  it('is written with the letters that every such model has', () => {
    const words = Array.from({ length: graph.size }, (_, place) => [...graph.next(place).keys()]).flat();
    expect(words.length).toBeGreaterThan(500);
    expect(words.filter((word) => !/^[a-z']+$/.test(word))).toEqual([]);
  });
});
