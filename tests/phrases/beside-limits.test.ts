import { describe, expect, it } from 'vitest';
import { SHORTFALL_ALLOWED_DB } from '../../src/engine/accept.ts';
import { BEAM_FALL_DB } from '../../src/engine/fall.ts';
import { LONG_GAP_MS } from '../../src/model/finding.ts';
import { type MeterProfile, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { valueReading } from '../../src/model/reading.ts';
import { elapsedText, restoredText, setDelayText } from '../../src/phrases/delays.ts';
import { figuresText } from '../../src/phrases/figures.ts';
import { findingText } from '../../src/phrases/findings.ts';
import { changeText, finalText, readingText } from '../../src/phrases/readings.ts';
import { RESTORE_S } from '../../src/visit/verdict.ts';

const COUNTS = NEUTRAL_METERS.find(({ unit }) => unit === 'counts') as MeterProfile;
const finding = (id: 'clear-path-dip' | 'long-gap', figures: Record<string, number>) =>
  findingText({ id, severity: 'question', entries: [], figures, about: [] });

/** A place where a value is told that was judged by a limit, and how it is told. */
const PLACES: readonly (readonly [string, limits: readonly number[], (value: number) => string])[] = [
  [
    'a reading beside the band',
    [COUNTS.bandLow, COUNTS.bandHigh],
    (value) => readingText(valueReading(value), COUNTS),
  ],
  ['a reading near no signal', [COUNTS.lostAt], (value) => readingText(valueReading(value), COUNTS)],
  ['a reading near saturation', [COUNTS.saturatedAt], (value) => readingText(valueReading(value), COUNTS)],
  [
    'the final reading, on board and report',
    [COUNTS.bandLow, COUNTS.bandHigh],
    (value) => finalText({ seq: 1, at: 0, reading: valueReading(value), as: 'accepted' }, COUNTS),
  ],
  [
    'the reading of an advice, which names the band',
    [COUNTS.bandLow, COUNTS.bandHigh],
    (reading) => figuresText({ reading, low: COUNTS.bandLow, high: COUNTS.bandHigh }, COUNTS),
  ],
  ['the delay of a test, in the table', [5, 15], (value) => elapsedText(value, { delay: 10, tolerance: 5 })],
  [
    'the delay of a test that failed',
    [5, 15],
    (elapsed) => figuresText({ elapsed, delay: 10, tolerance: 5 }, COUNTS),
  ],
  ['the time until normal', [RESTORE_S], restoredText],
  [
    'the time until normal, of a test that failed',
    [RESTORE_S],
    (restored) => figuresText({ restored }, COUNTS),
  ],
  [
    'a loss beside the alarm threshold',
    [3.01],
    (loss) => figuresText({ loss, expectedLoss: 3.4, threshold: 3.01 }, COUNTS),
  ],
  ['a fall of the clear reading', [BEAM_FALL_DB], (fall) => figuresText({ fall }, COUNTS)],
  [
    'a fall of the clear reading, as a finding',
    [BEAM_FALL_DB],
    (fall) => finding('clear-path-dip', { accepted: 140, later: 120, fall }).split('tests: ')[1] ?? '',
  ],
  ['what lacks to the peak', [SHORTFALL_ALLOWED_DB], (shortfall) => figuresText({ shortfall }, COUNTS)],
  ['how long a reading was held', [10], (held) => figuresText({ held, needed: 10 }, COUNTS)],
  ['a long gap', [LONG_GAP_MS / 60_000], (value) => finding('long-gap', { gap: value * 60, said: 0 })],
];

const CASES = PLACES.flatMap(([where, limits, tell]) => limits.map((limit) => [where, limit, tell] as const));

describe('no value is shown on another side of its own limit', () => {
  it.each(CASES)('%s, right at %d', (_, limit, tell) => {
    for (const off of [-0.4, -0.04, -0.004, -0.0004, 0, 0.0004, 0.004, 0.04, 0.4]) {
      const text = tell(limit + off);
      const shown = Number(/-?\d+(?:\.\d+)?/.exec(text)?.[0]);
      expect(Math.sign(Number((shown - limit).toFixed(9))), `${limit + off} as "${text}"`).toBe(
        Math.sign(off),
      );
    }
  });

  it('is told with no more figures than that takes', () => {
    expect(readingText(valueReading(142.4), COUNTS)).toBe('142');
    expect(elapsedText(17, { delay: 15, tolerance: 5 })).toBe('17.0 s');
    expect(elapsedText(17.04, {})).toBe('17.0 s');
    expect(finding('long-gap', { gap: 960, said: 0 })).toContain(' 16 min');
  });

  it('what was set is told in full, and a difference of readings has no band', () => {
    expect([setDelayText(15), setDelayText(12.25)]).toEqual(['15.0 s', '12.25 s']);
    expect(changeText(100.4, 0, COUNTS)).toBe('up 100');
  });
});
