import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import {
  isExcused,
  isIsolated,
  isIsolationLifted,
  isProven,
  isSettled,
  isTestSettled,
  progressOf,
  readingAfter,
  testAnswer,
} from '../../src/visit/progress.ts';
import {
  accepted,
  answered,
  atSecond,
  commissionAfter,
  covered,
  followedBy,
  instead,
  LATER,
  panel,
  reads,
  type Step,
  seqOf,
  turned,
  uncovered,
  WHOLE_VISIT,
  without,
} from './record.ts';

const issueAbout = (about: number): Fact => ({ type: 'issue-opened', about, text: 'It failed.' });
const closed = (issue: number): Fact => ({ type: 'issue-closed', issue, how: 'See the drawing.' });
/** An issue about an entry, answered for in writing right away, after everything else. */
const excused = (about: number, steps: readonly Step[]): Step[] => [
  ...steps,
  ['', 500, issueAbout(about)],
  ['', 501, closed(steps.length + 1)],
];

/** The visit up to and with that step. */
const upTo = (name: string): Step[] => WHOLE_VISIT.slice(0, seqOf(name));

const verdictsAfter = (steps: readonly Step[], second = LATER) => {
  const { all, last } = progressOf(commissionAfter(steps), atSecond(second));
  return {
    all: all.map(({ verdict }) => verdict.kind),
    alarm: last.alarm?.verdict.kind,
    fault: last.fault?.verdict.kind,
  };
};

describe('of several goes at a test', () => {
  const failedAlarm: Step[] = [
    ['', 300, covered('partial')],
    ['', 300, reads(valueReading(70))],
    ['', 301, panel('alarm')],
    ['', 302, uncovered],
    ['', 303, panel('normal')],
    ['', 310, reads(valueReading(140))],
  ];
  it.each<[string, Step[], ReturnType<typeof verdictsAfter>]>([
    ['none was made', upTo('the alignment accepted'), { all: [], alarm: undefined, fault: undefined }],
    [
      'one of each was made',
      [...WHOLE_VISIT],
      { all: ['passed', 'passed'], alarm: 'passed', fault: 'passed' },
    ],
    [
      'the last one counts, though an earlier one passed',
      [...WHOLE_VISIT, ...failedAlarm],
      { all: ['passed', 'passed', 'failed'], alarm: 'failed', fault: 'passed' },
    ],
    [
      'the last one counts, though an earlier one failed',
      [
        ...upTo('the alignment accepted'),
        ...failedAlarm,
        ...WHOLE_VISIT.slice(seqOf('the alignment accepted')),
      ],
      { all: ['failed', 'passed', 'passed'], alarm: 'passed', fault: 'passed' },
    ],
    [
      'none counts any more after a turn',
      followedBy([turned]),
      { all: ['passed', 'passed'], alarm: undefined, fault: undefined },
    ],
    [
      'none counts any more under a new acceptance',
      followedBy([turned, accepted]),
      { all: ['passed', 'passed'], alarm: undefined, fault: undefined },
    ],
  ])('%s', (_, steps, verdicts) => {
    expect(verdictsAfter(steps)).toEqual(verdicts);
  });
});

describe('a proving test is settled', () => {
  const about = seqOf('half covered');
  const failed = instead('read behind half the cover', reads(NO_SIGNAL));

  it.each<[string, Step[], number, boolean]>([
    ['when it passed', [...WHOLE_VISIT], LATER, true],
    ['not before it was made', upTo('the alignment accepted'), LATER, false],
    ['not while the panel’s time runs', upTo('half covered'), 101, false],
    ['not before it is uncovered', upTo('the alarm'), 111, false],
    ['not before the panel is back at normal', upTo('half uncovered'), 116, false],
    ['not when it failed', failed, LATER, false],
    ['not when it failed and its issue is open', [...failed, ['', 500, issueAbout(about)]], LATER, false],
    ['when it failed and somebody answered for it in writing', excused(about, failed), LATER, true],
    ['not when somebody answered for something else', excused(about + 1, failed), LATER, false],
    [
      'not by an answer in writing to a test that was broken off',
      excused(about, [...upTo('half covered'), ['', 103, uncovered]]),
      LATER,
      false,
    ],
    ['not by an answer in writing while the test runs', excused(about, upTo('the alarm')), 111, false],
  ])('%s', (_, steps, second, settled) => {
    const commission = commissionAfter(steps);
    expect(isSettled(commission, progressOf(commission, atSecond(second)), 'alarm')).toBe(settled);
  });
});

describe('a failure is answered for', () => {
  it.each<[string, Step[], boolean]>([
    ['by nobody where no issue stands', [['', 0, accepted]], false],
    [
      'by nobody while its issue is open',
      [
        ['', 0, accepted],
        ['', 1, issueAbout(1)],
      ],
      false,
    ],
    [
      'when its issue was closed',
      [
        ['', 0, accepted],
        ['', 1, issueAbout(1)],
        ['', 2, closed(2)],
      ],
      true,
    ],
    [
      'not by the closing of another’s',
      [
        ['', 0, accepted],
        ['', 1, issueAbout(7)],
        ['', 2, closed(2)],
      ],
      false,
    ],
    [
      'when its own issue is closed and another’s is open',
      [
        ['', 0, accepted],
        ['', 1, issueAbout(1)],
        ['', 2, issueAbout(7)],
        ['', 3, closed(2)],
      ],
      true,
    ],
  ])('%s', (_, steps, is) => {
    expect(isExcused(commissionAfter(steps), 1)).toBe(is);
  });
});

describe('a test of yes or no', () => {
  const no = answered('tests', 'wiring', { done: false });
  const wire = seqOf('the wire broken and seen');
  const withNo = instead('the wire broken and seen', no);
  it.each<[string, Step[], { answer: boolean; settled: boolean }]>([
    ['is settled by a yes', [...WHOLE_VISIT], { answer: true, settled: true }],
    ['is not by a no', withNo, { answer: true, settled: false }],
    ['is by a no that somebody answers for', excused(wire, withNo), { answer: true, settled: true }],
    ['is not by an answer for something else', excused(wire + 1, withNo), { answer: true, settled: false }],
    ['is not without an answer', without('the wire broken and seen'), { answer: false, settled: false }],
    [
      'is not by a yes from before the acceptance',
      followedBy([answered('tests', 'wiring')], 'the path looked along', without('the wire broken and seen')),
      { answer: false, settled: false },
    ],
    [
      'is by the first thing said after the acceptance',
      followedBy(
        [answered('tests', 'wiring')],
        'the alignment accepted',
        without('the wire broken and seen'),
      ),
      { answer: true, settled: true },
    ],
    ['is not while no acceptance stands', followedBy([turned]), { answer: false, settled: false }],
    [
      'is by the last answer of several',
      followedBy([no, answered('tests', 'wiring')]),
      { answer: true, settled: true },
    ],
  ])('%s', (_, steps, { answer, settled }) => {
    const commission = commissionAfter(steps);
    expect(testAnswer(commission, 'wiring') !== undefined).toBe(answer);
    expect(isTestSettled(commission, 'wiring')).toBe(settled);
  });
});

describe('the reading after the tests', () => {
  it.each<[string, Step[], number | undefined]>([
    [
      'is the first one since the last cover came off',
      followedBy([reads(NO_SIGNAL)]),
      seqOf('the final reading'),
    ],
    ['is none before it is read', without('the final reading'), undefined],
    ['is none under a cover', followedBy([covered('partial'), reads(NO_SIGNAL)]), undefined],
    ['is none while no acceptance stands', followedBy([turned, reads(NO_SIGNAL)]), undefined],
    [
      'is none while the last cover came off before the acceptance',
      [
        ['', 1, covered('blocked')],
        ['', 2, uncovered],
        ['', 3, accepted],
        ['', 4, reads(NO_SIGNAL)],
      ],
      undefined,
    ],
    [
      'is none where nothing was covered',
      [
        ['', 3, accepted],
        ['', 4, reads(NO_SIGNAL)],
      ],
      undefined,
    ],
  ])('%s', (_, steps, seq) => {
    expect(readingAfter(commissionAfter(steps))?.seq).toBe(seq);
  });
});

describe('a pair is proven', () => {
  const proven = (steps: readonly Step[]) => {
    const commission = commissionAfter(steps);
    return isProven(commission, progressOf(commission, atSecond(LATER)));
  };

  it('by an alarm, a fault, two answers and a reading after them, before the outputs are back', () => {
    expect(proven(upTo('the final reading'))).toBe(true);
  });

  it.each([
    'the alignment accepted',
    'the alarm',
    'the right zone seen',
    'the fault',
    'the wire broken and seen',
    'the final reading',
  ])('not without %s', (left) => {
    expect(proven(without(left))).toBe(false);
  });
});

describe('the alarm outputs', () => {
  const isolated = answered('before', 'outputs-isolated');
  const notIsolated = answered('before', 'outputs-isolated', { done: false });
  const restored = answered('after', 'outputs-restored');
  const notRestored = answered('after', 'outputs-restored', { done: false });
  it.each<[string, Fact[], { isolated: boolean; lifted: boolean }]>([
    ['are not isolated before anybody says so', [], { isolated: false, lifted: false }],
    ['are not isolated by a no', [notIsolated], { isolated: false, lifted: false }],
    ['are isolated by a yes', [isolated], { isolated: true, lifted: false }],
    [
      'stay isolated by a no to their being restored',
      [isolated, notRestored],
      { isolated: true, lifted: false },
    ],
    ['are back when they were restored', [isolated, restored], { isolated: false, lifted: true }],
    [
      'are isolated again after they were back',
      [isolated, restored, isolated],
      { isolated: true, lifted: false },
    ],
    ['cannot be restored by a word from before', [restored, isolated], { isolated: true, lifted: false }],
    ['cannot be restored where nobody isolated them', [restored], { isolated: false, lifted: false }],
    [
      'are not isolated by a no after they were back',
      [isolated, restored, notIsolated],
      { isolated: false, lifted: false },
    ],
  ])('%s', (_, facts, are) => {
    const commission = commissionAfter(facts.map((fact): Step => ['', 0, fact]));
    expect(isIsolated(commission)).toBe(are.isolated);
    expect(isIsolationLifted(commission)).toBe(are.lifted);
  });
});
