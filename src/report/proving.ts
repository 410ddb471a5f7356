import { CHECKLISTS, type ChecklistItem } from '../model/checklists.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { itemText } from '../phrases/items.ts';
import { TEST_NAMES } from '../phrases/proving.ts';
import {
  ANSWERED_FOR,
  DELAY_NOT_KNOWN,
  itemResult,
  NO_TESTS,
  NOT_MADE,
  resultText,
  TEST_COLUMNS,
  TEST_ITEMS,
  testText,
  VOID,
} from '../phrases/proving-table.ts';
import { lossText, shownFor } from '../phrases/units.ts';
import { PROOFS } from '../visit/attempts.ts';
import type { Commission } from '../visit/commission.ts';
import { coverOf } from '../visit/cover.ts';
import { isExcused, isRequired, type Judged, type Progress, testAnswer } from '../visit/progress.ts';
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
  const made = progress.all.map((judged) => attemptRow(commission, progress, judged));
  const left = PROOFS.filter((proof) => isRequired(proof, commission.setup) && !progress.last[proof]).map(
    (proof) => notMade(TEST_NAMES[proof]),
  );
  const items = CHECKLISTS.tests.map((item) => itemRow(commission, item));
  return {
    kind: 'table',
    title: HEADINGS.tests,
    columns: COLUMNS,
    empty: NO_TESTS,
    rows: [...made, ...left, ...items],
  };
}

const notMade = (name: string): string[] => [name, NOT_MADE, '', '', '', '', ''];

function attemptRow(commission: Commission, { last }: Progress, judged: Judged): string[] {
  const { attempt, verdict } = judged;
  const { proof, covered, shown, cleared, restored } = attempt;
  const { elapsed, delay, tolerance, restored: normal, loss, expectedLoss } = verdict.figures;
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
    `${resultText(verdict)}${excused}${void_}`,
    elapsed === undefined ? '' : seconds(elapsed),
    delay === undefined ? DELAY_NOT_KNOWN : `${seconds(delay)} ± ${seconds(tolerance ?? 0)}`,
    normal === undefined ? '' : seconds(normal),
    loss === undefined
      ? ''
      : `${lossText(loss, units, { places: 1 })}${expectedLoss === undefined ? '' : ` of ${lossText(expectedLoss, units, { places: 1 })}`}`,
    covered.seq === end.seq ? `#${covered.seq}` : `#${covered.seq} to #${end.seq}`,
  ];
}

const seconds = (value: number): string => `${value.toFixed(1)} s`;

function itemRow(commission: Commission, item: ChecklistItem): string[] {
  const name = TEST_ITEMS[item] ?? item;
  const answer = testAnswer(commission, item);
  if (!answer) return notMade(name);
  const text = itemText(answer);
  const excused = !answer.done && isExcused(commission, answer.seq) ? ANSWERED_FOR : '';
  return [name, `${itemResult(answer.done, text)}${excused}`, '', '', '', '', `#${answer.seq}`];
}
