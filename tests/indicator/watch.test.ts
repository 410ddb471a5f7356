import { describe, expect, it } from 'vitest';
import type { Before } from '../../src/indicator/sense.ts';
import {
  type Doubt,
  LOOK_MS,
  type Moment,
  PATIENCE_MS,
  SLOW_MS,
  sensed,
  withMoment,
} from '../../src/indicator/watch.ts';
import type { Profile } from '../../src/model/sensor.ts';
import { LONGEST_GAP_MS, LOST_AFTER_MS } from '../../src/sight/stretch.ts';

const EVERY_MS = 100;
const LEVEL: Profile = { feature: 'level', some: -30, plenty: -10, sd: 0.2 };
const RATE: Profile = { feature: 'rate', some: 1, plenty: 4, sd: 0.05 };

/** Moments from 0 ms up to and with `ms`, as a phone keeps them. */
const upTo = (ms: number, of: (at: number) => Omit<Moment, 'at'>, from = 0): readonly Moment[] =>
  Array.from({ length: (ms - from) / EVERY_MS + 1 }, (_, i) => from + i * EVERY_MS).reduce(
    (moments: readonly Moment[], at) => withMoment(moments, { at, ...of(at) }),
    [],
  );
const tone = (db = -20) => ({ db, pitch: 70 });
const silence = { db: undefined };
const from = (moments: readonly Moment[], since = 0, before?: Before, profile = LEVEL) =>
  sensed(moments, since, profile, before);

describe('a phone that follows a tone or a lamp', () => {
  // Our own figures, at their thresholds: 3 s for a word, 6 s for one that says nothing is there.
  it.each([
    ['a steady tone', LOOK_MS - EVERY_MS, tone(), 'settling'],
    ['a steady tone', LOOK_MS, tone(), 'steady'],
    ['silence', SLOW_MS - EVERY_MS, silence, 'settling'],
    ['silence', SLOW_MS, silence, 'nothing'],
  ])('of %s for %d ms says %s', (_, ms, moment, said) => {
    const now = from(upTo(ms, () => moment));
    expect(now.kind === 'sensed' ? now.word : now.kind).toBe(said);
  });

  it('never takes the pause of a slow beep for nothing', () => {
    const beep = (at: number) => (at % 4_500 < 600 ? tone() : silence);
    for (let ms = 0; ms < 20_000; ms += EVERY_MS) {
      const now = from(upTo(ms, beep));
      expect(now.kind === 'sensed' ? now.word : '', `${ms} ms`).not.toBe('nothing');
    }
  });

  it('counts only what was there since the order: what sounded before it says nothing of now', () => {
    const moments = upTo(10_000, (at) => (at < 7_000 ? tone(-25) : tone(-20)));
    expect(from(moments, 7_100, 0.25).kind).toBe('settling');
    const later = upTo(10_100, (at) => (at < 7_000 ? tone(-25) : tone(-20)));
    expect(from(later, 7_100, 0.25)).toMatchObject({ kind: 'sensed', word: 'rising', place: 0.5 });
  });

  it('says how many moments a word rests on, and not those that told nothing', () => {
    const moments = upTo(LOOK_MS, (at) => (at === 500 ? { db: -60, doubt: 'noisy' as const } : tone()));
    expect(from(moments)).toMatchObject({ word: 'steady', moments: LOOK_MS / EVERY_MS });
  });

  // Three quarters of 31 moments are 23.25.
  it.each([
    [7, 'sensed'],
    [8, 'settling'],
  ])('with %d moments of 31 that tell nothing: %s', (many, kind) => {
    const moments = upTo(LOOK_MS, (at) =>
      at >= 200 && at < 200 + many * EVERY_MS ? { db: -60, doubt: 'noisy' as const } : tone(),
    );
    expect(from(moments).kind).toBe(kind);
  });

  it.each<[Doubt, number, string]>([
    ['noisy', LOST_AFTER_MS - EVERY_MS, 'settling'],
    ['noisy', LOST_AFTER_MS, 'lost'],
    ['silent', LOST_AFTER_MS, 'lost'],
    ['dark', LOST_AFTER_MS, 'lost'],
  ])('that was %s for %d ms is %s', (doubt, ms, kind) => {
    const moments = upTo(4_000 + ms, (at) => (at <= 4_000 ? tone() : { db: undefined, doubt }));
    const now = from(moments);
    expect(now).toMatchObject(kind === 'lost' ? { kind, why: doubt } : { kind });
  });

  it('says nothing of what was before it was moved, and never "nothing" while it is', () => {
    const moved = upTo(20_000, (at) => (at < 4_000 ? tone() : { db: undefined, doubt: 'moved' as const }));
    expect(from(moved)).toEqual({ kind: 'lost', why: 'moved' });
    const back = upTo(6_900, (at) =>
      at >= 4_000 && at < 5_000 ? { db: undefined, doubt: 'moved' as const } : tone(),
    );
    expect(from(back).kind).toBe('settling');
  });

  it.each([
    [LONGEST_GAP_MS, true],
    [LONGEST_GAP_MS + 1, false],
    [0, false],
    [-500, false],
  ])('keeps what was before a step of %d ms: %s', (step, kept) => {
    const moments = upTo(2_000, () => tone());
    const last = moments.at(-1)?.at ?? 0;
    expect(withMoment(moments, { at: last + step, ...tone() }).length > 1).toBe(kept);
  });

  it('waits for what keeps changing, and says after a time that it does', () => {
    const restless = (at: number) => tone(at % 200 === 0 ? -20 : -23);
    expect(from(upTo(PATIENCE_MS - EVERY_MS, restless)).kind).toBe('settling');
    expect(from(upTo(PATIENCE_MS, restless))).toMatchObject({ kind: 'sensed', word: 'changing' });
  });

  it('says so where something is there that it was not taught, after a time', () => {
    // Blinks too slowly for a rate, once in five seconds.
    const slow = (at: number) => ({ db: at % 5_000 < 2_500 ? 20 : 0 });
    expect(from(upTo(PATIENCE_MS - EVERY_MS, slow), 0, undefined, RATE).kind).toBe('settling');
    expect(from(upTo(PATIENCE_MS, slow), 0, undefined, RATE)).toEqual({ kind: 'lost', why: 'unclear' });
  });
});
