import { expect, it } from 'vitest';
import { coveredBelow } from '../../client/ui/covered.ts';

// How a browser tells it: https://drafts.csswg.org/cssom-view/#visualViewport, attributes height, offsetTop and scale.
it.each([
  ['no keyboard', { height: 844, offsetTop: 0, scale: 1 }, 0],
  ['a keyboard over the foot of the page', { height: 508, offsetTop: 0, scale: 1 }, 336],
  ['the same, and the page is moved up under it', { height: 508, offsetTop: 200, scale: 1 }, 136],
  ['moved up to its end', { height: 508, offsetTop: 336, scale: 1 }, 0],
  ['pinched to double size, without a keyboard', { height: 422, offsetTop: 100, scale: 2 }, 0],
  ['higher than the page, while a browser hides its bar', { height: 900, offsetTop: 0, scale: 1 }, 0],
])('keeps the foot of a page above what covers it: %s', (_, seen, covered) => {
  expect(coveredBelow(seen, 844)).toBe(covered);
});
