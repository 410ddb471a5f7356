import { describe, expect, test } from 'vitest';
import { series, topOf } from '../../src/log/series.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../../src/model/reading.ts';
import { accepted, Script } from './fixture.ts';

const of = (play: (s: Script) => void) => {
  const s = new Script();
  play(s);
  return series(s.entries);
};

describe('positions', () => {
  test('a reading is at the position to which the turns before it led', () => {
    const { samples, position } = of((s) => {
      s.reads('90', valueReading(90));
      s.turns('horizontal', 2, '', []);
      s.turns('vertical', -4, '', []);
      s.reads('95', valueReading(95));
    });
    expect(samples.map(({ position }) => position)).toEqual([
      { horizontal: 0, vertical: 0 },
      { horizontal: 2, vertical: -4 },
    ]);
    expect(position).toEqual({ horizontal: 2, vertical: -4 });
    expect(samples[1]?.cameBy).toEqual({ horizontal: 1, vertical: -1 });
  });

  test('a turn that was taken back was never made, also for the readings after it', () => {
    const { samples, position } = of((s) => {
      s.reads('90', valueReading(90));
      const wrong = s.turns('horizontal', 2, '', []);
      s.reads('80', valueReading(80));
      s.add('emitter', { type: 'retract', target: wrong, why: 'undo' });
    });
    expect(position.horizontal).toBe(0);
    expect(samples[1]?.position.horizontal).toBe(0);
  });

  test('a reading that was taken back stays, with a mark', () => {
    const { samples } = of((s) => {
      const wrong = s.reads('50', valueReading(50));
      const retract = s.add('panel', { type: 'retract', target: wrong, why: 'correction' });
      expect(retract).toBeGreaterThan(wrong);
    });
    expect(samples).toHaveLength(1);
    expect(samples[0]).toMatchObject({ reading: valueReading(50), retractedBy: 3 });
  });

  test('taking back a take-back brings the entry back', () => {
    const { position } = of((s) => {
      const turn = s.turns('horizontal', 2, '', []);
      const undo = s.add('emitter', { type: 'retract', target: turn, why: 'undo' });
      s.add('emitter', { type: 'retract', target: undo, why: 'undo' });
    });
    expect(position.horizontal).toBe(2);
  });

  test('a reading with the beam covered says nothing about the adjusters', () => {
    const { samples, sweeps } = of((s) => {
      s.turns('horizontal', 2, '', []);
      s.reads('', valueReading(90));
      s.add('emitter', { type: 'path', state: 'blocked' });
      s.reads('', NO_SIGNAL);
      s.add('emitter', { type: 'path', state: 'clear' });
      s.reads('', valueReading(91));
    });
    expect(samples).toHaveLength(3);
    expect(sweeps[0]?.samples.map(({ reading }) => reading)).toEqual([valueReading(90), valueReading(91)]);
  });

  test('aiming by eye starts both adjusters from zero again', () => {
    const { samples, position, aim, sweeps } = of((s) => {
      s.turns('horizontal', 4, '', []);
      s.turns('horizontal', -4, '', []);
      s.reads('6', valueReading(6));
      s.turns('vertical', 4, '', []);
      s.add('emitter', { type: 're-aimed' });
      s.reads('60', valueReading(60));
      s.turns('horizontal', 2, '', []);
      s.reads('70', valueReading(70));
    });
    expect(position).toEqual({ horizontal: 2, vertical: 0 });
    expect(aim).toBe(1);
    expect(samples.map((each) => each.aim)).toEqual([0, 1, 1]);
    expect(sweeps.at(-1)?.samples.map(({ reading }) => reading)).toEqual([
      valueReading(60),
      valueReading(70),
    ]);
  });
});

describe('gain settings', () => {
  test('each change starts a new one, for the readings after it', () => {
    const { gains, samples, marks } = of((s) => {
      s.reads('saturated', SATURATED);
      s.setsGain('lowered', 'gain down');
      s.reads('140', valueReading(140));
    });
    expect(gains).toEqual([{ change: 'as-found' }, { change: 'lowered' }]);
    expect(samples.map(({ gain }) => gain)).toEqual([0, 1]);
    expect(marks).toMatchObject([{ what: 'gain', gain: 1 }]);
  });

  test('a change that was taken back started none', () => {
    const { gains } = of((s) => {
      const gain = s.setsGain('lowered', 'gain down');
      s.add('emitter', { type: 'retract', target: gain, why: 'undo' });
    });
    expect(gains).toHaveLength(1);
  });
});

describe('sweeps', () => {
  const played = of((s) => {
    s.reads('90', valueReading(90));
    for (const value of [100, 104, 98]) {
      s.turns('horizontal', 2, '', []);
      s.reads('', valueReading(value));
    }
    s.turns('horizontal', -2, '', []);
    s.reads('', valueReading(104));
    s.turns('vertical', 2, '', []);
    s.reads('', valueReading(120));
  });

  test('start with the reading at their first position and hold the other adjuster still', () => {
    expect(played.sweeps.map(({ axis, otherAt, samples }) => [axis, otherAt, samples.length])).toEqual([
      ['horizontal', 0, 5],
      ['vertical', 4, 2],
    ]);
  });

  test('of equal highest readings the last counts, with the number of other positions on each side', () => {
    const top = topOf(played, 'horizontal');
    expect(top).toMatchObject({ value: 104, below: 2, above: 1 });
    expect(top?.sample.cameBy.horizontal).toBe(-1);
  });

  test('a reading without a number, or taken back, is never the highest', () => {
    const all = of((s) => {
      s.reads('', valueReading(90));
      s.turns('horizontal', 2, '', []);
      const wrong = s.reads('', valueReading(190));
      s.add('panel', { type: 'retract', target: wrong, why: 'correction' });
      s.reads('', valueReading(119));
      s.turns('horizontal', 2, '', []);
      s.reads('', SATURATED);
      s.turns('horizontal', 2, '', []);
      s.reads('', NO_SIGNAL);
    });
    expect(topOf(all, 'horizontal')?.value).toBe(119);
  });

  test('numbers at different gains are not compared; the latest gain setting with enough positions counts', () => {
    const all = of((s) => {
      s.reads('', valueReading(200));
      for (const value of [220, 240]) {
        s.turns('horizontal', 2, '', []);
        s.reads('', valueReading(value));
      }
      s.setsGain('lowered', 'gain down');
      s.reads('', valueReading(140));
    });
    expect(topOf(all, 'horizontal')).toMatchObject({ value: 240, sample: { gain: 0 } });
  });

  test('an adjuster that was not turned has no sweep', () => {
    expect(
      topOf(
        of((s) => s.reads('', valueReading(90))),
        'vertical',
      ),
    ).toBeUndefined();
  });
});

test('in a whole alignment both adjusters end at their highest reading, approached from both sides', () => {
  const all = series(accepted().entries);
  expect(all.position).toEqual({ horizontal: -6, vertical: 8 });
  for (const axis of ['horizontal', 'vertical'] as const) {
    const top = topOf(all, axis);
    expect(top?.sample.position[axis]).toBe(axis === 'horizontal' ? -6 : 8);
    expect(top?.below).toBeGreaterThan(0);
    expect(top?.above).toBeGreaterThan(0);
  }
  expect(all.marks.map(({ what }) => what)).toEqual([
    're-aimed',
    'gain',
    'gain',
    'blocked',
    'clear',
    'hold',
    'accept',
  ]);
});
