import type { ChainFault } from '../log/fault.ts';
import type { Finding, FindingId } from '../model/finding.ts';
import type { PairStatus } from '../model/pair-status.ts';
import { type Commission, isCommissioning } from '../visit/commission.ts';
import { isIsolated, isProven, notPassed, progressOf, readingAfter } from '../visit/progress.ts';
import { commissionOf } from '../visit/search.ts';
import { isLeft, type JobState } from '../visit/state.ts';

/** Serious findings that a status itself says: the work is not finished. */
const SAYS: Partial<Record<PairStatus, readonly FindingId[]>> = {
  isolated: ['outputs-isolated', 'unproven'],
  aligned: ['unproven'],
  'signed-not-proven': ['unproven'],
};

/**
 * Calm must be earned. Needs attention: a serious finding (`findings`: of the same log), an issue is open, the
 * alignment was accepted although evidence was missing, the crew stopped, more than words came after the signature,
 * the outputs are isolated and nobody works on it or all is proven, or the log fails its check: then nothing in it is
 * certain. Signed with a test that failed, was answered for or was never made: signed, not proven. `now`: ms, the log's clock; `fault`: of the log's chain.
 */
export function statusOf(
  state: JobState | undefined,
  now: number,
  fault?: ChainFault,
  findings: readonly Pick<Finding, 'id' | 'severity'>[] = [],
): PairStatus {
  if (fault) return 'needs-attention';
  const commission = state && commissionOf(state);
  if (!commission) return 'not-started';
  const open = state.issues.some(({ closed }) => !closed);
  if (open || state.stopped || state.accepted?.override) return 'needs-attention';
  const change = findings.find(({ id }) => id === 'changed-since-signed');
  if (state.changedBy !== undefined && change?.severity !== 'note') return 'needs-attention';
  const status = stageOf(state, now);
  const isTrouble = findings.some(
    ({ id, severity }) => severity === 'serious' && !SAYS[status]?.includes(id),
  );
  if (isTrouble) return 'needs-attention';
  if (!isIsolated(commission)) return status;
  const isWorkedOn = status === 'isolated' && !isLeft(state);
  return isWorkedOn ? 'isolated' : 'needs-attention';
}

/** How far the work has come. */
function stageOf(state: JobState, now: number): PairStatus {
  const commission = commissionOf(state);
  if (!commission) return 'not-started';
  if (state.signed) return isPassed(commission, now) ? 'signed' : 'signed-not-proven';
  const { accepted } = commission.search;
  if (accepted && isCommissioning(commission) && isProven(commission, progressOf(commission, now)))
    return 'proven';
  if (isIsolated(commission)) return 'isolated';
  return accepted ? 'aligned' : 'aligning';
}

/** As it stands on the site: under a plan that has changed since, nothing is proven. */
export const statusOnSite = (status: PairStatus, planChanged: boolean): PairStatus =>
  planChanged && status !== 'not-started' ? 'needs-attention' : status;

/** Every test was made and passed, and the beam came back: a failure that somebody answers for is none of these. */
const isPassed = (commission: Commission, now: number): boolean =>
  isCommissioning(commission) &&
  commission.search.accepted !== undefined &&
  notPassed(commission, progressOf(commission, now)).length === 0 &&
  readingAfter(commission) !== undefined;
