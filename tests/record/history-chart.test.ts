import { describe, expect, it } from 'vitest';
import { type History, historyScene } from '../../src/charts/history-scene.ts';
import type { Part } from '../../src/charts/scene.ts';
import { NEUTRAL_METERS } from '../../src/model/profile.ts';
import { timesIn } from '../../src/phrases/times.ts';

const meter = NEUTRAL_METERS.find(({ unit }) => unit === 'percent') as (typeof NEUTRAL_METERS)[number];
const DAY = 86_400_000;
const point = (day: number, value: number, setting = 'as found', lost?: number) => ({
  at: day * DAY,
  value,
  setting,
  lost,
});
const draw = (points: History['points'], plan = {}, width = 340) =>
  historyScene({ meter, points }, plan, timesIn('UTC'), width);
const lines = (parts: readonly Part[] | undefined, style: string) =>
  (parts ?? []).flatMap((part) => (part.kind === 'line' && part.style === style ? [part.d] : []));
const marks = (parts: readonly Part[] | undefined) =>
  (parts ?? []).flatMap((part) => (part.kind === 'sample' ? [part] : []));

describe('the history of the signal as a chart', () => {
  it('draws nothing of a single visit, and says that there is nothing to compare with', () => {
    const { scene, caption } = draw([point(0, 60)]);
    expect(scene).toBeUndefined();
    expect(caption).toContain('nothing to compare with');
  });

  it('puts the visits where they are in time, and the least signal at its number', () => {
    const { scene } = draw([point(0, 60), point(100, 50), point(400, 40)], { leastSignal: 40 });
    const [first, second, third] = marks(scene?.parts);
    expect(((second?.x ?? 0) - (first?.x ?? 0)) / ((third?.x ?? 0) - (first?.x ?? 0))).toBeCloseTo(0.25);
    expect(lines(scene?.parts, 'strong')).toEqual([expect.stringContaining(`,${third?.y}h`)]);
  });

  it('draws the most loss where the first reading would be behind it', () => {
    // Half of the light is 3.0103 dB (10 log10 2): on a linear meter, half of the reading.
    const { scene } = draw([point(0, 60), point(100, 30)], { mostLoss: 10 * Math.log10(2) });
    const [, half] = marks(scene?.parts);
    const [, y] = /,([\d.]+)h/.exec(lines(scene?.parts, 'peak')[0] ?? '') ?? [];
    expect(Number(y)).toBeCloseTo(half?.y ?? 0);
  });

  it('joins no readings at two gains, and draws no loss across them', () => {
    const { scene } = draw([point(0, 60), point(100, 50), point(200, 55, '20'), point(300, 50, '20')], {
      mostLoss: 3,
    });
    expect(lines(scene?.parts, 'run')).toHaveLength(2);
    expect(lines(scene?.parts, 'peak')).toEqual([]);
    expect(new Set(marks(scene?.parts).map(({ gain }) => gain)).size).toBe(2);
  });

  it('never lets two dates touch, and always names the last day', () => {
    const { scene } = draw(Array.from({ length: 12 }, (_, i) => point(i * 30, 60 - i)));
    const dates = (scene?.parts ?? []).flatMap((part) =>
      part.kind === 'text' && /\d{4}$/.test(part.text) ? [part] : [],
    );
    const xs = dates.map(({ x }) => x).toSorted((a, b) => a - b);
    for (const [i, x] of xs.entries()) if (i > 0) expect(x - (xs[i - 1] ?? 0)).toBeGreaterThanOrEqual(100);
    expect(dates.map(({ text }) => text)).toContain(timesIn('UTC').day(330 * DAY));
    for (const { x } of dates) {
      expect(x).toBeGreaterThan(50);
      expect(x).toBeLessThan(340 - 50);
    }
  });

  it('says that no limit is stated, and compares nothing that cannot be compared', () => {
    expect(draw([point(0, 60), point(100, 50, '20')]).caption).toBe(
      'Since the first: cannot be compared. The plan states no limit: write the one of the maker or the site into it.',
    );
  });
});
