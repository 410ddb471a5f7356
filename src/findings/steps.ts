import type { AnsweredStep } from '../visit/steps.ts';
import { stepsOf } from '../visit/steps.ts';
import type { Visit } from '../visit/visit.ts';
import { found, type Look } from './look.ts';

/** A step of cause and effect failed, and nobody tried it again since with a better result. */
export const stepFailed: Look = (visit) => {
  const failed = stepsIn(visit).filter(({ answer }) => answer?.result === 'failed');
  if (failed.length === 0) return [];
  return [found('step-failed', { severity: 'serious', entries: seqsOf(failed), about: causesOf(failed) })];
};

/** A step was left out, or not answered. Nobody asks before the pair is accepted. */
export const stepNotDone: Look = (visit) => {
  const { accepted } = visit;
  const open = stepsIn(visit).filter(({ answer }) => answer === undefined || answer.result === 'not-done');
  if (!accepted || open.length === 0) return [];
  const entries = [...new Set([accepted.seq, ...seqsOf(open)])].sort((a, b) => a - b);
  return [found('step-not-done', { severity: 'question', entries, about: causesOf(open) })];
};

const stepsIn = ({ commission, end }: Visit): AnsweredStep[] => stepsOf(commission.setup, end.handOver);
const causesOf = (steps: readonly AnsweredStep[]): string[] => steps.map(({ cause }) => cause);
const seqsOf = (steps: readonly AnsweredStep[]): number[] =>
  steps.flatMap(({ answer }) => answer?.seq ?? []).sort((a, b) => a - b);
