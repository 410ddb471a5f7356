import { describe, expect, it } from 'vitest';
import { ANSWER_WITHIN_MS, type LoneCheck, loneCheck, saidAfterMs } from '../../src/visit/lone-check.ts';

const minute = 60_000;
const EVERY = 10 * minute;
const HEARD = 1_800_000_000_000;

// A minute to answer each question is common practice, no source.
describe('nothing is heard from a person alone', () => {
  it.each<[number, LoneCheck]>([
    [0, 'quiet'],
    [EVERY - 1, 'quiet'],
    [EVERY, 'ask'],
    [EVERY + minute - 1, 'ask'],
    [EVERY + minute, 'ask-louder'],
    [EVERY + 2 * minute - 1, 'ask-louder'],
    [EVERY + 2 * minute, 'nobody-answers'],
    [EVERY + 60 * minute, 'nobody-answers'],
  ])('for %i ms: %s', (silent, what) => {
    expect(loneCheck(HEARD, HEARD + silent, EVERY)).toBe(what);
  });

  it('asks by the time that the person set, and no other', () => {
    expect(ANSWER_WITHIN_MS).toBe(minute);
    for (const every of [2, 5, 30].map((minutes) => minutes * minute)) {
      expect(loneCheck(HEARD, HEARD + every - 1, every)).toBe('quiet');
      expect(loneCheck(HEARD, HEARD + every, every)).toBe('ask');
    }
  });

  it('begins anew with anything that is heard', () => {
    expect(loneCheck(HEARD + EVERY, HEARD + EVERY, EVERY)).toBe('quiet');
  });

  it('is quiet while a clock that was set back says that it was heard later than now', () => {
    expect(loneCheck(HEARD, HEARD - minute, EVERY)).toBe('quiet');
  });

  it('says each question again after longer and longer', () => {
    expect([0, 1, 2, 3, 4, 5].map(saidAfterMs)).toEqual([0, 15_000, 35_000, 65_000, 125_000, 185_000]);
  });
});
