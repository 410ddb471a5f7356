import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FILLERS, GRAMMAR } from '../../src/grammar/grammar.ts';
import { wordGraph } from '../../src/grammar/graph.ts';
import { Intent } from '../../src/grammar/intent.ts';
import { parse } from '../../src/grammar/parse.ts';
import { sample } from '../../src/grammar/sample.ts';
import { speakNumber } from '../../src/grammar/speak.ts';
import { vocabulary } from '../../src/grammar/vocabulary.ts';
import { kindsOf } from '../../src/model/kinds.ts';
import { numberIn, seeded } from './read.ts';

const samples = (seed: number, count: number): string[] => {
  const rng = seeded(seed);
  return Array.from({ length: count }, () => sample(rng));
};

describe('parsing', () => {
  it('never throws and keeps to its contract, whatever is typed', () => {
    const words = fc.array(
      fc.constantFrom(...vocabulary(), '142', '-3.5', '1/4', '1/0', '2,500', "'", '-', '½', 'banana'),
    );
    const texts = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      words.map((list) => list.join(' ')),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const heard = parse(text);
        if (heard.kind === 'understood') {
          expect(heard.intents.length).toBeGreaterThan(0);
          for (const intent of heard.intents) Intent.parse(intent);
        } else if (heard.kind === 'ambiguous') {
          expect(heard.options.length).toBeGreaterThan(1);
          for (const intent of heard.options.flat()) Intent.parse(intent);
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('finds any sentence unclear that has one unknown word too many', () => {
    const rng = seeded(3);
    for (const sentence of samples(4, 300)) {
      // Anyone may be the person who was told.
      if (/told|informed|notified/.test(sentence)) continue;
      const words = sentence.split(' ');
      words.splice(Math.floor(rng() * (words.length + 1)), 0, 'spanner');
      expect(parse(words.join(' '))).toEqual({ kind: 'unclear', unknown: ['spanner'] });
    }
  });

  it('does not mind case, commas or full stops', () => {
    for (const sentence of samples(5, 300)) {
      expect(parse(`${sentence.toUpperCase().replaceAll(' ', ', ')}.`)).toEqual(parse(sentence));
    }
  });

  it('answers at once, however long the text', () => {
    expect(parse('oh double '.repeat(5000)).kind).toBe('unclear');
    expect(parse('no '.repeat(59)).kind).toBe('unclear');
  });
});

describe('the grammar', () => {
  it('has words of letters and apostrophes only', () => {
    expect(vocabulary().filter((word) => !/^[a-z']+$/.test(word))).toEqual([]);
    expect(new Set(vocabulary()).size).toBe(vocabulary().length);
  });

  it('refers to rules that exist', () => {
    const named = JSON.stringify(GRAMMAR).matchAll(/"rule":"(\w+)"/g);
    const missing = [...named].map(([, rule]) => rule as string).filter((rule) => !(rule in GRAMMAR));
    expect([...new Set(missing)].sort()).toEqual(['fraction', 'numeral']);
  });

  it('understands every sentence it draws', () => {
    const misunderstood = samples(1, 3000).filter((sentence) => parse(sentence).kind !== 'understood');
    expect(misunderstood).toEqual([]);
  });

  it('draws sentences of every intent that can be spoken', () => {
    const rng = seeded(2);
    const STARTS = ['sentence', 'command', 'slip'] as const;
    const drawn = new Set(
      Array.from({ length: 3000 }, (_, i) => sample(rng, STARTS[i % STARTS.length])).flatMap((sentence) => {
        const heard = parse(sentence);
        return heard.kind === 'understood' ? heard.intents.map(({ kind }) => kind) : [];
      }),
    );
    const all = kindsOf(Intent, 'kind');
    expect(all.filter((kind) => !drawn.has(kind))).toEqual(['remark']);
  });

  it('draws the same sentences from the same random numbers', () => {
    expect(samples(7, 50)).toEqual(samples(7, 50));
  });
});

describe('the word graph', () => {
  const graph = wordGraph();

  it('leads through every drawn sentence to its end', () => {
    for (const sentence of samples(8, 500)) {
      let place: number | undefined = graph.start;
      for (const word of sentence.split(' '))
        place = place === undefined ? place : graph.next(place).get(word);
      expect([sentence, place !== undefined && graph.ends(place)]).toEqual([sentence, true]);
    }
  });

  it('holds no sentence that the parser does not know', () => {
    const rng = seeded(9);
    for (let walk = 0; walk < 500; walk++) {
      const words: string[] = [];
      for (let place = graph.start; !graph.ends(place) || (words.length < 12 && rng() < 0.8); ) {
        const all = [...graph.next(place)];
        const plain = all.filter(([word]) => !FILLERS.has(word) || rng() < 0.05);
        const next = plain.length > 0 ? plain : all;
        const step = next[Math.floor(rng() * next.length)];
        if (!step) break;
        words.push(step[0]);
        place = step[1];
      }
      const heard = parse(words.join(' '));
      expect([words.join(' '), heard.kind === 'unclear']).toEqual([words.join(' '), false]);
    }
  });

  it('has no dead end', () => {
    for (let place = 0; place < graph.size; place++) {
      expect(graph.ends(place) || graph.next(place).size > 0).toBe(true);
    }
  });

  it('can be limited to one rule, such as a number', () => {
    const numbers = wordGraph('number');
    expect(numbers.next(numbers.start).has('saturated')).toBe(false);
    expect(numbers.size).toBeLessThan(graph.size);
    expect(() => numbers.next(numbers.size)).toThrow(RangeError);
  });
});

describe('a number spoken by us', () => {
  it.each<[number, number | undefined, string]>([
    [142, undefined, 'one four two'],
    [50.5, undefined, 'five zero decimal five'],
    [50.5, 1, 'five one'],
    [50, 0.1, 'five zero decimal zero'],
    [3.1, 0.01, 'three decimal one zero'],
    [-3.5, 0.1, 'minus three decimal five'],
    [0, undefined, 'zero'],
    [-0, undefined, 'zero'],
    [-0.04, 0.1, 'zero decimal zero'],
    [100, undefined, 'one zero zero'],
  ])('%d at resolution %s is "%s"', (number, resolution, words) => {
    expect(speakNumber(number, resolution === undefined ? {} : { resolution })).toBe(words);
  });

  it('is heard as the same number', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -99_999_999, max: 99_999_999 }),
        fc.integer({ min: 2, max: 4 }),
        (n, places) => {
          const number = n / 10 ** places || 0;
          if (Math.abs(number) > 999_999) return;
          expect(numberIn(speakNumber(number), {})).toBe(number);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('is refused when nobody could understand it', () => {
    for (const number of [Number.NaN, Number.POSITIVE_INFINITY, 1e6]) {
      expect(() => speakNumber(number)).toThrow(RangeError);
    }
  });
});
