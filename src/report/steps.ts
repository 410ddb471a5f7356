import type { JobSetup } from '../model/setup.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { NO_STEPS, NOT_ANSWERED, STEP_COLUMNS, STEP_RESULTS } from '../phrases/steps.ts';
import type { HandOver } from '../visit/hand-over.ts';
import { stepsOf } from '../visit/steps.ts';
import type { TableBlock } from './report.ts';

/** Every step of cause and effect with its answer. */
export function stepsBlock(setup: JobSetup, handOver: HandOver): TableBlock {
  const rows = stepsOf(setup, handOver).map(({ cause, effect, answer }) => [
    cause,
    effect,
    answer
      ? `${STEP_RESULTS[answer.result]}${answer.note ? `, ${answer.note}` : ''} #${answer.seq}`
      : NOT_ANSWERED,
  ]);
  return {
    kind: 'table',
    title: HEADINGS.steps,
    columns: [
      { name: STEP_COLUMNS.cause, share: 4 },
      { name: STEP_COLUMNS.effect, share: 4 },
      { name: STEP_COLUMNS.result, share: 3 },
    ],
    empty: NO_STEPS,
    rows,
  };
}
