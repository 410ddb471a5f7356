import { describe, expect, it } from 'vitest';
import type { VisitOutcome } from '../../src/findings/outcome.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { lastLeftOf } from '../../src/record/last-left.ts';
import { COUNTS } from '../conversation/table.ts';

interface Kind {
  signed?: boolean;
  left?: number | undefined;
  touched?: boolean;
  meter?: typeof COUNTS;
}

const visits = (...kinds: Kind[]): VisitOutcome[] =>
  kinds.map(({ signed = true, left, touched = false, meter = COUNTS }, i) => ({
    job: `visit-${i}`,
    accepted: undefined,
    left: left === undefined ? undefined : { seq: 9, at: i, value: left },
    signed,
    commission: {
      setup: { meter, adjusters: NEUTRAL_ADJUSTERS },
      counted: touched ? [{ type: 'move', seq: 5 }] : [],
    },
  }));

describe('what a periodic visit is compared with', () => {
  it.each<[string, Kind[], number | undefined]>([
    ['no visit', [], undefined],
    ['a signed one', [{ left: 140, touched: true }], 140],
    ['the latest of two signed ones', [{ left: 140, touched: true }, { left: 138 }], 138],
    ['one that nobody signed', [{ left: 140, touched: true, signed: false }], undefined],
    ['a signed one, and one since that touched nothing', [{ left: 140 }, { signed: false }], 140],
    [
      'a signed one, and one since that turned something',
      [{ left: 140 }, { signed: false, touched: true }],
      undefined,
    ],
    ['a signed one that left nothing proven', [{ left: 140 }, { left: undefined }], undefined],
    ['one read on another meter', [{ left: 140, meter: { ...COUNTS, name: 'Another' } }], undefined],
  ])('%s', (_, kinds, value) => {
    expect(lastLeftOf(visits(...kinds), COUNTS)?.value).toBe(value);
  });
});
