import { CHECKLISTS, type ChecklistItem } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import { elapsedText, restoredText, setDelayText } from '../phrases/delays.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { itemText } from '../phrases/items.ts';
import { TEST_NAMES } from '../phrases/proving.ts';
import {
  ANSWERED_FOR,
  DELAY_NOT_KNOWN,
  itemResult,
  NO_TESTS,
  NOT_MADE,
  passedLater,
  resultText,
  TEST_COLUMNS,
  TEST_ITEMS,
  TESTS_CAME_TO,
  testText,
  VOID,
  withFailedFirst,
} from '../phrases/proving-table.ts';
import { lossText, type Shown, shownFor } from '../phrases/units.ts';
import { PROOFS } from '../visit/attempts.ts';
import type { Commission } from '../visit/commission.ts';
import { coverOf } from '../visit/cover.ts';
import {
  isExcused,
  isRequired,
  isSettled,
  isTestSettled,
  type Judged,
  type Progress,
  testAnswer,
} from '../visit/progress.ts';
import { type Retest, retestsOf } from '../visit/retests.ts';
import type { Column, TableBlock } from './report.ts';

const COLUMNS: readonly Column[] = [
  { name: TEST_COLUMNS.test, share: 5 },
  { name: TEST_COLUMNS.result, share: 7 },
  { name: TEST_COLUMNS.shown, share: 3 },
  { name: TEST_COLUMNS.delay, share: 3 },
  { name: TEST_COLUMNS.normal, share: 3 },
  { name: TEST_COLUMNS.lost, share: 4 },
  { name: TEST_COLUMNS.entries, share: 3 },
];

/** Every attempt at a proving test with its times, and the tests answered by yes or no. */
export function provingBlock(commission: Commission, progress: Progress): TableBlock {
  const retests = retestsOf(commission, progress);
  const later = (failed: Seq): string => {
    const retest = retests.find((each) => each.failed === failed);
    return retest ? passedLater(retest.passed) : '';
  };
  const made = progress.all.map((judged) => attemptRow(commission, progress, judged, later));
  const left = PROOFS.filter((proof) => isRequired(proof, commission.setup) && !progress.last[proof]).map(
    (proof) => notMade(TEST_NAMES[proof]),
  );
  const items = CHECKLISTS.tests.flatMap((item) => itemRows(commission, item, later));
  return {
    kind: 'table',
    title: HEADINGS.tests,
    columns: COLUMNS,
    empty: NO_TESTS,
    rows: [...made, ...left, ...items],
  };
}

const notMade = (name: string): string[] => [name, NOT_MADE, '', '', '', '', ''];

/** That a test which failed at this entry passed later, or ''. */
type Later = (failed: Seq) => string;

function attemptRow(commission: Commission, { last }: Progress, judged: Judged, later: Later): string[] {
  const { attempt, verdict } = judged;
  const { proof, covered, shown, cleared, restored } = attempt;
  const { elapsed, delay, tolerance, restored: normal, loss } = verdict.figures;
  const cover = coverOf(attempt, commission.setup);
  const units = shownFor(commission.setup);
  const end = restored ?? cleared ?? shown ?? covered;
  const void_ = attempt.accept !== commission.search.accepted?.seq ? VOID : '';
  // Only the last attempt at a test counts, so an answer for an earlier one is not shown.
  const isLast = last[proof] === judged;
  const excused =
    verdict.kind === 'failed' && isLast && isExcused(commission, covered.seq) ? ANSWERED_FOR : '';
  return [
    testText(proof, cover),
    `${resultText(verdict)}${excused}${verdict.kind === 'failed' ? later(covered.seq) : ''}${void_}`,
    elapsed === undefined ? '' : elapsedText(elapsed, verdict.figures),
    delay === undefined ? DELAY_NOT_KNOWN : `${setDelayText(delay)} ± ${setDelayText(tolerance ?? 0)}`,
    normal === undefined ? '' : restoredText(normal),
    loss === undefined ? '' : lostText(loss, verdict.figures, units),
    covered.seq === end.seq ? `#${covered.seq}` : `#${covered.seq} to #${end.seq}`,
  ];
}

/** What was lost behind a cover, of what it should hold back; neither is rounded across the threshold beside it. */
function lostText(
  loss: number,
  { expectedLoss, threshold }: Judged['verdict']['figures'],
  units: Shown,
): string {
  const options = { places: 1, beside: threshold === undefined ? [] : [threshold] };
  const expected = expectedLoss === undefined ? '' : ` of ${lossText(expectedLoss, units, options)}`;
  return `${lossText(loss, units, options)}${expected}`;
}

/** The answer that counts, after those that it made good. */
function itemRows(commission: Commission, item: ChecklistItem, later: Later): string[][] {
  const name = TEST_ITEMS[item] ?? item;
  const answer = testAnswer(commission, item);
  if (!answer) return [notMade(name)];
  const row = (given: typeof answer, more: string): string[] => [
    name,
    `${itemResult(given.done, itemText(given))}${more}`,
    '',
    '',
    '',
    '',
    `#${given.seq}`,
  ];
  const before = commission.counted.filter(
    (fact): fact is typeof answer => fact.type === 'item' && fact.item === item && later(fact.seq) !== '',
  );
  const excused = !answer.done && isExcused(commission, answer.seq) ? ANSWERED_FOR : '';
  return [...before.map((given) => row(given, later(given.seq))), row(answer, excused)];
}

/** What all tests of a pair came to: never better than the worst of them. */
export interface TestsOutcome {
  readonly came: keyof typeof TESTS_CAME_TO;
  /** Tests that failed first and passed later. */
  readonly retested: readonly Retest['test'][];
}

export function testsOutcome(commission: Commission, progress: Progress): TestsOutcome {
  const { last } = progress;
  const proofs = PROOFS.filter((proof) => isRequired(proof, commission.setup) || last[proof]);
  const failed =
    proofs.some((proof) => last[proof]?.verdict.kind === 'failed') ||
    CHECKLISTS.tests.some((item) => testAnswer(commission, item)?.done === false);
  const settled =
    proofs.every((proof) => isSettled(commission, progress, proof)) &&
    CHECKLISTS.tests.every((item) => isTestSettled(commission, item));
  return {
    came: settled ? (failed ? 'answered-for' : 'passed') : failed ? 'failed' : 'missing',
    retested: retestsOf(commission, progress).map(({ test }) => test),
  };
}

export const testsText = ({ came, retested }: TestsOutcome): string =>
  withFailedFirst(TESTS_CAME_TO[came], retested);
