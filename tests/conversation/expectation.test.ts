import { describe, expect, it } from 'vitest';
import { expectation } from '../../src/conversation/expectation.ts';
import type { History } from '../../src/engine/history.ts';
import { confusableWith } from '../../src/grammar/confusable.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NEUTRAL_METERS } from '../../src/model/profile.ts';
import { valueReading } from '../../src/model/reading.ts';
import { searchOf } from '../../src/visit/search.ts';
import { EMPTY } from '../../src/visit/state.ts';
import { COUNTS, TableJob } from './table.ts';

const SCALE = { low: COUNTS.min, high: COUNTS.max };

describe('readings that would not surprise', () => {
  it('are unknown before the job is opened', () => {
    expect(expectation(EMPTY)).toBeUndefined();
  });

  it.each(NEUTRAL_METERS)('are the whole scale of $name before any is known', (meter) => {
    const { low, high } = expectation(TableJob.crewed(meter).state) ?? {};
    expect([low, high]).toEqual([meter.min, meter.max]);
  });

  it('lie around what the meter shows here, while nothing is touched', () => {
    const job = TableJob.crewed();
    job.say('panel', '24');
    const { low, high } = expectation(job.state) as typeof SCALE;
    expect(low).toBeGreaterThan(3);
    expect(low).toBeLessThan(24 / 4);
    expect(high).toBeGreaterThan(24 * 4);
    expect(high).toBeLessThan(240);
  });

  it.each([13, 14, 15, 16, 17, 18, 19])('hold both %d and what sounds like it', (teen) => {
    const ten = confusableWith(teen) as number;
    for (const value of [teen, ten]) {
      const job = TableJob.crewed();
      job.say('panel', String(value));
      const { low, high } = expectation(job.state) as typeof SCALE;
      expect([low < teen, ten < high]).toEqual([true, true]);
    }
  });

  it.each(['no signal', 'saturated'])('are the whole scale after "%s"', (words) => {
    const job = TableJob.crewed();
    job.say('panel', words);
    expect(expectation(job.state)).toMatchObject(SCALE);
  });

  it('are the whole scale behind a blocked path and after a gain change', () => {
    for (const words of ['beam blocked', 'gain up']) {
      const job = TableJob.crewed();
      job.say('panel', '24');
      job.say('emitter', words);
      expect(expectation(job.state)).toMatchObject(SCALE);
    }
  });

  it('lie around what the beam predicts after a turn, once its shape is known', () => {
    const job = TableJob.crewed();
    // Linear counts of a Gaussian beam with its peak, 150, half a turn away.
    const at = (eighths: number) => Math.round(150 * 10 ** (-0.006 * (eighths - 4) ** 2));
    for (let eighths = 0; eighths <= 8; eighths += 2) {
      if (eighths > 0) job.say('emitter', 'horizontal a quarter turn clockwise');
      for (let i = 0; i < 2; i++) {
        job.wait(COUNTS.settleMs);
        job.say('panel', String(at(eighths)));
      }
    }
    job.say('emitter', 'horizontal a quarter turn counterclockwise');
    const { low, high } = expectation(job.state) as typeof SCALE;
    expect(low).toBeGreaterThan(10);
    expect([low < at(6), at(6) < high]).toEqual([true, true]);
  });

  it('are the whole scale after a turn once the model was given up: a beam is no longer fitted', () => {
    const { state, now } = TableJob.crewed();
    let history: History | undefined = state.history;
    const happens = (fact: SearchFact) => {
      const seq = (history?.event.seq ?? 0) + 1;
      history = { event: { seq, at: now + seq * COUNTS.settleMs, fact }, before: history };
    };
    const readsAround = (places: number) => {
      for (let i = 0; i < places; i++) {
        // Linear counts of a Gaussian beam.
        const value = Math.round(150 * 10 ** (-0.006 * ((i % 8) - 4) ** 2));
        for (let times = 0; times < 2; times++) happens({ type: 'reading', reading: valueReading(value) });
        happens({ type: 'move', axis: 'horizontal', eighths: i % 8 === 7 ? -7 : 1 });
      }
    };
    readsAround(30);
    happens({ type: 're-aimed' });
    readsAround(7);
    const after = { ...state, ...(history && { history }) };
    expect(searchOf(after)?.floor).toBeDefined();
    expect(expectation(after)).toMatchObject(SCALE);
  });

  it.each(NEUTRAL_METERS)('are what $name shows in its steps', (meter) => {
    const job = TableJob.crewed(meter);
    const { min: from, resolution: by } = meter;
    expect(expectation(job.state)?.steps).toEqual({ from, by });
    job.say('panel', String(meter.bandLow));
    expect(expectation(job.state)?.steps).toEqual({ from, by });
  });
});

describe('what was asked for', () => {
  const safe = ['stop', 'wait', 'repeat', 'undo'];

  it('is a reading where the instruction is to read', () => {
    const job = TableJob.crewed();
    expect(job.action?.kind).toBe('read');
    expect(expectation(job.state)?.asked).toEqual(['reading', 'trend', ...safe]);
  });

  it('is the turn, or the reading that comes with it, where a turn is asked', () => {
    const job = TableJob.crewed();
    job.say('panel', '24');
    job.wait(COUNTS.settleMs);
    job.say('emitter', 'done');
    for (let i = 0; i < 2; i++) {
      job.say('panel', '24');
      job.wait(COUNTS.settleMs);
    }
    expect(job.action?.kind).toBe('turn');
    expect(expectation(job.state)?.asked).toEqual(expect.arrayContaining(['done', 'moved', 'reading']));
  });

  it('is yes, no or the value where the question is which value', () => {
    const job = TableJob.crewed();
    job.hears('panel', 'fifteen', 0.6, [['fifty', 0.3]]);
    expect(expectation(job.state)?.asked).toEqual(['reading', 'correct', 'yes', 'no', ...safe]);
  });
});
