import { describe, expect, it } from 'vitest';
import { confusableWith, confusableWord } from '../../src/grammar/confusable.ts';
import { parse } from '../../src/grammar/parse.ts';

const TRAPS: [number, number][] = [
  [13, 30],
  [14, 40],
  [15, 50],
  [16, 60],
  [17, 70],
  [18, 80],
  [19, 90],
  [113, 130],
  [219, 290],
  [15.5, 50.5],
  [-13, -30],
];

describe('numbers that sound alike', () => {
  it.each(TRAPS)('%d and %d', (teen, ten) => {
    expect(confusableWith(teen)).toBe(ten);
    expect(confusableWith(ten)).toBe(teen);
  });

  it.each([0, 1, 3, 10, 11, 12, 20, 21, 33, 100, 112, 142, 0.13])('%d has no confusable', (value) => {
    expect(confusableWith(value)).toBeUndefined();
    expect(confusableWord(value)).toBeUndefined();
  });

  it.each([13, 30, 19, 90, 115, 150, 990])('the word for %d is understood as it', (value) => {
    expect(parse(confusableWord(value) as string)).toEqual({
      kind: 'understood',
      intents: [{ kind: 'reading', reading: { kind: 'value', value } }],
    });
  });
});
