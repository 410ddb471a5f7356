import type { ChainFault } from '../log/fault.ts';
import type { PairStatus } from '../model/pair-status.ts';
import { type Commission, isCommissioning } from '../visit/commission.ts';
import { isIsolated, isProven, notPassed, progressOf, readingAfter } from '../visit/progress.ts';
import { commissionOf, type JobState } from '../visit/state.ts';

/**
 * Needs attention: an issue is open, the alignment was accepted although evidence was missing (signed or
 * not), the crew stopped, the record has changed since it was signed, all is proven and the outputs are still
 * isolated, or the log fails its check: then nothing in it is certain. Signed with a test that failed, was answered for
 * or was never made: signed, not proven. `now`: ms, the log's clock; `fault`:
 * of the log's chain.
 */
export function statusOf(state: JobState | undefined, now: number, fault?: ChainFault): PairStatus {
  if (fault) return 'needs-attention';
  const commission = state && commissionOf(state);
  if (!commission) return 'not-started';
  const open = state.issues.some(({ closed }) => !closed);
  if (open || state.stopped || state.changedBy !== undefined) return 'needs-attention';
  if (state.accepted?.override) return 'needs-attention';
  if (state.signed) return isPassed(commission, now) ? 'signed' : 'signed-not-proven';
  if (!commission.search.accepted) return 'aligning';
  const proven = isCommissioning(commission) && isProven(commission, progressOf(commission, now));
  if (!proven) return 'aligned';
  return isIsolated(commission) ? 'needs-attention' : 'proven';
}

/** Every test was made and passed, and the beam came back: a failure that somebody answers for is none of these. */
const isPassed = (commission: Commission, now: number): boolean =>
  isCommissioning(commission) &&
  commission.search.accepted !== undefined &&
  notPassed(commission, progressOf(commission, now)).length === 0 &&
  readingAfter(commission) !== undefined;
