import { describe, expect, it } from 'vitest';
import { BEAM_FALL_DB, fallFigure, isBeamMoved } from '../../src/engine/fall.ts';
import type { Fact } from '../../src/model/facts.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../../src/model/reading.ts';
import { clearReadings } from '../../src/visit/beam.ts';
import { searchOf } from '../../src/visit/search.ts';
import { COUNTS, DECIBELS } from '../conversation/table.ts';
import { PLAN, TableCommissioning } from './bench.ts';
import { accepted, commissionAfter, covered, panel, reads, type Step, turned, uncovered } from './record.ts';

const value = valueReading;
/** So fine that only the limit in decibels decides. */
const FINE: MeterProfile = { ...DECIBELS, tolerance: 0.01 };
const UNKNOWN: MeterProfile = { ...COUNTS, law: 'unknown', tolerance: 2 };
/** 140 counts, half a decibel less: P = P0 / 10^(dB / 10), the definition of the decibel. */
const HALF_A_DB_LESS = 140 / 10 ** 0.05;

describe('with the path clear the beam is no longer what it was', () => {
  it.each<[string, Reading, Reading, MeterProfile, boolean]>([
    ['not by half a decibel', value(-10), value(-10.5), FINE, false],
    ['by a thousandth more', value(-10), value(-10.501), FINE, true],
    ['not by more light', value(-10), value(-8), FINE, false],
    ['not by half a decibel of a linear meter', value(140), value(HALF_A_DB_LESS + 0.01), COUNTS, false],
    ['by more than that of a linear meter', value(140), value(HALF_A_DB_LESS - 0.01), COUNTS, true],
    ['not within the tolerance of a coarse meter', value(12), value(10), { ...COUNTS, tolerance: 2 }, false],
    ['by no signal', value(140), NO_SIGNAL, COUNTS, true],
    ['by a meter flooded with light', value(140), SATURATED, COUNTS, true],
    ['not where it was flooded before', SATURATED, value(140), COUNTS, false],
    ['not where there was no signal before', NO_SIGNAL, value(140), COUNTS, false],
    ['not within the tolerance, on a meter of unknown law', value(140), value(138), UNKNOWN, false],
    ['by more than it, on a meter of unknown law', value(140), value(137), UNKNOWN, true],
    ['not by more light, on a meter of unknown law', value(140), value(150), UNKNOWN, false],
    ['by no signal, on a meter of unknown law', value(140), NO_SIGNAL, UNKNOWN, true],
    ['not where it was flooded before, on a meter of unknown law', SATURATED, value(140), UNKNOWN, false],
  ])('%s', (_, before, now, meter, moved) => {
    expect(isBeamMoved(before, now, meter)).toBe(moved);
  });

  it('the limit is half a decibel, and the loss is told where it has an end', () => {
    expect(BEAM_FALL_DB).toBe(0.5);
    expect(fallFigure(value(-10), value(-12), FINE)).toEqual({ fall: 2 });
    expect(fallFigure(value(140), NO_SIGNAL, COUNTS)).toEqual({});
    expect(fallFigure(value(140), value(70), UNKNOWN)).toEqual({});
  });
});

describe('the settled readings with the path clear under an acceptance', () => {
  /** This meter settles in 4 s. */
  const seqs = (...facts: [second: number, fact: Fact][]) =>
    clearReadings(commissionAfter(facts.map(([second, fact]): Step => ['', second, fact]))).map(
      ({ seq }) => seq,
    );
  const clear = reads(value(140));

  it.each<[string, [number, Fact][], number[]]>([
    [
      'are none before it',
      [
        [1, clear],
        [20, accepted],
      ],
      [],
    ],
    [
      'are there at once after it: the hands were off',
      [
        [20, accepted],
        [20, clear],
      ],
      [2],
    ],
    [
      'are none under a cover',
      [
        [20, accepted],
        [30, covered('partial')],
        [40, clear],
      ],
      [],
    ],
    [
      'are none before it has settled',
      [
        [20, accepted],
        [30, covered('partial')],
        [40, uncovered],
        [43.9, clear],
      ],
      [],
    ],
    [
      'are there when it has',
      [
        [20, accepted],
        [30, covered('partial')],
        [40, uncovered],
        [44, clear],
      ],
      [4],
    ],
    [
      'are none after a turn',
      [
        [20, accepted],
        [30, turned],
        [40, clear],
      ],
      [],
    ],
    [
      'are none after a change of the gain',
      [
        [20, accepted],
        [30, { type: 'gain', change: 'raised' }],
        [40, clear],
      ],
      [],
    ],
    [
      'are none after an aim by eye',
      [
        [20, accepted],
        [30, { type: 're-aimed' }],
        [40, clear],
      ],
      [],
    ],
    [
      'are none where it was accepted under a cover',
      [
        [10, covered('blocked')],
        [20, accepted],
        [40, clear],
      ],
      [],
    ],
    [
      'settle again when something was looked into',
      [
        [20, accepted],
        [30, { type: 'checked', instruction: 0 }],
        [33, clear],
      ],
      [],
    ],
    [
      'settle again while it still falls',
      [
        [20, accepted],
        [30, { type: 'trend', trend: 'falling' }],
        [33, clear],
      ],
      [],
    ],
    [
      'are settled when it is steady',
      [
        [20, accepted],
        [30, covered('partial')],
        [40, uncovered],
        [41, { type: 'trend', trend: 'steady' }],
        [42, clear],
      ],
      [5],
    ],
    [
      'are untouched by what the panel shows',
      [
        [20, accepted],
        [30, panel('normal')],
        [31, clear],
      ],
      [3],
    ],
  ])('%s', (_, facts, expected) => {
    expect(seqs(...facts)).toEqual(expected);
  });
});

describe('the crew', () => {
  const atPanel = () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    return job;
  };

  it('is asked for a clear reading before the first cover, and again when it is two minutes old', () => {
    const job = atPanel();
    expect(job.action).toEqual({ kind: 'read' });
    expect(job.state.instruction?.advice.rule).toBe('clear-before');
    job.say('panel', '140');
    job.seconds(120).say('panel', 'go on');
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
    job.seconds(1).say('panel', 'go on');
    expect(job.action).toEqual({ kind: 'read' });
  });

  it('that covered without one is told to uncover: nobody waits for the panel', () => {
    const job = atPanel();
    job.say('emitter', 'half covered');
    expect(job.action).toEqual({ kind: 'uncover' });
    expect(job.state.instruction?.advice.rule).toBe('not-read');
  });

  it('is asked to wait until it has settled after the cover, and then for a reading', () => {
    const job = atPanel();
    job.readClear().say('emitter', 'half covered');
    job.say('panel', '70');
    job.seconds(10).say('panel', 'panel shows alarm');
    job.say('panel', 'yes');
    job.say('emitter', 'clear');
    job.say('panel', 'panel normal');
    expect(job.action).toMatchObject({ kind: 'hold', reason: 'settling' });
    job.seconds(4);
    expect(job.action).toEqual({ kind: 'read' });
    expect(job.state.instruction?.advice.rule).toBe('clear-after');
  });

  it('looks for the cause when the clear reading fell, and goes on when it is back', () => {
    const job = atPanel();
    job.say('panel', '100');
    expect(job.action).toMatchObject({ kind: 'check', causes: expect.arrayContaining(['path-obstructed']) });
    expect(job.state.instruction?.say).toContain('has fallen since the alignment was accepted');
    // 140 counts to 100: 10 * log10(1.4).
    expect(job.state.instruction?.advice.figures.fall).toBeCloseTo(10 * Math.log10(1.4), 9);
    job.say('panel', 'done');
    job.readClear('140');
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
  });

  it('aligns again when it stays low, and the acceptance is gone', () => {
    const job = atPanel();
    job.say('panel', '100');
    job.say('panel', 'done');
    job.readClear('100');
    expect(job.action).toEqual({ kind: 're-aim' });
    expect(job.state.instruction?.say).toContain('no longer stands');
    job.say('emitter', 'done');
    expect(searchOf(job.state)?.accepted).toBeUndefined();
  });

  it('whose beam was lost in a test hears that it was the beam, not the cover, and looks for its causes', () => {
    const job = atPanel();
    job.readClear().say('emitter', 'half covered');
    job.say('panel', 'no signal');
    job.seconds(10).say('panel', 'panel shows fault');
    // Cover or beam: nobody knows yet.
    expect(job.of('issue-opened')).toEqual([]);
    // Nobody is asked whether the panel shows the right zone in alarm: it is not in alarm.
    expect(job.action).toEqual({ kind: 'uncover' });
    job.say('emitter', 'clear');
    job.readClear('no signal');
    expect(job.of('issue-opened')).toHaveLength(1);
    expect(job.of('issue-opened')[0]?.text).toContain(
      'the beam was lost or moved, and the cover was not wrong',
    );
    expect(job.action).toMatchObject({ kind: 'check', causes: expect.arrayContaining(['loose-mount']) });
    job.say('panel', 'done');
    job.readClear('140');
    job.say('panel', 'panel normal');
    expect(job.action).toEqual({ kind: 'cover', how: 'half' });
    job.alarmTest();
    expect(job.state.issues).toMatchObject([{ closed: { how: 'Tested again, and passed.' } }]);
  });

  it('whose cover was wrong hears that, when the clear reading is what it was', () => {
    const job = TableCommissioning.aligned({ ...PLAN, filters: [20, 60] });
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'twenty filter on');
    job.say('panel', '56');
    job.seconds(10).say('panel', 'panel shows alarm');
    expect(job.of('issue-opened')).toEqual([]);
    job.say('emitter', 'clear');
    job.readClear();
    expect(job.of('issue-opened')[0]?.text).toContain('the reading with the cover on was not as expected');
  });
});
