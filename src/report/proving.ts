import { CHECKLISTS, type ChecklistItem } from '../model/checklists.ts';
import { itemText } from '../phrases/items.ts';
import { WHY_FAILED } from '../phrases/proving.ts';
import { PROOFS, type Proof } from '../visit/attempts.ts';
import type { Commission } from '../visit/commission.ts';
import { isExcused, type Judged, type Progress, testAnswer } from '../visit/progress.ts';
import { coverFor, type Verdict } from '../visit/verdict.ts';
import { first } from './brief.ts';
import type { Block, Column } from './report.ts';

const TEST: Record<Proof, string> = { alarm: 'Alarm test', fault: 'Fault test' };
const COVER = { half: 'half covered', filter: 'filter on', full: 'all covered' } as const;
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
  const left = PROOFS.filter((proof) => !progress.last[proof]).map((proof) => notMade(TEST[proof]));
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
  const cover = COVER[coverFor(proof, commission.setup)];
  const end = restored ?? cleared ?? shown ?? covered;
  const void_ = attempt.accept !== commission.search.accepted?.seq ? ' (void: turned since)' : '';
  // A test that was made again rests on its last go, and not on what was said of an earlier one.
  const isLast = last[proof] === judged;
  const excused =
    verdict.kind === 'failed' && isLast && isExcused(commission, covered.seq) ? '; answered for' : '';
  return [
    `${TEST[proof]}, ${cover}`,
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
