import { describe, expect, test } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import { type Search, startSearch } from '../../src/engine/search.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, SATURATED } from '../../src/model/reading.ts';
import type { Axis } from '../../src/model/turns.ts';
import { DECIBELS } from './crew-of-two.ts';

/** A person who sees a Gaussian beam (a parabola in decibels) and tells changes of more than 0.4 dB. */
class Alone {
  search: Search = startSearch(DECIBELS, NEUTRAL_ADJUSTERS, { byTrends: true });
  at = 0;
  seq = 0;
  turns = 0;
  place = { horizontal: 0, vertical: 0 };
  private before: number | undefined;
  private covered = false;

  constructor(
    readonly peak: Record<Axis, number>,
    readonly half = 8,
    readonly reflects = false,
  ) {}

  get drop(): number {
    const off = Math.hypot(
      this.place.horizontal - this.peak.horizontal,
      this.place.vertical - this.peak.vertical,
    );
    return 3 * (off / this.half) ** 2;
  }

  tell(fact: SearchFact): void {
    this.at += 5_000;
    this.search = observe(this.search, { seq: this.seq++, at: this.at, fact });
  }

  look(): void {
    const change = (this.before ?? this.drop) - this.drop;
    this.before = this.drop;
    if (this.covered && !this.reflects) this.tell({ type: 'reading', reading: NO_SIGNAL });
    else this.tell({ type: 'trend', trend: change > 0.4 ? 'rising' : change < -0.4 ? 'falling' : 'steady' });
  }

  turn(axis: Axis, eighths: number): void {
    this.place = { ...this.place, [axis]: this.place[axis] + eighths };
    this.turns += 1;
    this.tell({ type: 'move', axis, eighths });
  }

  /** Does what it is told, until `until` is true. */
  follow(until: (search: Search) => boolean): void {
    for (let i = 0; i < 300 && !until(this.search); i++) {
      const { action } = advise(this.search, this.at).advice;
      if (action.kind === 'turn') this.turn(action.axis, action.eighths);
      // By eye, so near the place where it pointed; here it is the very place.
      else if (action.kind === 're-aim') this.tell({ type: 're-aimed' });
      else if (action.kind === 'read') this.look();
      else if (action.kind === 'hold') this.at = Math.max(this.at, action.until);
      else if (action.kind === 'block' || action.kind === 'unblock') {
        this.covered = action.kind === 'block';
        this.tell({ type: 'path', state: this.covered ? 'blocked' : 'clear' });
      } else if (action.kind === 'offer-accept') this.tell({ type: 'accept', reading: NO_SIGNAL });
      else return;
    }
  }
}

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
    expect(alone.turns).toBeLessThan(40);
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
