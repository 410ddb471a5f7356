import { describe, expect, it } from 'vitest';
import { LONGEST_GAP_MS, LOST_AFTER_MS } from '../../src/sight/stretch.ts';
import {
  ALIKE,
  afterLook,
  DARK_MEAN,
  type Doubt,
  doubtAbout,
  FLAT,
  FRAMES,
  type Look,
  MOVED_BY,
  SHORTEST_MS,
  SURE,
  type Watched,
  watched,
  watchFrom,
} from '../../src/sight/watch.ts';

const METER = { min: 0, max: 100, tolerance: 1, settleMs: 2_000 };
const CONFIRMED = { decimals: 0 };

const look = (at: number, text: string, more: Partial<Look> & { belief?: number } = {}): Look => ({
  at,
  sight: { text, belief: more.belief ?? 1 },
  drift: { by: 0, likeness: 1 },
  mean: 100,
  deviation: 40,
  ...more,
});

/** Two looks a second from 0 on; a text with `~` is unsure. */
function seen(texts: readonly string[], meter = METER): Watched {
  const looks = texts.map((text, i) =>
    look(i * 500, text.replace('~', ''), { belief: text.includes('~') ? SURE - 0.01 : 1 }),
  );
  return watched(
    looks.reduce((watch, each) => afterLook(watch, each, meter), watchFrom(CONFIRMED)),
    meter,
  );
}

describe('a frame of the camera', () => {
  const cases: [string, Partial<Look> & { belief?: number }, string, Doubt | undefined][] = [
    ['is read when all is well', {}, '47', undefined],
    ['is read with just the belief that is asked', { belief: SURE }, '47', undefined],
    ['is not read with a little less', { belief: SURE - 0.001 }, '47', 'unsure'],
    ['is read when the display moved just so far', { drift: { by: MOVED_BY, likeness: 1 } }, '47', undefined],
    ['is not read when it moved further', { drift: { by: MOVED_BY + 0.01, likeness: 1 } }, '47', 'moved'],
    [
      'is read when it looks just enough like the first',
      { drift: { by: 0, likeness: ALIKE } },
      '47',
      undefined,
    ],
    [
      'is not read when it looks like something else',
      { drift: { by: 0, likeness: ALIKE - 0.01 } },
      '47',
      'moved',
    ],
    ['is read in just enough light', { mean: DARK_MEAN }, '47', undefined],
    ['is not read in less light', { mean: DARK_MEAN - 0.1 }, '47', 'dark'],
    ['is read with just enough contrast', { deviation: FLAT }, '47', undefined],
    ['is not read with less contrast', { deviation: FLAT - 0.1 }, '47', 'dark'],
    ['is not read when a figure cannot be read', {}, '4?', 'not-a-number'],
    ['is not read when the display is blank', {}, '', 'not-a-number'],
    ['is not read when the point is not where it was confirmed', {}, '4.7', 'other-point'],
    ['is read at the lower end of the scale', {}, '0', undefined],
    ['is not read below it', {}, '-1', 'off-scale'],
    ['is read at the upper end of the scale', {}, '100', undefined],
    ['is not read above it', {}, '101', 'off-scale'],
  ];
  it.each(cases)('%s', (_, more, text, doubt) =>
    expect(doubtAbout(look(0, text, more), CONFIRMED, METER)).toBe(doubt),
  );
});

describe('frames together', () => {
  it('are a reading when they have shown the same for the settling time', () => {
    expect(seen(['47', '47', '47', '47'])).toEqual({ kind: 'settling', value: 47 });
    expect(seen(['47', '47', '47', '47', '47'])).toEqual({
      kind: 'settled',
      value: 47,
      text: '47',
      frames: 5,
      belief: 1,
    });
  });

  it('begin anew when the number changes by more than the tolerance, and only then', () => {
    expect(seen(['46', '46', '47', '47', '47'])).toMatchObject({ kind: 'settled', value: 47 });
    expect(seen(['45', '46', '47', '47', '47'])).toEqual({ kind: 'settling', value: 47 });
    expect(seen(['45', '47', '47', '47', '47', '47'])).toMatchObject({ kind: 'settled', value: 47 });
  });

  it('take the number that half of them show, not one that only flickered', () => {
    expect(seen(['46', '46', '46', '46', '47'])).toEqual({ kind: 'settling', value: 47 });
    expect(seen(['46', '47', '46', '46', '46'])).toMatchObject({ kind: 'settled', value: 46, frames: 5 });
  });

  it(`need ${FRAMES} that can be read, and three in four of all`, () => {
    expect(seen(['47', '~47', '47', '47', '47'])).toMatchObject({ kind: 'settled', frames: 4 });
    expect(seen(['47', '~47', '~47', '47', '47'])).toEqual({ kind: 'settling', value: 47 });
    const slow = { ...METER, settleMs: 4_000 };
    const nine = (doubts: number) =>
      Array.from({ length: 9 }, (_, i) => (i > 0 && i <= doubts ? '~47' : '47'));
    expect(seen(nine(2), slow)).toMatchObject({ kind: 'settled', frames: 7 });
    expect(seen(nine(3), slow)).toEqual({ kind: 'settling', value: 47 });
  });

  it('are no reading while the newest cannot be read', () => {
    expect(seen(['47', '47', '47', '47', '47', '~47'])).toEqual({ kind: 'settling', value: 47 });
  });

  it(`are looked at for ${SHORTEST_MS} ms on a meter that settles at once`, () => {
    const quick = { ...METER, settleMs: 0 };
    expect(seen(['47', '47', '47'], quick)).toEqual({ kind: 'settling', value: 47 });
    expect(seen(['47', '47', '47', '47'], quick)).toMatchObject({ kind: 'settled', value: 47 });
  });

  it('tell the least sure of those that show the number', () => {
    const looks = [0, 500, 1_000, 1_500, 2_000].map((at) =>
      look(at, '47', { belief: at === 500 ? 0.985 : 1 }),
    );
    const watch = looks.reduce((w, each) => afterLook(w, each, METER), watchFrom(CONFIRMED));
    expect(watched(watch, METER)).toMatchObject({ kind: 'settled', belief: 0.985 });
  });

  it('begin anew after a gap in which anything may have been shown, and when the clock goes back', () => {
    const steady = [0, 250, 500, 750, 1_000, 1_250, 1_500].map((at) => look(at, '47'));
    const then = (at: number) =>
      watched(
        [...steady, look(at, '47')].reduce((w, each) => afterLook(w, each, METER), watchFrom(CONFIRMED)),
        METER,
      );
    expect(then(1_500 + LONGEST_GAP_MS)).toMatchObject({ kind: 'settled', frames: 4 });
    expect(then(1_500 + LONGEST_GAP_MS + 1)).toEqual({ kind: 'settling', value: 47 });
    expect(then(1_400)).toEqual({ kind: 'settling', value: 47 });
  });

  it(`say that sight is lost after ${LOST_AFTER_MS} ms, and why; that it moved, at once`, () => {
    const blind = (ms: number) => seen(['47', ...Array.from({ length: ms / 500 }, () => '~47')]);
    expect(blind(LOST_AFTER_MS - 500)).toEqual({ kind: 'settling', value: 47 });
    expect(blind(LOST_AFTER_MS)).toEqual({ kind: 'lost', why: 'unsure' });
    expect(seen(Array.from({ length: 7 }, () => ''))).toEqual({ kind: 'lost', why: 'not-a-number' });
    const moved = afterLook(
      afterLook(watchFrom(CONFIRMED), look(0, '47'), METER),
      look(500, '47', { drift: { by: 0.3, likeness: 0.9 } }),
      METER,
    );
    expect(watched(moved, METER)).toEqual({ kind: 'lost', why: 'moved' });
  });

  it('forget what was seen before a move', () => {
    const looks = [0, 500, 1_000, 1_500].map((at) => look(at, '47'));
    const moved = look(2_000, '47', { drift: { by: 0.3, likeness: 0.9 } });
    const watch = [...looks, moved, look(2_500, '47')].reduce(
      (w, each) => afterLook(w, each, METER),
      watchFrom(CONFIRMED),
    );
    expect(watched(watch, METER)).toEqual({ kind: 'settling', value: 47 });
  });

  it('hold a bounded number of looks, however long the phone watches', () => {
    let watch = watchFrom(CONFIRMED);
    for (let i = 0; i < 1_000; i++) watch = afterLook(watch, look(i * 500, '47'), METER);
    expect(watch.looks.length).toBeLessThan(20);
  });
});
