import { describe, expect, it } from 'vitest';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import type { Commission } from '../../src/visit/commission.ts';
import { missingForSignoff, type Unsigned } from '../../src/visit/signoff.ts';
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
  SETUP,
  type Step,
  turned,
  uncovered,
  WHOLE_VISIT,
  without,
} from './record.ts';

/** In words: "accept", "proof alarm", "before path-clear", "issue 7". */
const inWords = (unsigned: Unsigned): string => {
  switch (unsigned.kind) {
    case 'item':
      return `${unsigned.list} ${unsigned.item}`;
    case 'proof':
      return `proof ${unsigned.proof}`;
    case 'issue':
      return `issue ${unsigned.issue}`;
    default:
      return unsigned.kind;
  }
};
const missing = (commission: Commission, second = LATER): string[] =>
  missingForSignoff(commission, atSecond(second)).map(inWords);
const missingAfter = (steps: readonly Step[]): string[] => missing(commissionAfter(steps));

const AFTER = ['after outputs-restored', 'after covers-on', 'after panel-normal'];
const TESTED_ANEW = ['proof alarm', 'proof fault', 'tests panel-indication', 'tests wiring', 'reading'];

it('a whole visit lacks nothing', () => {
  expect(missingAfter(WHOLE_VISIT)).toEqual([]);
});

it('a visit that has only begun lacks everything, in the order of the work', () => {
  expect(missingAfter([])).toEqual([
    'before outputs-isolated',
    'before people-told',
    'before access-inspected',
    'before laser-caution',
    'before path-clear',
    'accept',
    ...TESTED_ANEW,
    ...AFTER,
  ]);
});

describe('a visit cannot be signed without', () => {
  it.each<[left: string, lacks: string[]]>([
    ['the outputs isolated', ['before outputs-isolated']],
    ['people told', ['before people-told']],
    ['the access inspected', ['before access-inspected']],
    ['the laser caution', ['before laser-caution']],
    ['the path looked along', ['before path-clear']],
    ['the alignment accepted', ['accept', ...TESTED_ANEW]],
    ['half covered', ['proof alarm']],
    ['the alarm', ['proof alarm']],
    ['the right zone seen', ['tests panel-indication']],
    ['normal after the alarm', ['proof alarm']],
    ['all covered', ['proof fault']],
    ['the fault', ['proof fault']],
    ['normal after the fault', ['proof fault']],
    ['the wire broken and seen', ['tests wiring']],
    ['the final reading', ['reading']],
    ['the outputs restored', ['after outputs-restored']],
    ['the covers on', ['after covers-on']],
    ['the panel at normal', ['after panel-normal']],
  ])('%s', (left, lacks) => {
    expect(missingAfter(without(left))).toEqual(lacks);
  });

  it.each<[string, Step[], string[]]>([
    [
      'a yes to what was answered with no',
      instead('the laser caution', answered('before', 'laser-caution', { done: false })),
      ['before laser-caution'],
    ],
    [
      'the name of who was told',
      instead('people told', answered('before', 'people-told')),
      ['before people-told'],
    ],
    [
      'a yes where a name alone was given',
      instead('people told', answered('before', 'people-told', { done: false, note: 'Asha' })),
      ['before people-told'],
    ],
    [
      'an answer that stands: the last one counts',
      followedBy([answered('after', 'covers-on', { done: false })]),
      ['after covers-on'],
    ],
    [
      'the wire seen to fault',
      instead('the wire broken and seen', answered('tests', 'wiring', { done: false })),
      ['tests wiring'],
    ],
    [
      'the light coming back: the reading behind half a cover was dark',
      instead('read behind half the cover', reads(NO_SIGNAL)),
      ['proof alarm'],
    ],
  ])('%s', (_, steps, lacks) => {
    expect(missingAfter(steps)).toEqual(lacks);
  });
});

it('an answer of no, asked again and answered with yes, is a yes', () => {
  const steps = followedBy([
    answered('before', 'path-clear', { done: false }),
    answered('before', 'path-clear'),
  ]);
  expect(missingAfter(steps)).toEqual([]);
});

it('an alignment alone lacks its acceptance and what is open, and nothing of a commissioning', () => {
  const { scope: _, ...alone } = SETUP;
  expect(missing(commissionAfter([], alone))).toEqual(['accept']);
  expect(missing(commissionAfter([['', 0, accepted]], alone))).toEqual([]);
  const open: Step[] = [['', 1, { type: 'issue-opened', about: 1, text: 'Bracket loose.' }]];
  expect(missing(commissionAfter(open, alone))).toEqual(['accept', 'issue 1']);
  expect(missing(commissionAfter([], { ...alone, scope: 'alignment' }))).toEqual(['accept']);
});

describe('an issue', () => {
  const opened = { type: 'issue-opened', about: 13, text: 'Bracket loose.' } as const;
  const issue = WHOLE_VISIT.length + 1;

  it('stands in the way while it is open, and before what is asked at the end', () => {
    expect(missingAfter(followedBy([opened]))).toEqual([`issue ${issue}`]);
    expect(missingAfter([...without('the covers on'), ['', 300, opened]])).toEqual([
      `issue ${issue - 1}`,
      'after covers-on',
    ]);
  });

  it('does not once it is closed, and the other still does', () => {
    const closed = { type: 'issue-closed', issue, how: 'Tightened.' } as const;
    expect(missingAfter(followedBy([opened, closed]))).toEqual([]);
    expect(missingAfter(followedBy([opened, { ...opened, about: 5 }, closed]))).toEqual([
      `issue ${issue + 1}`,
    ]);
  });
});

describe('the final reading', () => {
  it.each<[string, Step[], string[]]>([
    ['counts when it is the first thing after the last cover came off', WHOLE_VISIT as Step[], []],
    [
      'does not count when it was read before the last cover came off',
      followedBy([reads(NO_SIGNAL)], 'the fault', without('the final reading')),
      ['reading'],
    ],
    [
      'is asked for again when something covers the receiver once more',
      followedBy([covered('partial')], 'the final reading'),
      ['proof alarm', 'reading'],
    ],
    [
      'is asked for again after one more cover, though this one came off',
      followedBy([covered('blocked'), panel('fault'), uncovered, panel('normal')], 'the final reading'),
      ['proof fault', 'reading'],
    ],
    [
      'is none that was read with the path cleared before the alignment was accepted',
      [
        ['', 30, covered('blocked')],
        ['', 40, uncovered],
        ['', 60, accepted],
        ['', 70, reads(valueReading(140))],
      ],
      [
        'before outputs-isolated',
        'before people-told',
        'before access-inspected',
        'before laser-caution',
        'before path-clear',
        'proof alarm',
        'proof fault',
        'tests panel-indication',
        'tests wiring',
        'reading',
        ...AFTER,
      ],
    ],
    [
      'is none where nothing was ever covered',
      followedBy(
        [reads(valueReading(140))],
        'the alignment accepted',
        without('half covered', 'half uncovered', 'all covered', 'all uncovered', 'the final reading'),
      ),
      ['proof alarm', 'proof fault', 'reading'],
    ],
  ])('%s', (_, steps, lacks) => {
    expect(missingAfter(steps)).toEqual(lacks);
  });
});

describe('what was answered after the work', () => {
  it.each<[string, Step[], string[]]>([
    ['counts', WHOLE_VISIT as Step[], []],
    [
      'is asked again after a cover',
      followedBy([covered('blocked'), panel('fault'), uncovered]),
      ['proof fault', 'reading', ...AFTER],
    ],
    [
      'is asked again after an acceptance, which asks for all the tests too',
      followedBy([accepted]),
      [...TESTED_ANEW, ...AFTER],
    ],
    ['is not asked again after a reading', followedBy([reads(valueReading(139))]), []],
    [
      'does not count when it was said before the last cover came off',
      followedBy([answered('after', 'covers-on')], 'the fault', without('the covers on')),
      ['after covers-on'],
    ],
    [
      'counts as soon as the last cover came off',
      followedBy([answered('after', 'covers-on')], 'all uncovered', without('the covers on')),
      [],
    ],
  ])('%s', (_, steps, lacks) => {
    expect(missingAfter(steps)).toEqual(lacks);
  });

  it('counts where nothing was covered and nothing accepted at all', () => {
    const steps: Step[] = [
      ['', 10, answered('after', 'outputs-restored')],
      ['', 11, answered('after', 'covers-on')],
      ['', 12, answered('after', 'panel-normal')],
    ];
    expect(missingAfter(steps)).toEqual(expect.not.arrayContaining(AFTER));
  });
});

it('a turn after everything voids the acceptance and every test made under it', () => {
  expect(missingAfter(followedBy([turned]))).toEqual(['accept', ...TESTED_ANEW]);
});

describe('a test that still runs is not passed', () => {
  it.each<[string, string, number, string[]]>([
    ['covered, with the panel’s time not over', 'half covered', 114, ['proof alarm']],
    ['shown, and not yet uncovered', 'the alarm', 112, ['proof alarm']],
    ['uncovered, and the panel not yet back', 'half uncovered', 118, ['proof alarm']],
    ['back at normal, and the clear path not yet read', 'normal after the alarm', 120, ['proof alarm']],
    ['back at normal and read', 'read clear between the covers', 125, []],
  ])('%s', (_, upTo, second, lacks) => {
    const end = WHOLE_VISIT.findIndex(([name]) => name === upTo) + 1;
    const commission = commissionAfter(WHOLE_VISIT.slice(0, end));
    expect(missing(commission, second).filter((what) => what === 'proof alarm')).toEqual(lacks);
  });
});
