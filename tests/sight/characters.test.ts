import { describe, expect, it } from 'vitest';
import { CLASSES, shownNumber, sightOf } from '../../src/sight/characters.ts';
import { createRng } from '../../src/simulator/rng.ts';

/** Scores with which one class at each place is certain; -1 is the gap. */
const path = (classes: readonly number[], certain = 50): number[] =>
  classes.flatMap((own) => Array.from({ length: CLASSES }, (_, i) => (i === own + 1 ? certain : 0)));

describe('what stands in the box', () => {
  it('reads a path: the same class in a row is one character, with a gap between it is two', () => {
    expect(sightOf(path([-1, 1, 1, -1, 1, 10, 7, -1])).text).toBe('11.7');
    expect(sightOf(path([11, -1, 0, 12])).text).toBe('-0?');
    expect(sightOf(path([-1, -1])).text).toBe('');
    expect(sightOf(path([1, 2])).belief).toBeCloseTo(1, 9);
  });

  it('believes as much as all paths to that text together, summed one by one (Graves 2006)', () => {
    const rng = createRng(3);
    for (let round = 0; round < 20; round++) {
      const scores = Array.from({ length: 3 * CLASSES }, () => 4 * rng());
      const places = [0, 1, 2].map((place) => {
        const own = scores.slice(place * CLASSES, (place + 1) * CLASSES).map(Math.exp);
        const total = own.reduce((a, b) => a + b, 0);
        return own.map((value) => value / total);
      });
      const found = sightOf(scores);
      let sum = 0;
      for (let a = 0; a < CLASSES; a++)
        for (let b = 0; b < CLASSES; b++)
          for (let c = 0; c < CLASSES; c++)
            if (sightOf(path([a - 1, b - 1, c - 1])).text === found.text)
              sum += (places[0]?.[a] ?? 0) * (places[1]?.[b] ?? 0) * (places[2]?.[c] ?? 0);
      expect(found.belief).toBeCloseTo(sum, 9);
    }
  });

  it.each([
    ['47', { value: 47, decimals: 0 }],
    ['0.70', { value: 0.7, decimals: 2 }],
    ['-3.5', { value: -3.5, decimals: 1 }],
    ['007', { value: 7, decimals: 0 }],
  ])('takes %s as a number', (text, number) => expect(shownNumber(text)).toEqual(number));

  it.each(['', '-', '4?', '?7', '4.', '.5', '1.2.3', '4-7', '--4', '- 4'])('takes %j as no number', (text) =>
    expect(shownNumber(text)).toBeUndefined(),
  );
});
