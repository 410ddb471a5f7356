import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logSoftmax } from '../../src/speech/logits.ts';
import { secondHearer, sequenceScore } from '../../src/speech/second.ts';

/** Tokens: 0 nothing new, 1 any other word, 2 "five", 3 "two". */
const TOKENS = 4;
const WORDS = ['five', 'two'];
const FRAMES = 5;

const someLogits = fc
  .array(fc.double({ min: -4, max: 4, noNaN: true }), {
    minLength: FRAMES * TOKENS,
    maxLength: FRAMES * TOKENS,
  })
  .map((data) => ({ data: Float32Array.from(data), frames: FRAMES, tokens: TOKENS }));

/** Probability of each sequence, from every possible path (definition of CTC: Graves et al. 2006). */
function byEveryPath(logProbs: Float64Array): Map<string, number> {
  const found = new Map<string, number>();
  for (let code = 0; code < TOKENS ** FRAMES; code++) {
    const path = Array.from({ length: FRAMES }, (_, frame) => Math.floor(code / TOKENS ** frame) % TOKENS);
    const sequence = path.filter((token, i) => token !== path[i - 1] && token !== 0).join(' ');
    const p = path.reduce(
      (product, token, i) => product * Math.exp(logProbs[i * TOKENS + token] as number),
      1,
    );
    found.set(sequence, (found.get(sequence) ?? 0) + p);
  }
  return found;
}

/** Says each of these tokens in one frame, ten times as likely as each of the others. */
const saying = (...tokens: number[]) => ({
  data: Float32Array.from(tokens.flatMap((said) => [0, 1, 2, 3].map((t) => (t === said ? Math.log(10) : 0)))),
  frames: tokens.length,
  tokens: TOKENS,
});

describe('the second hearer', () => {
  it('gives each sequence of words the probability of all its paths', () => {
    fc.assert(
      fc.property(someLogits, (logits) => {
        const logProbs = logSoftmax(logits);
        const all = byEveryPath(logProbs);
        for (const [sequence, p] of all) {
          const tokens = sequence === '' ? [] : sequence.split(' ').map(Number);
          expect(Math.exp(sequenceScore(logProbs, TOKENS, tokens))).toBeCloseTo(p, 10);
        }
        expect([...all.values()].reduce((a, b) => a + b)).toBeCloseTo(1, 10);
      }),
      { numRuns: 30 },
    );
  });

  it('gives no probability to more words than there is room for', () => {
    const logProbs = logSoftmax(saying(2, 3));
    expect(sequenceScore(logProbs, TOKENS, [2, 3, 2])).toBe(Number.NEGATIVE_INFINITY);
    expect(sequenceScore(logProbs, TOKENS, [2, 2])).toBe(Number.NEGATIVE_INFINITY);
    expect(sequenceScore(logProbs, TOKENS, [2, 3])).toBeGreaterThan(Number.NEGATIVE_INFINITY);
  });

  it.each([
    ['what it heard', 'five two', 'two five'],
    ['words that sound the same as what it heard', 'five to', 'two five'],
    ['another word where it heard none of ours', 'five lamp', 'five five'],
  ])('prefers %s', (_, better, worse) => {
    const heard = better === 'five lamp' ? saying(2, 0, 1) : saying(2, 0, 3);
    const opinion = secondHearer(WORDS)(heard);
    expect(opinion(better)).toBeGreaterThan(opinion(worse));
  });
});
