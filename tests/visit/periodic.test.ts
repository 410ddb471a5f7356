import { describe, expect, it } from 'vitest';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { periodicBlocks } from '../../src/report/periodic.ts';
import { commissionOf, searchOf } from '../../src/visit/search.ts';
import { missingForSignoff } from '../../src/visit/signoff.ts';
import { COUNTS } from '../conversation/table.ts';
import { PLAN, TableCommissioning } from './bench.ts';

const AT = Date.UTC(2025, 2, 3);

/** A periodic visit with its first list answered, to a pair that the last visit left at 140 counts. */
class TablePeriodic extends TableCommissioning {
  static to(value: number | null = 140, meter: MeterProfile = COUNTS, plan: PairPlan = PLAN) {
    const job = new TablePeriodic();
    const setup = { site: 'Quayside Hall 3', pair: plan.name, meter, adjusters: NEUTRAL_ADJUSTERS, plan };
    const lastLeft = value === null ? undefined : { job: 'visit-before', at: AT, value };
    job.input({ kind: 'open', setup: { ...setup, scope: 'periodic', ...(lastLeft && { lastLeft }) } });
    job.input({ kind: 'seated', seat: 'panel', device: '', takeover: false });
    job.input({ kind: 'seated', seat: 'emitter', device: '', takeover: false });
    for (const words of ['yes', 'told the control room', 'yes', 'yes', 'yes']) job.say('panel', words);
    return job;
  }

  /** Read as found, at `reading`, and the question about the windows answered. */
  static read(reading: string, cleaned: 'yes' | 'no' = 'no', meter: MeterProfile = COUNTS, last = 140) {
    const job = TablePeriodic.to(last, meter);
    job.say('panel', reading);
    job.say('emitter', cleaned);
    return job;
  }

  /** What is asked until the alignment is offered, answered with `reading`; at most so often. */
  until(kind: string, reading: string): this {
    for (let i = 0; i < 8 && this.action?.kind !== kind; i += 1) {
      if (this.action?.kind === 'hold') this.seconds(6);
      else this.say('panel', reading);
    }
    return this;
  }

  get rule() {
    return this.state.instruction?.advice.rule;
  }
}

const rowsOf = (job: TablePeriodic) => {
  const commission = commissionOf(job.state);
  if (!commission) throw new Error('not opened');
  const [block] = periodicBlocks({ commission, end: job.state } as never, momentsIn('UTC'));
  return block?.kind === 'facts'
    ? Object.fromEntries(block.rows.map(({ name, value }) => [name, value]))
    : {};
};

describe('a periodic visit', () => {
  it('reads before anything is touched, asks whether the windows were cleaned, and reads again', () => {
    const job = TablePeriodic.to();
    expect(job.rule).toBe('as-found');
    job.say('panel', '138');
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'optics-cleaned' });
    job.say('emitter', 'yes');
    // The hands were on the windows: what was settled before does not count.
    expect(job.action).toMatchObject({ kind: 'hold', reason: 'settling' });
    job.seconds(6);
    expect([job.rule, job.action?.kind]).toEqual(['after-cleaning', 'read']);
    job.until('offer-accept', '139');
    expect(job.rule).toBe('keep');
  });

  it('keeps the alignment without a turn, and goes on with the tests', () => {
    const job = TablePeriodic.read('138').until('offer-accept', '138');
    job.say('panel', 'accept');
    expect(job.of('accept')).toMatchObject([{ kept: { kind: 'value', value: 140 } }]);
    expect(job.of('move')).toEqual([]);
    expect(searchOf(job.state)?.accepted).toMatchObject({ backed: true, missing: [] });
    job.say('panel', 'panel normal');
    job.until('cover', '138');
    expect(job.action).toMatchObject({ kind: 'cover' });
  });

  it('is signed only with its tests passed, its last reading taken and the outputs restored', () => {
    const job = TablePeriodic.read('140').until('offer-accept', '140');
    job.say('panel', 'accept');
    const commission = commissionOf(job.state);
    expect(commission && missingForSignoff(commission, job.now).map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['proof', 'item', 'reading']),
    );
    job.alarmTest();
    job.faultTest();
    job.finish();
    expect(job.action?.kind).toBe('offer-sign');
  });

  it('tells in the record what was found, cleaned and kept', () => {
    const job = TablePeriodic.to();
    job.say('panel', '126');
    job.say('emitter', 'yes');
    job.seconds(6).until('offer-accept', '138').say('panel', 'accept');
    // 10 log10(140 / 126) = 0.46 dB, and 10 log10(140 / 138) = 0.06 dB: the law of a linear meter.
    expect(rowsOf(job)).toEqual({
      'Last visit left': '140 counts, 3 March 2025',
      'Found, before anything was touched': expect.stringMatching(
        /^126 counts, #\d+ \(0\.46 dB less light\)$/,
      ),
      Windows: expect.stringMatching(/^windows cleaned, #\d+$/),
      'After cleaning': expect.stringMatching(/^138 counts, #\d+ \(0\.1 dB less light\)$/),
      Alignment: expect.stringMatching(/^kept: nothing was turned, and the signal had not fallen, #\d+$/),
    });
  });
});

describe('the signal beside that of the last visit', () => {
  /** A linear meter with fine steps, so that the limit of 0.5 dB can be met: 150 / 10^0.05 = 133.688. */
  const FINE: MeterProfile = { ...COUNTS, resolution: 0.001, tolerance: 0.01 };
  const limit = 150 / 10 ** 0.05;

  it.each<[string, string, MeterProfile, number, 'keep' | 'signal-fell']>([
    ['the same', '150', FINE, 150, 'keep'],
    ['a hair less than half a decibel lower', (limit + 0.002).toFixed(3), FINE, 150, 'keep'],
    ['a hair more than half a decibel lower', (limit - 0.002).toFixed(3), FINE, 150, 'signal-fell'],
    ['brighter than it was', '160', FINE, 140, 'keep'],
    [
      'lower within the tolerance, on a meter of unknown law',
      '138',
      { ...COUNTS, law: 'unknown' },
      140,
      'keep',
    ],
    [
      'lower than the tolerance, on a meter of unknown law',
      '137',
      { ...COUNTS, law: 'unknown' },
      140,
      'signal-fell',
    ],
    ['gone', 'no signal', COUNTS, 140, 'signal-fell'],
    ['flooded', 'saturated', COUNTS, 140, 'signal-fell'],
  ])('%s', (_, reading, meter, last, rule) => {
    const job = TablePeriodic.read(reading, 'no', meter, last).until(
      rule === 'keep' ? 'offer-accept' : 'check',
      reading,
    );
    expect(job.rule).toBe(rule);
  });

  it('less of it: the cause is looked for and it is read again; then the beam is aligned', () => {
    const job = TablePeriodic.read('100').until('check', '100');
    job.say('panel', 'accept');
    expect(job.of('accept')).toEqual([]);
    expect(job.of('notice').at(-1)?.text).toContain('the signal that the last visit left');
    job.say('emitter', 'done');
    job.seconds(6).until('turn', '100');
    expect(job.action?.kind).toBe('turn');
  });

  it('freed by whoever looked, it is kept', () => {
    const job = TablePeriodic.read('100').until('check', '100');
    job.say('emitter', 'done');
    job.seconds(6).until('offer-accept', '139');
    expect(job.rule).toBe('keep');
  });

  it('once something was turned, it is an alignment like any other', () => {
    const job = TablePeriodic.read('140').until('offer-accept', '140');
    job.say('emitter', 'horizontal a quarter clockwise');
    job.seconds(6).say('panel', '140');
    job.say('panel', 'accept');
    expect(job.of('accept')).toEqual([]);
    expect(job.of('notice').at(-1)?.text).toContain('both sides of the horizontal peak');
  });

  it('with nothing to compare with, the beam is aligned', () => {
    const job = TablePeriodic.to(null);
    const told = job.of('notice').filter(({ code }) => code === 'nothing-to-compare');
    expect(told).toHaveLength(1);
    expect(rowsOf(job)['Last visit left']).toContain('nothing to compare with');
  });

  it('is not kept before the question about the windows is answered', () => {
    const job = TablePeriodic.to();
    job.say('panel', '140');
    job.seconds(12).say('panel', '140');
    job.say('panel', 'accept');
    expect(job.of('accept')).toEqual([]);
    expect(job.of('notice').at(-1)?.text).toContain('whether the windows were cleaned');
  });

  it('covered between, it is read anew with the path clear', () => {
    const job = TablePeriodic.to();
    job.say('panel', '138');
    job.say('emitter', 'blocked');
    job.say('panel', 'no signal');
    job.say('emitter', 'clear');
    job.seconds(6).say('panel', '138');
    if (job.action?.kind === 'confirm-item') job.say('emitter', 'no');
    job.until('offer-accept', '138');
    expect(job.rule).toBe('keep');
  });
});
