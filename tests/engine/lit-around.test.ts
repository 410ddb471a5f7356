import { describe, expect, test } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import { beliefOf, costAt } from '../../src/engine/belief.ts';
import { across, isLesser, isWide, type Look, type Seen } from '../../src/engine/looks.ts';
import { ALLOWED_DB, isTopped } from '../../src/engine/proven.ts';
import type { Search } from '../../src/engine/search.ts';
import { BACKLASHES } from '../../src/engine/slack.ts';
import { Alone } from './one-alone.ts';

const isDone = (search: Search): boolean => search.accepted !== undefined;
const isOffered = (alone: Alone): boolean =>
  advise(alone.search, alone.at).advice.action.kind === 'offer-accept';

let seq = 0;
const look = (horizontal: number, vertical: number, seen: Seen): Look => ({
  seq: seq++,
  at: seq * 5_000,
  seen,
  turned: { horizontal, vertical },
  pointing: { horizontal: BACKLASHES.map(() => horizontal), vertical: BACKLASHES.map(() => vertical) },
  gain: 0,
});
const SAID = { '-1': 'falling', '0': 'steady', '1': 'rising' } as const;
type Sign = -1 | 0 | 1;
const SIGNS: readonly Sign[] = [-1, 0, 1];
const PAIRS = SIGNS.flatMap((a) => SIGNS.map((b) => [a, b] as const));

/** From far below a peak at the start to beside it, to it, and beyond. */
const crossing = (up: Sign, on: Sign, stops: readonly number[] = [-12, -3, 0, 3]): Look[] => {
  const [far = 0, before = 0, at = 0, after = 0] = stops;
  return [
    look(far, 0, 'falling'),
    look(before, 0, 'rising'),
    look(at, 0, SAID[up]),
    look(after, 0, SAID[on]),
  ];
};
const PEAK = look(0, 0, 'steady');

describe('on the way across a peak', () => {
  test.each(PAIRS)('seen %i up to it and %i beyond: a top only where neither side is brighter', (up, on) => {
    expect(isTopped(crossing(up, on), PEAK, 'horizontal')).toBe(up >= 0 && on <= 0);
  });

  test.each([
    [[-12, -3, 0, 3], true],
    [[-12, -4, 0, 4], true],
    [[-12, -2, 0, 2], true],
    [[-12, -5, 0, 3], false],
    [[-12, -1, 0, 3], false],
    [[-12, -3, 0, 5], false],
    [[-12, -3, 2, 3], false],
    [[-6, -3, 0, 3], true],
    [[-5, -3, 0, 3], false],
    [[3, 0, -3, -12], false],
  ])('the stops %j count: %s', (stops, counts) => {
    expect(isTopped(crossing(1, -1, stops), PEAK, 'horizontal')).toBe(counts);
  });

  test('another line says nothing of this one', () => {
    const beside = look(0, 2, 'steady');
    expect(across(crossing(1, -1), beside, 'horizontal')).toEqual({});
  });

  test.each(PAIRS)('the light is wide only where nothing changes: %i, %i', (up, on) => {
    const vertical = crossing(0, 0).map((each) =>
      look(each.turned.vertical, each.turned.horizontal, each.seen),
    );
    expect(isWide([...vertical, ...crossing(up, on)], PEAK)).toBe(up === 0 && on === 0);
  });
});

describe('another place held against the peak, there and back', () => {
  test.each(PAIRS)('seen %i at the peak and %i back there', (atPeak, back) => {
    const looks = [look(9, 8, 'rising'), look(0, 0, SAID[atPeak]), look(9, 8, SAID[back])];
    expect(isLesser(looks, PEAK)).toBe(atPeak <= 0 && back >= 0);
  });

  test('only once, or along one adjuster, is not enough', () => {
    expect(isLesser([look(0, 0, 'steady'), look(9, 8, 'rising')], PEAK)).toBe(false);
    expect(isLesser([look(9, 0, 'rising'), look(0, 0, 'falling'), look(9, 0, 'rising')], PEAK)).toBe(false);
  });

  test('too strong there is enough', () => {
    expect(isLesser([look(4, 4, 'steady'), look(0, 0, 'rising'), look(9, 8, 'too-strong')], PEAK)).toBe(true);
  });
});

test('what was seen along one line says less of another', () => {
  const looks = [0, 9, -9, 9, -9, 0].map((h, i) => look(h, 20, i % 2 === 0 ? 'rising' : 'falling'));
  const same = [
    look(0, 20, 'steady'),
    look(8, 20, 'falling'),
    look(-8, 20, 'steady'),
    look(0, 20, 'rising'),
    ...looks,
  ];
  const here = same[3] ?? PEAK;
  const risk = (line: number) =>
    costAt(beliefOf(same.slice(0, 4), 'horizontal', line), 'horizontal', here, 0, ALLOWED_DB).risk;
  expect(risk(0)).toBeGreaterThan(risk(20) + 0.05);
});

/** A lesser light where the eye aimed, and the beam beside it. */
class Lobed extends Alone {
  protected override below(horizontal: number, vertical: number): number {
    const beam = super.below(horizontal, vertical);
    const off = Math.hypot(this.place.horizontal, this.place.vertical);
    return Math.min(beam, 6 + 3 * (off / 2.5) ** 2);
  }
}

/** A ring with a dark middle. */
class Ring extends Alone {
  protected override below(horizontal: number, vertical: number): number {
    return 3 * ((Math.hypot(horizontal, vertical) - 4) / 4) ** 2;
  }
}

/** Longer one way than the other, and askew: half-widths of 5 and 14 eighths, turned by 35 degrees. */
class Askew extends Alone {
  protected override below(horizontal: number, vertical: number): number {
    const [c, s] = [Math.cos(0.61), Math.sin(0.61)];
    const [along, aside] = [c * horizontal + s * vertical, c * vertical - s * horizontal];
    return 3 * ((along / 14) ** 2 + (aside / 5) ** 2);
  }
}

describe('a peak that only trends have shown', () => {
  test('a lesser light that was proven first is left for the beam beside it', () => {
    const alone = new Lobed({ horizontal: -8, vertical: 9 }, 4);
    alone.follow((search) => search.looks?.length === 1 && search.moves > 20);
    expect(alone.search.looks).toHaveLength(1);
    alone.follow(isDone);
    expect(alone.search.accepted?.backed).toBe(true);
    expect(alone.drop).toBeLessThan(0.5);
  });

  test('the dark middle of a ring is never accepted', () => {
    const alone = new Ring({ horizontal: 2, vertical: 1 });
    alone.follow(isDone);
    expect(isDone(alone.search) && alone.drop > 1).toBe(false);
  });

  // Half a decibel along each line is more where the light lies askew.
  test('light that lies askew ends within a decibel', () => {
    const alone = new Askew({ horizontal: -8, vertical: 9 });
    alone.follow(isDone);
    expect(alone.search.accepted?.backed).toBe(true);
    expect(alone.drop).toBeLessThan(1);
  });

  test('where the light was seen to rise beside it, on the way across, nothing is accepted', () => {
    const alone = new Alone({ horizontal: 3, vertical: -4 }, 14);
    alone.follow(() => isOffered(alone));
    const looks = alone.search.looks ?? [];
    const at = looks.findLast((each) => each.turned.horizontal === 4 && each.turned.vertical === 0);
    const risen = looks.map((each) => (each === at ? { ...each, seen: 'rising' as const } : { ...each }));
    expect(missingForAccept({ ...alone.search, looks: risen }, alone.at).map(({ id }) => id)).toEqual([
      'at-peak',
    ]);
  });

  test('narrow light is looked around: until then a second peak is thought of', () => {
    const alone = new Alone({ horizontal: 1, vertical: 2 }, 4);
    alone.follow(() => advise(alone.search, alone.at).advice.rule === 'light-around');
    expect(missingForAccept(alone.search, alone.at).map(({ id }) => id)).toContain('second-peak');
    alone.follow(() => isOffered(alone));
    expect(missingForAccept(alone.search, alone.at)).toEqual([]);
  });

  test.each([
    [20, 0],
    [4, 8],
  ])('of light with a half-width of %d eighths at least %d places around are asked for', (half, least) => {
    const alone = new Alone({ horizontal: 1, vertical: 2 }, half);
    let asked = 0;
    alone.follow((search) => {
      const { rule, action } = advise(alone.search, alone.at).advice;
      if (rule === 'light-around' && action.kind === 'turn') asked += 1;
      return isDone(search);
    });
    expect(isDone(alone.search)).toBe(true);
    expect(asked).toBeGreaterThanOrEqual(least);
    if (least === 0) expect(asked).toBe(0);
  });
});
