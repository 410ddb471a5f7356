import { describe, expect, it } from 'vitest';
import { blockingPassed } from '../../src/engine/accept.ts';
import { startSearch } from '../../src/engine/search.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, seen } from './given.ts';

describe('The path was blocked for a check', () => {
  const before = seen(at(0), -4.5);
  // Readings agree within 0.2 dB.
  it.each([
    ['and it went dark and came back the same', { before, dark: true }, -4.5, true],
    ['and it came back as near as readings agree', { before, dark: true }, -4.7, true],
    ['but it came back lower than readings agree', { before, dark: true }, -4.75, false],
    ['but it came back higher than readings agree', { before, dark: true }, -4.25, false],
    ['but it stayed light', { before, dark: false }, -4.5, false],
    ['but nothing was read while it was', { before }, -4.5, false],
    ['but nothing was read before it was', { dark: true }, -4.5, false],
    ['not yet', {}, -4.5, false],
  ])('%s', (_, blocking, after, expected) => {
    const search = { ...startSearch(DECIBELS, NEUTRAL_ADJUSTERS), blocking: { ...blocking, seqs: [] } };
    expect(blockingPassed(search, seen(at(0), after))).toBe(expected);
  });
});
