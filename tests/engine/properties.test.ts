import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import type { SearchEvent } from '../../src/engine/history.ts';
import { observe } from '../../src/engine/observe.ts';
import { RULES } from '../../src/engine/rules.ts';
import { type Search, startSearch } from '../../src/engine/search.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { AXES } from '../../src/model/turns.ts';

const seq = fc.integer({ min: 0, max: 40 });
const axis = fc.constantFrom(...AXES);
const reading = fc.oneof(
  fc.constant({ kind: 'none' } as const),
  fc.constant({ kind: 'saturated' } as const),
  fc.record({ kind: fc.constant('value' as const), value: fc.double({ min: -60, max: 260, noNaN: true }) }),
);
const eighths = fc.integer({ min: -24, max: 24 });

const fact: fc.Arbitrary<SearchFact> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ type: fc.constant('reading' as const), reading }) },
  { weight: 5, arbitrary: fc.record({ type: fc.constant('move' as const), axis, eighths }) },
  fc.record({ type: fc.constant('move' as const), axis, eighths, replaces: seq }),
  fc.record({ type: fc.constant('trend' as const), trend: fc.constantFrom('rising', 'falling', 'steady') }),
  fc.record({
    type: fc.constant('gain' as const),
    change: fc.constantFrom('lowered', 'raised', 'set', 'full'),
  }),
  fc.record({ type: fc.constant('path' as const), state: fc.constantFrom('blocked', 'partial', 'clear') }),
  fc.constant({ type: 're-aimed' as const }),
  fc.record({ type: fc.constant('choice' as const), axis }),
  fc.record({
    type: fc.constant('cannot' as const),
    why: fc.constantFrom('stuck', 'end-of-travel'),
    instruction: seq,
    turn: fc.record({ axis, eighths }),
  }),
  fc.record({ type: fc.constant('checked' as const), instruction: seq }),
  fc.record({ type: fc.constant('confirm' as const), target: seq }),
  fc.record({
    type: fc.constant('retract' as const),
    target: seq,
    why: fc.constantFrom('undo', 'correction'),
  }),
  fc.record({ type: fc.constant('accept' as const), reading }),
);

/** Any facts in any order, at times that may even run backwards. */
const events: fc.Arbitrary<SearchEvent[]> = fc
  .array(fc.record({ fact, wait: fc.integer({ min: -2_000, max: 15_000 }) }), { maxLength: 40 })
  .map((items) => {
    let at = 1_000_000;
    return items.map((item, i) => {
      at += item.wait;
      return { seq: i, at, fact: item.fact };
    });
  });

const meter = fc.constantFrom(...NEUTRAL_METERS);
const fold = (start: Search, list: readonly SearchEvent[]): Search => list.reduce(observe, start);

describe('the search as a fold', () => {
  it('never throws, whatever is said in whatever order, and always has advice', () => {
    fc.assert(
      fc.property(meter, events, (profile, list) => {
        const search = fold(startSearch(profile, NEUTRAL_ADJUSTERS), list);
        const now = (list[list.length - 1]?.at ?? 0) + 1;
        const { advice } = advise(search, now);
        expect(RULES).toContain(advice.rule);
        missingForAccept(search, now);
      }),
      { numRuns: 400 },
    );
  });

  it('never asks for a turn the hand or the screw cannot make', () => {
    fc.assert(
      fc.property(meter, events, (profile, list) => {
        const search = fold(startSearch(profile, NEUTRAL_ADJUSTERS), list);
        const { action } = advise(search, 2_000_000_000).advice;
        if (action.kind !== 'turn') return;
        expect(Number.isInteger(action.eighths)).toBe(true);
        expect(action.eighths).not.toBe(0);
        expect(Math.abs(action.eighths)).toBeLessThanOrEqual(NEUTRAL_ADJUSTERS.maxStep);
        const { low, high } = search.limits[action.axis];
        const from = search.turned[action.axis];
        // A crew may have left the range itself; advice then only leads back.
        expect(from + action.eighths).toBeGreaterThanOrEqual(Math.min(low, from));
        expect(from + action.eighths).toBeLessThanOrEqual(Math.max(high, from));
      }),
      { numRuns: 400 },
    );
  });

  it('gives the same advice when the log is replayed', () => {
    fc.assert(
      fc.property(meter, events, (profile, list) => {
        const now = (list[list.length - 1]?.at ?? 0) + 500;
        const once = advise(fold(startSearch(profile, NEUTRAL_ADJUSTERS), list), now);
        const copy = JSON.parse(JSON.stringify(list)) as SearchEvent[];
        expect(advise(fold(startSearch(profile, NEUTRAL_ADJUSTERS), copy), now)).toEqual(once);
      }),
    );
  });

  it('stands where it stood once a turn is taken back', () => {
    fc.assert(
      fc.property(meter, events, axis, eighths, (profile, list, which, by) => {
        const before = fold(startSearch(profile, NEUTRAL_ADJUSTERS), list);
        const [move, undo] = [list.length + 100, list.length + 101];
        const turned = observe(before, {
          seq: move,
          at: 3e9,
          fact: { type: 'move', axis: which, eighths: by },
        });
        expect(turned.turned[which]).toBe(before.turned[which] + by);
        const back = observe(turned, {
          seq: undo,
          at: 3e9,
          fact: { type: 'retract', target: move, why: 'undo' },
        });
        const { history: _, ...rest } = back;
        const { history: __, ...same } = before;
        expect(rest).toEqual(same);
      }),
    );
  });

  it('keeps position and advice the same when a taking-back is itself taken back', () => {
    fc.assert(
      fc.property(meter, events, (profile, list) => {
        const before = fold(startSearch(profile, NEUTRAL_ADJUSTERS), list);
        const target = list.findLast((e) => e.fact.type === 'move')?.seq ?? 0;
        const undone = observe(before, {
          seq: 900,
          at: 3e9,
          fact: { type: 'retract', target, why: 'undo' },
        });
        const redone = observe(undone, {
          seq: 901,
          at: 3e9,
          fact: { type: 'retract', target: 900, why: 'undo' },
        });
        expect(redone.turned).toEqual(before.turned);
        expect(advise(redone, 4e9)).toEqual(advise(before, 4e9));
      }),
    );
  });
});
