import { CHECKLISTS, type ChecklistItem } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { JobSetup } from '../model/setup.ts';
import { type Attempt, attemptsOf, PROOFS, type Proof } from './attempts.ts';
import { answerTo, type Commission, isAnswered } from './commission.ts';
import { coverFor, judge, type Verdict } from './verdict.ts';

export interface Judged {
  readonly attempt: Attempt;
  readonly verdict: Verdict;
}

/** How far the present alignment is proven. */
export interface Progress {
  /** Every attempt at a test, also of an earlier alignment. */
  readonly all: readonly Judged[];
  /** The last attempt at each test of the present alignment. */
  readonly last: Readonly<Partial<Record<Proof, Judged>>>;
}

export function progressOf(commission: Commission, now: number): Progress {
  const all = attemptsOf(commission).map((attempt) => ({
    attempt,
    verdict: judge(attempt, commission.setup, now),
  }));
  const accept = commission.search.accepted?.seq;
  const current = all.filter(({ attempt }) => attempt.accept === accept);
  const last = Object.fromEntries(
    PROOFS.flatMap((proof) => {
      const judged = current.findLast(({ attempt }) => attempt.proof === proof);
      return judged ? [[proof, judged] as const] : [];
    }),
  );
  return { all, last };
}

/** Somebody closed the issue of a failure in writing: it can be signed as it is. */
export const isExcused = ({ issues }: Commission, about: Seq): boolean =>
  issues.some((issue) => issue.about === about && issue.closed !== undefined);

/** The alarm and the fault are always proven; staying quiet where the crew owns a filter weak enough. */
export const isRequired = (proof: Proof, setup: JobSetup): boolean =>
  proof !== 'quiet' || coverFor('quiet', setup) !== undefined;

/** A test that passed, or whose failure somebody answers for. */
export function isSettled(commission: Commission, { last }: Pick<Progress, 'last'>, proof: Proof): boolean {
  const judged = last[proof];
  if (!judged) return false;
  const { verdict, attempt } = judged;
  return (
    verdict.kind === 'passed' || (verdict.kind === 'failed' && isExcused(commission, attempt.covered.seq))
  );
}

/** The answer to a yes-or-no test of the present alignment. */
export function testAnswer(commission: Commission, item: ChecklistItem): Placed<'item'> | undefined {
  const since = commission.search.accepted?.seq;
  const answer = answerTo(commission, 'tests', item);
  return answer && since !== undefined && answer.seq > since ? answer : undefined;
}

export function isTestSettled(commission: Commission, item: ChecklistItem): boolean {
  const answer = testAnswer(commission, item);
  return answer !== undefined && (answer.done || isExcused(commission, answer.seq));
}

/**
 * The first reading with a clear path after the last test, of the wires too: is the beam back as accepted?
 */
export function readingAfter({ counted, search }: Commission): Placed<'reading'> | undefined {
  const since = search.accepted?.seq;
  const cleared = counted.findLast((fact) => fact.type === 'path');
  if (since === undefined || cleared?.type !== 'path' || cleared.state !== 'clear') return undefined;
  if (cleared.seq < since) return undefined;
  const tested = counted.findLast((fact) => fact.type === 'item' && fact.list === 'tests')?.seq ?? 0;
  const last = Math.max(cleared.seq, tested);
  return counted.find((fact): fact is Placed<'reading'> => fact.type === 'reading' && fact.seq > last);
}

/** The tests that did not pass for the present alignment: not made, or failed, answered for in writing or not. */
export function notPassed(
  commission: Commission,
  { last }: Pick<Progress, 'last'>,
): (Proof | ChecklistItem)[] {
  return [
    ...PROOFS.filter(
      (proof) =>
        (isRequired(proof, commission.setup) || last[proof]) && last[proof]?.verdict.kind !== 'passed',
    ),
    ...CHECKLISTS.tests.filter((item) => testAnswer(commission, item)?.done !== true),
  ];
}

export function isProven(commission: Commission, progress: Progress): boolean {
  return (
    PROOFS.every((proof) => !isRequired(proof, commission.setup) || isSettled(commission, progress, proof)) &&
    CHECKLISTS.tests.every((item) => isTestSettled(commission, item)) &&
    readingAfter(commission) !== undefined
  );
}

/** Items of the list before the work that are not answered. */
export const beforeMissing = (commission: Commission): ChecklistItem[] =>
  CHECKLISTS.before.filter((item) => !isAnswered(answerTo(commission, 'before', item)));

/** The alarm outputs are isolated, and nobody reported them restored. */
export function isIsolated(commission: Commission): boolean {
  const isolated = answerTo(commission, 'before', 'outputs-isolated');
  return isolated?.done === true && !isIsolationLifted(commission);
}

/** The outputs were restored after isolation: before more work they must be isolated again. */
export function isIsolationLifted(commission: Commission): boolean {
  const isolated = answerTo(commission, 'before', 'outputs-isolated');
  const restored = answerTo(commission, 'after', 'outputs-restored');
  return restored?.done === true && isolated !== undefined && restored.seq > isolated.seq;
}

/** The items to ask after the work: an answer from before the last test or turn no longer counts. */
export function afterMissing(commission: Commission): ChecklistItem[] {
  const work = commission.counted.findLast(({ type }) => type === 'path' || type === 'accept')?.seq ?? 0;
  return CHECKLISTS.after.filter((item) => {
    const answer = answerTo(commission, 'after', item);
    return !isAnswered(answer) || answer.seq < work;
  });
}
