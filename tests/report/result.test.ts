import { describe, expect, it } from 'vitest';
import { isClear, type Outcome, resultBadge, resultText } from '../../src/phrases/result.ts';

const statuses: Outcome['statuses'] = {
  'not-started': 0,
  aligning: 0,
  isolated: 0,
  aligned: 0,
  proven: 0,
  signed: 3,
  'signed-not-proven': 0,
  'needs-attention': 0,
};
const GOOD: Outcome = {
  pairs: 3,
  all: 3,
  statuses,
  serious: 0,
  questions: 0,
  broken: 0,
  siteBroken: false,
  untested: 0,
  answeredFor: 0,
  retested: 0,
};

describe('the result on the cover', () => {
  it('is clear when every pair is signed and passed, and nothing serious was found', () => {
    expect(isClear(GOOD)).toBe(true);
    expect(resultBadge(GOOD)).toBe('All signed');
    expect(resultText(GOOD)).toBe('All 3 pairs are signed; all tests passed, and nothing serious was found.');
  });

  // One pair or one finding is enough.
  it.each<[string, Partial<Outcome>, badge: string, says: RegExp]>([
    [
      'one pair is signed with a test that did not pass',
      { statuses: { ...statuses, signed: 2, 'signed-not-proven': 1 } },
      'Not all signed',
      /1 signed, not proven/,
    ],
    [
      'one pair is only proven',
      { statuses: { ...statuses, signed: 2, proven: 1 } },
      'Not all signed',
      /1 proven, not signed/,
    ],
    [
      'one needs attention',
      { statuses: { ...statuses, signed: 2, 'needs-attention': 1 } },
      'Need attention: 1',
      /1 needs attention/,
    ],
    [
      'the outputs of one are isolated',
      { statuses: { ...statuses, signed: 2, isolated: 1 } },
      'Not all signed',
      /1 outputs isolated/,
    ],
    [
      'one is not started',
      { statuses: { ...statuses, signed: 2, 'not-started': 1 } },
      'Not all signed',
      /1 not started/,
    ],
    ['one serious finding stands', { serious: 1 }, 'All signed; see result', /1 serious finding[;.]/],
    ['one log is broken', { broken: 1 }, 'Log broken', /the log of 1 pair is broken/],
    ["the site's log is broken", { siteBroken: true }, 'Log broken', /the site's log is broken/],
    ['one pair of the site is not in it', { all: 4 }, '3 of 4 pairs', /only 3 of the site's 4 pairs/],
    ['tests were not all made on one', { untested: 1 }, 'All signed; see result', /not all made on 1 pair/],
    [
      'a failure was only answered for',
      { answeredFor: 1 },
      'All signed; see result',
      /answered for in writing on 1 pair/,
    ],
    [
      'there are no pairs',
      { pairs: 0, all: 0, statuses: { ...statuses, signed: 0 } },
      'Not all signed',
      /nothing to certify/,
    ],
  ])('is not clear, and says why, when %s', (_, change, badge, says) => {
    const outcome = { ...GOOD, ...change };
    expect(isClear(outcome)).toBe(false);
    expect(resultBadge(outcome)).toBe(badge);
    expect(resultText(outcome)).toMatch(says);
    if (outcome.pairs > 0) expect(resultText(outcome)).toMatch(/^NOT CLEAR: /);
  });

  it('stays clear with questions and tests that passed the second time, and names them', () => {
    const outcome = { ...GOOD, questions: 1, retested: 1 };
    expect(isClear(outcome)).toBe(true);
    expect(resultText(outcome)).toBe(
      'All 3 pairs are signed, all tests passed in the end, and nothing serious was found; but: a test that failed first and passed later on 1 pair; 1 question to be asked.',
    );
  });
});
