import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../src/speech/decode.ts';
import { weigh } from '../../src/speech/weigh.ts';

const heard = (...texts: string[]): Candidate[] => texts.map((text) => ({ text, score: -2, cost: 0 }));
const open = { text: 'five', score: -1 };
const likeliest = (found: Candidate[], options: Parameters<typeof weigh>[2]) =>
  weigh(found, open, options)?.sentences[0]?.text;
const anything = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };

describe('what was expected', () => {
  it('prefers, of what sounds alike, what was asked for', () => {
    const found = heard('five', 'aye');
    expect(likeliest(found, { expect: { ...anything, asked: ['reading'] } })).toBe('five');
    expect(likeliest(found, { expect: { ...anything, asked: ['yes', 'no'] } })).toBe('aye');
  });

  it('prefers a reading that would not surprise', () => {
    const found = heard('nine', 'five');
    expect(likeliest(found, { expect: { low: 0, high: 6 } })).toBe('five');
    expect(likeliest(found, { expect: { low: 7, high: 20 } })).toBe('nine');
  });

  it('never rules out what sounds clearly better', () => {
    const found = [
      { text: 'stop', score: -2, cost: 0 },
      ...heard('no').map((one) => ({ ...one, score: -12 })),
    ];
    expect(likeliest(found, { expect: { ...anything, asked: ['yes', 'no'] } })).toBe('stop');
  });
});
