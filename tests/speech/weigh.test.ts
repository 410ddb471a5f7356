import { describe, expect, it } from 'vitest';
import type { Candidate } from '../../src/speech/decode.ts';
import { agreedShare, meaningOf, weigh } from '../../src/speech/weigh.ts';

const heard = (...texts: string[]): Candidate[] => texts.map((text) => ({ text, score: -2, cost: 0 }));
const open = { text: 'five', score: -1 };
type Options = Parameters<typeof weigh>[2];
const likeliest = (found: Candidate[], options: Options) => weigh(found, open, options)?.sentences[0]?.text;
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

  /** The share of the first of two that sound equally good, where the second costs this much more, natural log. */
  const against = (cost: number): number => 1 / (1 + Math.exp(-0.6 * cost));

  it.each<[string, [string, string], Options, number]>([
    ['nothing was expected: both the same', ['five', 'nine'], {}, against(0)],
    ['both lie within', ['five', 'nine'], { expect: { low: 5, high: 9 } }, against(0)],
    ['the second lies a hair above', ['five', 'nine'], { expect: { low: 5, high: 8.99 } }, against(4)],
    ['the second lies a hair below', ['nine', 'five'], { expect: { low: 5.01, high: 9 } }, against(4)],
    ['neither lies within: both the same', ['five', 'nine'], { expect: { low: 6, high: 8 } }, against(0)],
    ['the second is no number', ['five', 'no signal'], { expect: { low: 0, high: 6 } }, against(0)],
    ['the second is no reading', ['five', 'stop'], { expect: { low: 0, high: 6 } }, against(0)],
    [
      'the second was not asked',
      ['five', 'stop'],
      { expect: { ...anything, asked: ['reading'] } },
      against(2),
    ],
    // A meter that shows 0, 1, 2, …; one that shows 0, 0.2, 0.4, …: it asks about 14.5 and 0.25, whatever is heard.
    [
      'the second lies between whole steps',
      ['one four', 'one four point five'],
      { expect: { ...anything, steps: { from: 0, by: 1 } } },
      against(4),
    ],
    [
      'the second lies on a step of a half',
      ['one four', 'one four point five'],
      { expect: { ...anything, steps: { from: 0, by: 0.5 } } },
      against(0),
    ],
    [
      'the second has a figure more than is shown',
      ['point two', 'point two five'],
      { expect: { ...anything, steps: { from: 0, by: 0.2 } } },
      against(4),
    ],
    [
      'the second lies between steps, with no figure more: both the same',
      ['one five', 'one three'],
      { expect: { ...anything, steps: { from: 0, by: 5 } } },
      against(0),
    ],
    [
      'the second is off the scale and between steps',
      ['nine', 'one four point five'],
      { expect: { low: 0, high: 9, steps: { from: 0, by: 1 } } },
      against(4),
    ],
    ['nothing was asked', ['five', 'stop'], { expect: { ...anything, asked: [] } }, against(0)],
    [
      'of two things said, one was asked',
      ['five', 'done five'],
      { expect: { ...anything, asked: ['reading'] } },
      against(0),
    ],
    ['of two things said, one surprises', ['stop', 'done nine'], { expect: { low: 0, high: 6 } }, against(4)],
    [
      'the second was not asked, and surprises',
      ['no', 'nine'],
      { expect: { low: 0, high: 6, asked: ['yes', 'no'] } },
      against(6),
    ],
    [
      'of a sentence with several meanings, each is looked at',
      ['stop', 'nineteen forty two'],
      { expect: { low: 0, high: 30 } },
      against(4),
    ],
  ])('decides between two that sound equally good: %s', (_, [one, other], options, share) => {
    const weighed = weigh(heard(one, other), open, options);
    expect(weighed?.sentences.find(({ text }) => text === one)?.share).toBeCloseTo(share, 9);
  });
});

describe('the sentences found', () => {
  it('are weighed by how well they sound less what their words cost', () => {
    const found: Candidate[] = [
      { text: 'five', score: -2, cost: 3 },
      { text: 'nine', score: -4, cost: 0 },
    ];
    const weighed = weigh(found, open, {});
    expect(weighed?.sentences.map(({ text }) => text)).toEqual(['nine', 'five']);
    expect(weighed?.sentences[0]?.share).toBeCloseTo(1 / (1 + Math.exp(-0.6)), 9);
  });

  it('that mean the same count together, and their best wording stands first', () => {
    const found: Candidate[] = [
      { text: 'fifty', score: -2, cost: 0 },
      { text: 'one four two', score: -2.6, cost: 0 },
      { text: 'one forty two', score: -2.5, cost: 0 },
    ];
    const weighed = weigh(found, open, {});
    expect(weighed?.sentences.map(({ text }) => text)).toEqual(['one forty two', 'fifty', 'one four two']);
    const all = [-2, -2.6, -2.5].map((score) => Math.exp(0.6 * score));
    const [fifty, ...others] = all as [number, number, number];
    const total = fifty + others[0] + others[1];
    expect(weighed?.share).toBeCloseTo((others[0] + others[1]) / total, 9);
    expect(weighed?.sentences.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    // Their best wording, and not the likelier other meaning, is held against the free letters.
    expect(weighed?.strain).toBeCloseTo(1.5, 9);
  });

  it('that are none of ours are a meaning of their own each', () => {
    const weighed = weigh(heard('zork', 'blah', 'zork blah'), open, {});
    expect(weighed?.share).toBeCloseTo(1 / 3, 9);
  });

  it('are looked at to the twenty-fourth, and no further', () => {
    const found = Array.from({ length: 25 }, (_, i) => ({ text: `zork ${i}`, score: -2, cost: 0 }));
    expect(weigh(found, open, {})?.sentences).toHaveLength(24);
    expect(weigh(found, open, {})?.sentences.at(-1)?.text).toBe('zork 23');
    expect(weigh(found.slice(0, 24), open, {})?.sentences).toHaveLength(24);
  });

  it('are none where nothing was found', () => {
    expect(weigh([], open, {})).toBeUndefined();
  });
});

describe('the free letters', () => {
  it.each<[string, { text: string; score: number }, { strain: number; letters: number; blur: number }]>([
    [
      'that fit better strain the sentence',
      { text: 'five', score: -1 },
      { strain: 1, letters: 4, blur: 0.25 },
    ],
    ['that fit as well do not', { text: 'five', score: -2 }, { strain: 0, letters: 4, blur: 0.5 }],
    ['that fit worse do not', { text: 'five', score: -6 }, { strain: 0, letters: 4, blur: 1.5 }],
    ['are counted without the gaps', { text: 'a five b', score: -3 }, { strain: 0, letters: 6, blur: 0.5 }],
    [
      'of which there is one are as blurred as it',
      { text: 'a', score: -2 },
      { strain: 0, letters: 1, blur: 2 },
    ],
    ['of which there is none are taken for one', { text: '', score: -2 }, { strain: 0, letters: 0, blur: 2 }],
  ])('%s', (_, letters, figures) => {
    expect(weigh(heard('five'), letters, {})).toMatchObject(figures);
  });
});

describe('a second hearer', () => {
  const { sentences = [] } = weigh(heard('five', 'nine', 'aye five'), open, {}) ?? {};
  const agreed = (opinion: Record<string, number>) =>
    agreedShare(sentences, meaningOf('five'), (text) => opinion[text] ?? Number.NEGATIVE_INFINITY);

  it.each<[string, Record<string, number>, number]>([
    ['hears the same, and nothing else', { five: -1 }, 1],
    ['hears both alike', { five: -1, nine: -1 }, 0.5],
    ['hears the other one three times as well', { five: 0, nine: Math.log(3) }, 0.25],
    ['hears something else altogether', { nine: -1 }, 0],
    ['hears none of them: it cannot tell', {}, 1 / 3],
  ])('%s', (_, opinion, share) => {
    expect(agreed(opinion)).toBeCloseTo(share, 9);
  });
});
