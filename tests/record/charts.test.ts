import { describe, expect, test } from 'vitest';
import { duration, OWN_TIMES } from '../../client/browser/times.ts';
import { levels } from '../../src/charts/levels.ts';
import { placeLabels } from '../../src/charts/place-labels.ts';
import { series } from '../../src/log/series.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../../src/model/reading.ts';
import { positionText } from '../../src/phrases/position.ts';
import { Script, SETUP } from './fixture.ts';

const { meter } = SETUP;

describe('the upright axis', () => {
  const levelsOf = (...values: number[]) => {
    const s = new Script();
    s.reads('', SATURATED);
    s.reads('', NO_SIGNAL);
    for (const value of values) s.reads('', valueReading(value));
    return levels(series(s.entries).samples, meter, 200);
  };

  test('marks readings without a number above or below all numbers', () => {
    const { y } = levelsOf(0, 255);
    expect(y(SATURATED)).toBeLessThan(y(valueReading(255)));
    expect(y(NO_SIGNAL)).toBeGreaterThan(y(valueReading(0)));
  });

  test('shows no number that the meter cannot show', () => {
    const [low, high] = levelsOf(3, 252).scale.domain();
    expect(low).toBeGreaterThanOrEqual(meter.min);
    expect(high).toBeLessThanOrEqual(meter.max);
  });

  test('does not make the noise of a steady reading look like a slope', () => {
    const { y } = levelsOf(140, 141);
    expect(y(valueReading(140)) - y(valueReading(141))).toBeLessThan(20);
  });

  test('shows the whole meter where no number was read', () => {
    expect(levelsOf().scale.domain()).toEqual([meter.min, meter.max]);
  });
});

describe('labels above a chart', () => {
  const widthOf = (text: string) => text.length * 6;

  // On the narrow one a label has room on neither side of its place.
  test.each([300, 150])('never overlap within a row, and never pass an edge of %i pixels', (width) => {
    const placed = placeLabels(
      [5, 20, 21, 80, 130, 270, 290]
        .filter((x) => x < width)
        .map((x, index) => ({ key: String(index), x, text: 'gain 2, lowered' })),
      width,
    );
    const spans = placed.map(({ textX, text, anchor, row }) => {
      const from = anchor === 'start' ? textX : textX - widthOf(text);
      return { row, from, to: from + widthOf(text) };
    });
    for (const { from, to } of spans) {
      expect(from).toBeGreaterThanOrEqual(0);
      expect(to).toBeLessThanOrEqual(width);
    }
    for (const [index, a] of spans.entries()) {
      for (const b of spans.slice(index + 1)) {
        expect(a.row !== b.row || a.to < b.from || b.to < a.from).toBe(true);
      }
    }
  });
});

describe('words of the axes', () => {
  test('positions have their sign and their fraction', () => {
    expect([0, 1, -2, 12, -8].map(positionText)).toEqual(['0', '+⅛', '−¼', '+1½', '−1']);
  });

  test('marks less than a minute apart show their seconds', () => {
    expect(new Set(OWN_TIMES.labels([0, 30_000, 60_000])).size).toBe(3);
    expect(OWN_TIMES.labels([0, 60_000])[0]).not.toContain(':00:00');
  });

  test('durations have the two units that matter', () => {
    expect([8_000, 65_000, 3_840_000].map(duration)).toEqual(['8 s', '1 min 05 s', '1 h 04 min']);
  });
});
