import { describe, expect, it } from 'vitest';
import { belief, features } from '../../src/speech/belief.ts';
import type { Weighed } from '../../src/speech/weigh.ts';

const weighed = (of: Partial<Weighed>): Weighed => ({
  sentences: [],
  share: 0.5,
  strain: 0,
  letters: 10,
  blur: 0,
  ...of,
});

describe('what the belief is judged by', () => {
  const [CONSTANT, LEAD, STRAIN, STRAIN_A_LETTER, SHORTNESS, BLUR] = [0, 1, 2, 3, 4, 5];

  it.each<[string, Partial<Weighed>, number, number]>([
    ['a constant', {}, CONSTANT, 1],
    ['no lead where half of all fits otherwise', {}, LEAD, 0],
    ['the lead, as log odds', { share: 0.9 }, LEAD, Math.log(9)],
    ['the lead of what is behind', { share: 0.1 }, LEAD, -Math.log(9)],
    ['the lead up to one in ten thousand left', { share: 0.9999 }, LEAD, Math.log(9_999)],
    ['and no further, where nothing else fits', { share: 1 }, LEAD, Math.log(10_000)],
    ['and as far behind', { share: 0.0001 }, LEAD, -Math.log(9_999)],
    ['and no further, where nothing speaks for it', { share: 0 }, LEAD, -Math.log(10_000)],
    ['the strain', { strain: 3 }, STRAIN, 3],
    ['the strain up to 40', { strain: 40 }, STRAIN, 40],
    ['and no further', { strain: 41 }, STRAIN, 40],
    ['the strain for each letter', { strain: 30, letters: 10 }, STRAIN_A_LETTER, 3],
    ['the strain for each letter up to 4', { strain: 8, letters: 2 }, STRAIN_A_LETTER, 4],
    ['and no further', { strain: 9, letters: 2 }, STRAIN_A_LETTER, 4],
    ['of no letters, as of one', { strain: 2, letters: 0 }, STRAIN_A_LETTER, 2],
    ['how short it is', { letters: 4 }, SHORTNESS, 0.25],
    ['how short one letter is', { letters: 1 }, SHORTNESS, 1],
    ['and no letter at all', { letters: 0 }, SHORTNESS, 1],
    ['the root of the blur', { blur: 2.25 }, BLUR, 1.5],
    ['the root of the blur up to 4', { blur: 4 }, BLUR, 2],
    ['and no further', { blur: 5 }, BLUR, 2],
  ])('%s', (_, of, which, figure) => {
    expect(features(weighed(of))[which]).toBeCloseTo(figure, 9);
    expect(features(weighed(of))).toHaveLength(6);
  });
});

/** Worked out apart from the program, from the weights that stand in it. They change with every new fit. */
describe('ten clear letters, of which half of all that fits means something else, are believed', () => {
  it.each<[string, Partial<Weighed>, number]>([
    ['to 0.978', {}, 0.9781],
    ['more, where nothing else fits', { share: 1 }, 0.9945],
    ['less, where much else fits', { share: 0.01 }, 0.9571],
    ['less, where free letters fit better by one each', { strain: 10 }, 0.7108],
    ['less, where there are two, and free letters fit better by one each', { letters: 2, strain: 2 }, 0.7333],
    ['less, where there is one', { letters: 1 }, 0.7887],
    ['less, where the model was sure of each to 78 %', { blur: 0.25 }, 0.902],
    ['less still, where it was sure of each to 37 %', { blur: 1 }, 0.6548],
  ])('%s', (_, of, share) => {
    expect(belief(weighed(of))).toBeCloseTo(share, 3);
  });
});
