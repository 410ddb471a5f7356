import type { ChecklistItem, UsedCover } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import type { Proof } from '../visit/attempts.ts';
import type { Moment, Verdict } from '../visit/verdict.ts';
import { TEST_NAMES, WHY_FAILED } from './proving.ts';

/** The words of the report's table of tests. */
export const TEST_COLUMNS = {
  test: 'Test',
  result: 'Result',
  shown: 'Covered to shown',
  delay: 'Set delay',
  normal: 'Normal after',
  lost: 'Light lost',
  entries: 'Entries',
} as const;

function coverName(cover: UsedCover | undefined): string {
  switch (cover?.how) {
    case undefined:
      return 'cover not known';
    case 'half':
      return 'half covered';
    case 'filter':
      return cover.filter === undefined ? 'filter on' : `${cover.filter} % filter on`;
    case 'full':
      return 'all covered';
  }
}

export const testText = (proof: Proof, cover: UsedCover | undefined): string =>
  `${TEST_NAMES[proof]}, ${coverName(cover)}`;
export const TEST_ITEMS: Partial<Record<ChecklistItem, string>> = {
  'panel-indication': 'Panel indication',
  wiring: 'Wiring to the fire panel',
};

export const NO_TESTS = 'None made.';
export const NOT_MADE = 'NOT MADE';
export const VOID = ' (void: turned since)';
export const ANSWERED_FOR = '; answered for';
export const passedLater = (seq: Seq): string => `; passed later, #${seq}`;
export const DELAY_NOT_KNOWN = 'not known';

/** When nobody read the meter. */
export const MOMENTS: Record<Moment, string> = {
  before: 'just before the cover',
  behind: 'behind the cover',
  after: 'after the cover',
};

export function resultText(verdict: Verdict): string {
  switch (verdict.kind) {
    case 'passed':
      return 'Passed';
    case 'failed':
      return `FAILED: ${WHY_FAILED[verdict.why]}`;
    case 'broken-off':
      return 'Not completed';
    case 'unread':
      return `Says nothing: no reading ${MOMENTS[verdict.lacks]}`;
    case 'not-decisive':
      return 'Says nothing: too near the threshold';
    default:
      return 'Not finished';
  }
}

export const itemResult = (done: boolean, text: string): string => `${done ? 'Passed' : 'FAILED'}: ${text}`;

const isProof = (test: Proof | ChecklistItem): test is Proof => test in TEST_NAMES;
const nameOf = (test: Proof | ChecklistItem): string =>
  isProof(test) ? TEST_NAMES[test] : (TEST_ITEMS[test] ?? test);

/** At its moment in the chart. */
export const failedFirst = (test: Proof | ChecklistItem): string =>
  `${nameOf(test).toLowerCase()} failed; passed later`;

/** What all tests of a pair came to. */
export const TESTS_CAME_TO = {
  failed: 'FAILED',
  missing: 'not all made',
  'answered-for': 'FAILED, answered for',
  passed: 'Passed',
} as const;
/** The same, with the tests that failed before they passed. */
export const withFailedFirst = (text: string, tests: readonly (Proof | ChecklistItem)[]): string =>
  tests.length === 0
    ? text
    : `${text}; failed first, passed later: ${[...new Set(tests.map(nameOf))].join(', ').toLowerCase()}`;
