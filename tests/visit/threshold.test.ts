import { describe, expect, it } from 'vitest';
import type { UsedCover } from '../../src/model/checklists.ts';
import type { Fact } from '../../src/model/facts.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { type Reading, valueReading } from '../../src/model/reading.ts';
import type { Commission } from '../../src/visit/commission.ts';
import { progressOf } from '../../src/visit/progress.ts';
import { commissionOf } from '../../src/visit/search.ts';
import { missingForSignoff } from '../../src/visit/signoff.ts';
import { coverFor } from '../../src/visit/verdict.ts';
import { DECIBELS } from '../conversation/table.ts';
import { PLAN, TableCommissioning } from './bench.ts';
import { accepted, atSecond, commissionAfter, panel, reads, SETUP, type Step, uncovered } from './record.ts';

const alarmAt = (value: number, unit: 'dB' | 'percent' = 'dB', filters: number[] = []): PairPlan => ({
  ...PLAN,
  alarmThreshold: { unit, value },
  ...(filters.length > 0 && { filters }),
});
const filter = (grade: number): UsedCover => ({ how: 'filter', filter: grade });
const HALF: UsedCover = { how: 'half' };

/** What a cover comes to: with an alarm after 10 s or without one, as proof and verdict. */
function comesTo(
  plan: PairPlan,
  cover: UsedCover | undefined,
  shows: 'alarm' | 'fault' | undefined,
  read?: Reading,
): string {
  const on: Fact = { type: 'path', state: 'partial', ...(cover && { cover }) };
  const steps: Step[] = [
    ['accepted', 60, accepted],
    ['read clear', 95, reads(valueReading(140))],
    ['covered', 100, on],
    ...(read ? [['read', 103, reads(read)] as Step] : []),
    ...(shows ? [['shown', 110, panel(shows)] as Step] : []),
    ['uncovered', 130, uncovered],
    ['normal', 135, panel('normal')],
    ['read clear again', 140, reads(valueReading(140))],
  ];
  // Where nobody read behind the cover, it is a meter that would not tell.
  const meter = read ? SETUP.meter : { ...SETUP.meter, law: 'unknown' as const };
  const { all } = progressOf(commissionAfter(steps, { ...SETUP, meter, plan }), atSecond(9_999));
  const [{ attempt, verdict } = expect.fail('no attempt')] = all;
  return `${attempt.proof}: ${verdict.kind === 'failed' ? verdict.why : verdict.kind}`;
}

describe('the three that were judged wrongly', () => {
  it('a threshold of 60 % that alarms behind half a cover is not proven by it', () => {
    expect(comesTo(alarmAt(60, 'percent'), HALF, 'alarm')).toBe('alarm: not-decisive');
    expect(comesTo(alarmAt(60, 'percent'), HALF, 'alarm', valueReading(70))).toBe('quiet: too-sensitive');
  });

  it('a threshold of 35 % that alarms behind a 20 % filter is too sensitive', () => {
    expect(comesTo(alarmAt(35, 'percent', [20]), filter(20), 'alarm')).toBe('quiet: too-sensitive');
  });

  it('a right detector at 60 % that stays quiet behind half a cover has not failed', () => {
    expect(comesTo(alarmAt(60, 'percent'), HALF, undefined)).toBe('alarm: not-decisive');
    expect(comesTo(alarmAt(60, 'percent'), HALF, undefined, valueReading(70))).toBe('quiet: passed');
  });
});

/** A 50 % filter holds back 3.01 dB, give or take 0.5; half a cover the same, give or take 1.5 where nobody read it. */
const LOSS = 10 * Math.log10(2);
describe('a hundredth of a decibel on either side of the limits', () => {
  it.each<[what: string, threshold: number, cover: UsedCover, alarm: string, quiet: string]>([
    ['a filter clearly above', LOSS - 0.51, filter(50), 'alarm: passed', 'alarm: nothing-shown'],
    ['a filter not clearly above', LOSS - 0.49, filter(50), 'alarm: not-decisive', 'alarm: not-decisive'],
    ['a filter at the threshold', LOSS, filter(50), 'alarm: not-decisive', 'alarm: not-decisive'],
    ['a filter not clearly below', LOSS + 0.49, filter(50), 'alarm: not-decisive', 'alarm: not-decisive'],
    ['a filter clearly below', LOSS + 0.51, filter(50), 'quiet: too-sensitive', 'quiet: passed'],
    ['half a cover clearly above', LOSS - 1.51, HALF, 'alarm: passed', 'alarm: nothing-shown'],
    ['half a cover not clearly above', LOSS - 1.49, HALF, 'alarm: not-decisive', 'alarm: not-decisive'],
    ['half a cover not clearly below', LOSS + 1.49, HALF, 'alarm: not-decisive', 'alarm: not-decisive'],
    ['half a cover clearly below', LOSS + 1.51, HALF, 'quiet: too-sensitive', 'quiet: passed'],
  ])('%s', (_, threshold, cover, alarm, quiet) => {
    expect(comesTo(alarmAt(threshold), cover, 'alarm')).toBe(alarm);
    expect(comesTo(alarmAt(threshold), cover, undefined)).toBe(quiet);
  });

  it.each<[what: string, threshold: number, alarm: string, quiet: string]>([
    ['clearly above', LOSS - 0.51, 'alarm: passed', 'alarm: nothing-shown'],
    ['not clearly above', LOSS - 0.49, 'alarm: not-decisive', 'alarm: not-decisive'],
    ['not clearly below', LOSS + 0.49, 'alarm: not-decisive', 'alarm: not-decisive'],
    ['clearly below', LOSS + 0.51, 'quiet: too-sensitive', 'quiet: passed'],
  ])('half a cover that was read behind: %s', (_, threshold, alarm, quiet) => {
    expect(comesTo(alarmAt(threshold), HALF, 'alarm', valueReading(70))).toBe(alarm);
    expect(comesTo(alarmAt(threshold), HALF, undefined, valueReading(70))).toBe(quiet);
  });
});

describe('whatever the threshold', () => {
  it('a reading that does not fit the cover says that, and nothing of the detector', () => {
    for (const value of [1, 3, 6]) {
      for (const shows of ['alarm', undefined] as const) {
        expect(comesTo(alarmAt(value), filter(50), shows, valueReading(130))).toMatch(/: reading-off$/);
      }
    }
  });

  it('a fault behind a part of a cover is wrong', () => {
    for (const value of [1, 3, 6]) {
      expect(comesTo(alarmAt(value), filter(50), 'fault')).toMatch(/: wrong-indication$/);
    }
  });

  it('one of several filters that nobody named says nothing', () => {
    for (const shows of ['alarm', undefined] as const) {
      expect(comesTo(alarmAt(1.87, 'dB', [20, 60]), undefined, shows)).toBe('alarm: not-decisive');
      expect(comesTo(alarmAt(1.87, 'dB', [20, 60]), { how: 'filter' }, shows)).toBe('alarm: not-decisive');
    }
  });
});

describe('the covers that are chosen', () => {
  it.each<[threshold: number, filters: number[], quiet: UsedCover | undefined, alarm: UsedCover | undefined]>(
    [
      [1.87, [20, 40, 60], filter(20), filter(60)],
      [1.87, [80, 60, 10, 20], filter(20), filter(60)],
      [1.87, [], undefined, HALF],
      [1.87, [20], filter(20), HALF],
      [LOSS - 0.51, [], undefined, HALF],
      [LOSS - 0.49, [], undefined, undefined],
      [3.98, [50], filter(50), undefined],
      [3.98, [50, 60, 70], filter(50), filter(70)],
    ],
  )('at %d dB from the filters %j: quiet %j, alarm %j', (threshold, filters, quiet, alarm) => {
    const setup = { ...SETUP, plan: alarmAt(threshold, 'dB', filters) };
    expect(coverFor('quiet', setup)).toEqual(quiet);
    expect(coverFor('alarm', setup)).toEqual(alarm);
  });

  it('half a cover that no meter can measure has to be above by its whole tolerance', () => {
    const meter = { ...DECIBELS, law: 'unknown' as const };
    expect(coverFor('alarm', { ...SETUP, meter, plan: alarmAt(LOSS - 1.51) })).toEqual(HALF);
    expect(coverFor('alarm', { ...SETUP, meter, plan: alarmAt(LOSS - 1.49) })).toBeUndefined();
  });
});

describe('the crew', () => {
  const missing = (job: TableCommissioning) =>
    missingForSignoff(commissionOf(job.state) as Commission, job.now).map((each) =>
      each.kind === 'proof' ? each.proof : each.kind,
    );

  it('is led to the filter that must stay quiet, then to the one that must alarm', () => {
    const job = TableCommissioning.aligned(alarmAt(35, 'percent', [20, 40, 60]));
    job.say('panel', 'panel normal');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'filter', filter: 20 });
    job.say('emitter', 'done');
    expect(job.of('path').at(-1)).toMatchObject({ cover: { how: 'filter', filter: 20 } });
    job.say('panel', '112');
    expect(job.action).toMatchObject({ kind: 'watch-panel', expect: 'normal' });
    job.seconds(16);
    expect(job.action).toEqual({ kind: 'uncover' });
    job.say('emitter', 'clear');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'filter', filter: 60 });
    expect(missing(job)).not.toContain('quiet');
    job.say('emitter', 'filter on');
    expect(job.of('path').at(-1)).toMatchObject({ cover: { how: 'filter', filter: 60 } });
    job.say('panel', '56');
    job.seconds(10).say('panel', 'panel shows alarm');
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'panel-indication' });
  });

  it('an alarm behind the weak filter opens an issue and blocks signing', () => {
    const job = TableCommissioning.aligned(alarmAt(35, 'percent', [20, 60]));
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'filter on');
    job.seconds(10).say('panel', 'panel shows alarm');
    expect(job.of('issue-opened')[0]?.text).toContain('clearly below the alarm threshold');
    expect(missing(job)).toEqual(expect.arrayContaining(['quiet', 'issue']));
  });

  it('that owns no cover strong enough is told what to bring, and cannot sign', () => {
    const job = TableCommissioning.aligned(alarmAt(60, 'percent'));
    job.say('panel', 'panel normal');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'full' });
    job.faultTest();
    expect(job.action).toMatchObject({ kind: 'check', causes: ['stronger-filter'] });
    // 3.979 dB and 0.5 dB over it are 64.35 %.
    expect(job.state.instruction?.say).toContain('bring a filter of at least 65 percent');
    job.say('panel', 'done');
    expect(job.action).toMatchObject({ kind: 'check' });
    expect(missing(job)).toContain('alarm');
  });

  it('that half covers without reading the meter is asked for the reading while the cover is on', () => {
    const job = TableCommissioning.aligned();
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    job.seconds(10).say('panel', 'panel shows alarm');
    expect(job.action).toEqual({ kind: 'read' });
    job.say('panel', '70');
    expect(job.action).toMatchObject({ kind: 'confirm-item', item: 'panel-indication' });
  });

  it('that says "half covered" when a filter was asked for is taken at its word', () => {
    const job = TableCommissioning.aligned(alarmAt(35, 'percent', [20, 60]));
    job.say('panel', 'panel normal');
    job.readClear().say('emitter', 'half covered');
    expect(job.of('path').at(-1)).toMatchObject({ cover: { how: 'half' } });
  });

  describe('that names the filter', () => {
    const asked = () => {
      const job = TableCommissioning.aligned(alarmAt(35, 'percent', [20, 60]));
      job.say('panel', 'panel normal');
      job.readClear();
      return job;
    };

    it.each([
      ['twenty filter on', filter(20)],
      ['the 60 percent filter is on', filter(60)],
      ['filter on', filter(20)],
    ])('"%s" is taken at its word', (words, cover) => {
      const job = asked();
      job.say('emitter', words);
      expect(job.of('path').at(-1)).toMatchObject({ cover });
    });

    it('is asked about a grade that the plan does not have, and nothing is taken', () => {
      const job = asked();
      job.say('emitter', 'thirty five percent filter in');
      expect(job.of('path')).toEqual([]);
      expect(job.state.query?.text).toBe(
        'A 35 percent filter? The plan has 20, 60 percent. Which is on? Say it whole: 20 percent filter on.',
      );
      job.say('emitter', 'sixty filter on');
      expect(job.of('path')).toMatchObject([{ cover: filter(60) }]);
    });

    it('is asked about any grade where the plan has no filter', () => {
      const job = TableCommissioning.aligned(alarmAt(35, 'percent'));
      job.say('panel', 'panel normal');
      job.readClear().say('emitter', 'sixty filter on');
      expect(job.of('path')).toEqual([]);
      expect(job.state.query?.text).toContain('The plan has no test filter');
    });
  });

  it('is asked for a weaker filter before one is used that looks like a lost beam, and told why', () => {
    const job = TableCommissioning.aligned(alarmAt(60, 'percent', [95.5]));
    job.say('panel', 'panel normal');
    job.readClear();
    expect(job.action).toEqual({ kind: 'check', causes: ['weaker-filter'] });
    expect(job.state.instruction?.say).toContain('take it for a lost beam');
    job.say('panel', 'done');
    job.readClear();
    expect(job.action).toEqual({ kind: 'cover', how: 'filter', filter: 95.5 });
    expect(job.state.instruction?.say).toContain('only an alarm counts');
  });

  it('that owns only a filter behind which the meter is dark is told to bring another', () => {
    const job = TableCommissioning.aligned(alarmAt(60, 'percent', [99]));
    job.say('panel', 'panel normal');
    job.readClear().faultTest();
    expect(job.action).toMatchObject({ kind: 'check', causes: ['stronger-filter'] });
    expect(job.state.instruction?.say).toContain('at least 65 percent, but not over 95');
  });
});
