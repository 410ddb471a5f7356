import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { WordGraph } from '../../src/grammar/graph.ts';
import { search } from '../../src/speech/decode.ts';
import { freeText } from '../../src/speech/free-text.ts';
import { type Alphabet, logSoftmax } from '../../src/speech/logits.ts';
import { Spelling } from '../../src/speech/spelling.ts';

/** Tokens: 0 blank, 1 between words, 2 "a", 3 "b". */
const ALPHABET: Alphabet = {
  blank: 0,
  space: 1,
  letters: new Map([
    ['a', 2],
    ['b', 3],
  ]),
};
const TOKENS = 4;
const LETTERS = ['', ' ', 'a', 'b'];

/** One or two words of "a", "ab", "bb". */
const GRAPH: WordGraph = {
  start: 0,
  size: 3,
  next: (place) => new Map(place < 2 ? ['a', 'ab', 'bb'].map((word) => [word, place + 1]) : []),
  ends: (place) => place > 0,
};
const SENTENCES = ['a', 'ab', 'bb'].flatMap((one) => [
  one,
  ...['a', 'ab', 'bb'].map((two) => `${one} ${two}`),
]);

const FRAMES = 6;
const someLogits = fc
  .array(fc.double({ min: -4, max: 4, noNaN: true }), {
    minLength: FRAMES * TOKENS,
    maxLength: FRAMES * TOKENS,
  })
  .map((data) => logSoftmax({ data: Float32Array.from(data), frames: FRAMES, tokens: TOKENS }));

/** Probability of each text, from every possible path (definition of CTC: Graves et al. 2006). */
function byEveryPath(logProbs: Float64Array): Map<string, number> {
  const found = new Map<string, number>();
  const walk = (frame: number, path: number[], p: number): void => {
    if (frame === FRAMES) {
      const text = path
        .filter((token, i) => token !== path[i - 1])
        .map((token) => LETTERS[token])
        .join('');
      found.set(text, (found.get(text) ?? 0) + p);
      return;
    }
    for (let token = 0; token < TOKENS; token++) {
      walk(frame + 1, [...path, token], p * Math.exp(logProbs[frame * TOKENS + token] as number));
    }
  };
  walk(0, [], 1);
  return found;
}

describe('beam search', () => {
  it('with room for all beginnings gives every sentence the sum of the probabilities of its paths', () => {
    fc.assert(
      fc.property(someLogits, (logProbs) => {
        const every = byEveryPath(logProbs);
        const found = search(logProbs, TOKENS, ALPHABET, new Spelling(GRAPH, ALPHABET), {
          width: 1e6,
          margin: 1e6,
        });
        const possible = SENTENCES.filter((text) => (every.get(text) ?? 0) > 0);
        expect(found.map(({ text }) => text).sort()).toEqual(possible.sort());
        for (const { text, score } of found) expect(Math.exp(score)).toBeCloseTo(every.get(text) ?? 0, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('gives the most likely text first, with a cost for each word', () => {
    fc.assert(
      fc.property(someLogits, (logProbs) => {
        const found = search(logProbs, TOKENS, ALPHABET, new Spelling(GRAPH, ALPHABET), { cost: () => 1.5 });
        for (const { text, cost } of found) expect(cost).toBeCloseTo(1.5 * text.split(' ').length, 9);
        const worth = found.map(({ score, cost }) => score - cost);
        expect(worth).toEqual([...worth].sort((a, b) => b - a));
      }),
    );
  });

  it('says which word a model cannot write', () => {
    const graph: WordGraph = { start: 0, size: 2, next: () => new Map([['cab', 1]]), ends: () => true };
    expect(() => new Spelling(graph, ALPHABET).start).toThrow('cannot write "cab"');
  });
});

describe('open text', () => {
  const logits = (...tokens: number[]): Float64Array => {
    const data = new Float32Array(tokens.length * TOKENS).fill(-5);
    for (const [frame, token] of tokens.entries()) data[frame * TOKENS + token] = 5;
    return logSoftmax({ data, frames: tokens.length, tokens: TOKENS });
  };

  it('drops repeats and blanks, and keeps double letters with a blank between them', () => {
    expect(freeText(logits(2, 2, 0, 2, 1, 1, 3, 0), TOKENS, ALPHABET).text).toBe('aa b');
  });

  it('is empty when nothing is said', () => {
    expect(freeText(logits(0, 0, 0), TOKENS, ALPHABET).text).toBe('');
  });
});
