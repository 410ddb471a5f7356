import { CHECKLISTS, type ChecklistItem, type UsedCover } from '../model/checklists.ts';
import { itemText } from '../phrases/items.ts';
import { TEST_NAMES, WHY_FAILED } from '../phrases/proving.ts';
import { PROOFS } from '../visit/attempts.ts';
import type { Commission } from '../visit/commission.ts';
import { coverOf } from '../visit/cover.ts';
import { isExcused, isRequired, type Judged, type Progress, testAnswer } from '../visit/progress.ts';
import type { Verdict } from '../visit/verdict.ts';
import { first } from './brief.ts';
import type { Block, Column } from './report.ts';

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
const ITEM: Partial<Record<ChecklistItem, string>> = {
  'panel-indication': 'Panel indication',
  wiring: 'Wiring to the fire panel',
};

const COLUMNS: readonly Column[] = [
  { name: 'Test', share: 5 },
  { name: 'Result', share: 7 },
  { name: 'Covered to shown', share: 3 },
  { name: 'Set delay', share: 3 },
  { name: 'Normal after', share: 3 },
  { name: 'Light lost', share: 4 },
  { name: 'Entries', share: 3 },
];

/** More goes at tests than a page has room for. */
const SHOWN = 8;

/** Every go at a proving test with its times, and the tests of yes or no. */
export function provingBlock(commission: Commission, progress: Progress): Block {
  const goes = progress.all.map((judged) => attemptRow(commission, progress, judged));
  const left = PROOFS.filter((proof) => isRequired(proof, commission.setup) && !progress.last[proof]).map(
    (proof) => notMade(TEST_NAMES[proof]),
  );
  const items = CHECKLISTS.tests.map((item) => itemRow(commission, item));
  const kept = first(goes.toReversed(), SHOWN, (rest) =>
    notMade(`${rest.length} earlier goes`, 'in the log'),
  );
  return {
    kind: 'table',
    title: 'Tests',
    columns: COLUMNS,
    empty: 'None made.',
    rows: [...kept.toReversed(), ...left, ...items],
  };
}

const notMade = (name: string, result = 'NOT MADE'): string[] => [name, result, '', '', '', '', ''];

function attemptRow(commission: Commission, { last }: Progress, judged: Judged): string[] {
  const { attempt, verdict } = judged;
  const { proof, covered, shown, cleared, restored } = attempt;
  const { elapsed, delay, tolerance, restored: normal, loss, expectedLoss } = verdict.figures;
  const cover = coverName(coverOf(attempt, commission.setup));
  const end = restored ?? cleared ?? shown ?? covered;
  const void_ = attempt.accept !== commission.search.accepted?.seq ? ' (void: turned since)' : '';
  // A test that was made again rests on its last go, and not on what was said of an earlier one.
  const isLast = last[proof] === judged;
  const excused =
    verdict.kind === 'failed' && isLast && isExcused(commission, covered.seq) ? '; answered for' : '';
  return [
    `${TEST_NAMES[proof]}, ${cover}`,
    `${resultText(verdict)}${excused}${void_}`,
    elapsed === undefined ? '' : seconds(elapsed),
    delay === undefined ? 'not known' : `${seconds(delay)} ± ${seconds(tolerance ?? 0)}`,
    normal === undefined ? '' : seconds(normal),
    loss === undefined
      ? ''
      : `${loss.toFixed(1)} dB${expectedLoss === undefined ? '' : ` of ${expectedLoss.toFixed(1)}`}`,
    covered.seq === end.seq ? `#${covered.seq}` : `#${covered.seq} to #${end.seq}`,
  ];
}

const seconds = (value: number): string => `${value.toFixed(1)} s`;

function resultText(verdict: Verdict): string {
  switch (verdict.kind) {
    case 'passed':
      return 'Passed';
    case 'failed':
      return `FAILED: ${WHY_FAILED[verdict.why]}`;
    case 'broken-off':
      return 'Broken off';
    case 'not-decisive':
      return 'Says nothing: too near the threshold';
    default:
      return 'Not finished';
  }
}

function itemRow(commission: Commission, item: ChecklistItem): string[] {
  const name = ITEM[item] ?? item;
  const answer = testAnswer(commission, item);
  if (!answer) return notMade(name);
  const text = itemText(answer);
  const excused = !answer.done && isExcused(commission, answer.seq) ? '; answered for' : '';
  return [name, `${answer.done ? 'Passed' : 'FAILED'}: ${text}${excused}`, '', '', '', '', `#${answer.seq}`];
}
