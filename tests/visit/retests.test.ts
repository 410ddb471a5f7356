import { describe, expect, it } from 'vitest';
import { valueReading } from '../../src/model/reading.ts';
import { progressOf } from '../../src/visit/progress.ts';
import { retestsOf } from '../../src/visit/retests.ts';
import {
  answered,
  atSecond,
  commissionAfter,
  covered,
  followedBy,
  LATER,
  panel,
  reads,
  type Step,
  seqOf,
  turned,
  uncovered,
  WHOLE_VISIT,
} from './record.ts';

/** The steps with more of them put in at their seconds. */
const withMore = (...more: Step[]): Step[] => [...WHOLE_VISIT, ...more].sort((a, b) => a[1] - b[1]);

/** An alarm that came 20 s after the cover, where 10 s are set; before the one that passes. */
const LATE_ALARM: Step[] = [
  ['read clear before the late one', 61, reads(valueReading(140))],
  ['covered for the late one', 65, covered('partial')],
  ['read behind the late one', 70, reads(valueReading(70))],
  ['the late alarm', 85, panel('alarm')],
  ['uncovered after the late one', 87, uncovered],
  ['normal after the late one', 88, panel('normal')],
];
const WRONG_ZONE: Step = ['the wrong zone seen', 111, answered('tests', 'panel-indication', { done: false })];

const told = (steps: readonly Step[], second = LATER) => {
  const commission = commissionAfter(steps.filter(([, at]) => at <= second));
  return retestsOf(commission, progressOf(commission, atSecond(second)));
};

describe('a test that failed', () => {
  it('passed later when its last attempt did', () => {
    const steps = withMore(...LATE_ALARM);
    expect(told(steps)).toEqual([
      {
        test: 'alarm',
        failed: seqOf('covered for the late one', steps),
        at: atSecond(65),
        passed: seqOf('half covered', steps),
      },
    ]);
  });

  it('did not pass later before the last attempt is over', () => {
    const steps = withMore(...LATE_ALARM);
    for (const second of [94, 100, 110, 115, 119]) expect(told(steps, second), String(second)).toEqual([]);
    expect(told(steps, 125)).toHaveLength(1);
  });

  it('did not pass later in a way that counts when the pair was turned since', () => {
    expect(told(followedBy([turned], 'the panel at normal', withMore(...LATE_ALARM)))).toEqual([]);
  });

  it('did not pass later when its last attempt failed, too', () => {
    const again: Step[] = LATE_ALARM.map(([name, at, fact]) => [name, at + 140, fact]);
    expect(told(withMore(...again))).toEqual([]);
  });

  it('may be an answer: no, and later yes', () => {
    const steps = withMore(WRONG_ZONE);
    expect(told(steps)).toEqual([
      {
        test: 'panel-indication',
        failed: seqOf('the wrong zone seen', steps),
        at: atSecond(111),
        passed: seqOf('the right zone seen', steps),
      },
    ]);
    const only = steps.filter(([name]) => name !== 'the right zone seen');
    expect(told(only)).toEqual([]);
  });

  it('is no answer to something else', () => {
    const other: Step = [
      'the access not inspected',
      11,
      answered('before', 'access-inspected', { done: false }),
    ];
    expect(told(withMore(other))).toEqual([]);
  });

  it('stands with the others in the order in which they failed', () => {
    const noLine: Step = ['the line not broken yet', 62, answered('tests', 'wiring', { done: false })];
    const steps = withMore(WRONG_ZONE, noLine, ...LATE_ALARM);
    expect(told(steps).map(({ test }) => test)).toEqual(['wiring', 'alarm', 'panel-indication']);
  });

  it('is none where all passed at once', () => {
    expect(told(WHOLE_VISIT)).toEqual([]);
  });
});
