import { describe, expect, test } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import type { Search } from '../../src/engine/search.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NO_SIGNAL, SATURATED } from '../../src/model/reading.ts';
import type { Axis } from '../../src/model/turns.ts';
import { DECIBELS } from './crew-of-two.ts';
import { Alone } from './one-alone.ts';

const CANNOT_AIM: SearchFact = { type: 'cannot', why: 'unsaid', instruction: 0 };
const isDone = (search: Search): boolean => search.accepted !== undefined;
const ids = (alone: Alone): string[] => missingForAccept(alone.search, alone.at).map(({ id }) => id);

describe('trends alone', () => {
  test.each([
    [{ horizontal: 0, vertical: 0 }, 8],
    [{ horizontal: 9, vertical: -14 }, 8],
    [{ horizontal: -20, vertical: 3 }, 16],
    [{ horizontal: 2, vertical: 5 }, 4],
  ])('end within half a decibel of a peak at %j, half-width %d eighths', (peak, half) => {
    const alone = new Alone(peak, half);
    alone.follow(isDone);
    expect(alone.search.accepted?.backed).toBe(true);
    expect(alone.drop).toBeLessThan(0.5);
    expect(alone.turns).toBeLessThan(60);
  });

  test('the emitter is aimed by eye before anything is turned', () => {
    const alone = new Alone({ horizontal: 3, vertical: 3 });
    alone.follow((search) => search.aims > 0 || search.moves > 0);
    expect([alone.search.aims, alone.search.moves]).toEqual([1, 0]);
  });

  test('a number is never asked for', () => {
    const alone = new Alone({ horizontal: 5, vertical: 5 });
    const asked: unknown[] = [];
    alone.follow((search) => {
      const { action } = advise(search, alone.at).advice;
      if (action.kind === 'read') asked.push(action.as);
      return isDone(search);
    });
    expect(asked.length).toBeGreaterThan(0);
    expect(asked.every((as) => as === 'trend')).toBe(true);
  });

  test('light that stays behind the cover is a reflection: aim again', () => {
    const alone = new Alone({ horizontal: 3, vertical: 3 }, 8, true);
    alone.follow((search) => search.blocking.dark !== undefined);
    expect(alone.search.blocking.dark).toBe(false);
    alone.tell({ type: 'path', state: 'clear' });
    expect(advise(alone.search, alone.at).advice).toMatchObject({
      rule: 'not-by-reflection',
      action: { kind: 're-aim' },
    });
  });

  test('too strong asks for less gain, nothing seen for full gain and then for an aim by eye', () => {
    const strong = new Alone({ horizontal: 0, vertical: 0 });
    strong.tell(CANNOT_AIM);
    strong.tell({ type: 'reading', reading: SATURATED });
    expect(advise(strong.search, 1e6).advice.action).toEqual({ kind: 'gain', change: 'lower' });
    const dark = new Alone({ horizontal: 0, vertical: 0 });
    dark.tell(CANNOT_AIM);
    dark.tell({ type: 'reading', reading: NO_SIGNAL });
    expect(advise(dark.search, 1e6).advice.action).toEqual({ kind: 'gain', change: 'full' });
    dark.tell({ type: 'gain', change: 'full' });
    dark.tell({ type: 'reading', reading: NO_SIGNAL });
    expect(advise(dark.search, 1e6).advice.action).toEqual({ kind: 're-aim' });
  });
});

describe('when a look counts', () => {
  const SETTLE = DECIBELS.settleMs;

  test.each([
    ['trend', SETTLE - 1, 0],
    ['trend', SETTLE, 1],
    ['dark', SETTLE - 1, 0],
    ['dark', SETTLE, 1],
  ])('%s, %d ms after the hands were off: %d looks', (what, after, looks) => {
    const alone = new Alone({ horizontal: 0, vertical: 0 });
    alone.tell(CANNOT_AIM);
    alone.turn('horizontal', 4);
    const fact: SearchFact =
      what === 'dark' ? { type: 'reading', reading: NO_SIGNAL } : { type: 'trend', trend: 'rising' };
    const search = observe(alone.search, { seq: 99, at: alone.at + after, fact });
    expect(search.looks).toHaveLength(looks);
  });

  test.each([SETTLE - 1, SETTLE])('dark behind the card, %d ms after it went up', (after) => {
    const alone = new Alone({ horizontal: 0, vertical: 0 });
    alone.look();
    alone.tell({ type: 'path', state: 'blocked' });
    const fact: SearchFact = { type: 'reading', reading: NO_SIGNAL };
    const { blocking } = observe(alone.search, { seq: 99, at: alone.at + after, fact });
    expect(blocking.dark).toBe(after >= SETTLE ? true : undefined);
  });

  test('one word of a steady light begins the count of changing ones anew', () => {
    const alone = new Alone({ horizontal: 0, vertical: 0 });
    alone.tell(CANNOT_AIM);
    const wander = () => alone.tell({ type: 'trend', trend: 'wandering' });
    const rule = () => advise(alone.search, alone.at + SETTLE).advice.rule;
    wander();
    wander();
    expect(rule()).toBe('look');
    alone.at += SETTLE;
    alone.look();
    wander();
    wander();
    expect(rule()).toBe('look');
    wander();
    expect(rule()).toBe('wandering');
  });
});

describe('acceptance by trends alone', () => {
  /** At the peak. Both sides of each adjuster are looked at and compared; `once` names one that is looked at once. */
  function looked(once?: `${Axis}${1 | -1}`, far = 12): Alone {
    const alone = new Alone({ horizontal: 0, vertical: 0 });
    const turn = (axis: Axis, eighths: number) => {
      alone.turn(axis, eighths);
      alone.look();
    };
    alone.look();
    for (const axis of ['horizontal', 'vertical'] as const) {
      for (const side of [1, -1] as const) {
        if (once === `${axis}${side}`) continue;
        turn(axis, side * far);
        turn(axis, -side * far);
      }
      for (const eighths of [far, -2 * far, far]) turn(axis, eighths);
    }
    alone.tell({ type: 'path', state: 'blocked' });
    alone.tell({ type: 'reading', reading: NO_SIGNAL });
    alone.tell({ type: 'path', state: 'clear' });
    alone.look();
    alone.at += 20_000;
    alone.look();
    return alone;
  }

  test('where it is offered, nothing is missing', () => {
    const alone = new Alone({ horizontal: 4, vertical: -4 });
    alone.follow(() => advise(alone.search, alone.at).advice.action.kind === 'offer-accept');
    expect(alone.search.accepted).toBeUndefined();
    expect(ids(alone)).toEqual([]);
  });

  test('both sides of both adjusters seen lower twice are brackets', () => {
    expect(ids(looked()).filter((id) => id.startsWith('bracket'))).toEqual([]);
  });

  test.each(['horizontal1', 'horizontal-1', 'vertical1', 'vertical-1'] as const)(
    'a side that was seen lower only once is missing: %s',
    (leave) => {
      expect(ids(looked(leave))).toContain(`bracket-${leave.replace(/-?1$/, '')}`);
    },
  );

  test('a side five eighths out is no side: six are needed', () => {
    expect(ids(looked(undefined, 5))).toEqual(
      expect.arrayContaining(['bracket-horizontal', 'bracket-vertical']),
    );
  });

  test('without the blocking check, and without the hold, nothing is accepted', () => {
    const alone = new Alone({ horizontal: 0, vertical: 0 }, 4);
    alone.look();
    expect(ids(alone)).toEqual(
      expect.arrayContaining([
        'bracket-horizontal',
        'bracket-vertical',
        'at-peak',
        'blocking-check',
        'steady-hold',
      ]),
    );
  });

  test('light that came back lower after the cover: the blocking check is made again', () => {
    const alone = looked();
    alone.tell({ type: 'path', state: 'blocked' });
    alone.tell({ type: 'reading', reading: NO_SIGNAL });
    alone.tell({ type: 'path', state: 'clear' });
    alone.tell({ type: 'trend', trend: 'falling' });
    expect(ids(alone)).toContain('blocking-check');
  });
});
