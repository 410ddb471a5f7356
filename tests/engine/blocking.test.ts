import { describe, expect, it } from 'vitest';
import { blockingPassed } from '../../src/engine/accept.ts';
import { startSearch } from '../../src/engine/search.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { DECIBELS, Job } from './crew-of-two.ts';
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

describe('With the path blocked the light is gone', () => {
  /** Whether it counts as gone after these readings, from a settled -4 dB before. */
  const dark = (...readings: (number | 'nothing')[]) => {
    const job = new Job(DECIBELS);
    job.reads(-4);
    job.say({ type: 'path', state: 'blocked' });
    for (const reading of readings) job.reads(reading);
    return job.search.blocking.dark;
  };

  // 13 dB is a twentieth: 10 log10(20) = 13.01. By a way beside the card it moves an alarm at 35 % to 36.8 %.
  it.each([
    ['when nothing is read', ['nothing'], true],
    ['when more than 13 dB less is read twice', [-17.1, -17.1], true],
    ['not yet when it is read once', [-17.1], undefined],
    ['not when 13 dB less is read', [-17, -17], false],
    ['not when less has gone', [-16.9, -16.9], false],
    ['not when nothing has gone', [-4, -4], false],
  ] as const)('%s', (_, readings, expected) => {
    expect(dark(...readings)).toBe(expected);
  });

  it('not where nothing was read before, though light was read elsewhere: a crew of two reads the place first', () => {
    const job = new Job(DECIBELS);
    job.reads(-4);
    job.turns('horizontal', 3);
    job.say({ type: 'path', state: 'blocked' });
    for (const reading of [-17.1, -17.1]) job.reads(reading);
    expect(job.search.blocking.dark).toBe(false);
  });
});
