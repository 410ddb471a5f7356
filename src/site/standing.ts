import { isCommissioning } from '../commission/commission.ts';
import { isIsolated, isProven, progressOf } from '../commission/progress.ts';
import { commissionOf, type JobState } from '../job/state.ts';
import type { ChainFault } from '../log/chain.ts';

/** Where a pair stands on the site's board, by its latest visit. */
export const PAIR_STANDINGS = [
  'not-started',
  'aligning',
  'aligned',
  'proven',
  'signed',
  'needs-attention',
] as const;
export type PairStanding = (typeof PAIR_STANDINGS)[number];

/**
 * Needs attention: an issue is open, the alignment was accepted against its evidence (signed or not), the crew
 * stopped, the record has changed since it was signed, all is proven and the outputs are still isolated, or the
 * log fails its check: then nothing it says is settled. `now`: ms, the log's clock; `fault`: of the log's chain.
 */
export function standingOf(state: JobState | undefined, now: number, fault?: ChainFault): PairStanding {
  if (fault) return 'needs-attention';
  const commission = state && commissionOf(state);
  if (!commission) return 'not-started';
  const open = state.issues.some(({ closed }) => !closed);
  if (open || state.stopped || state.changedBy !== undefined) return 'needs-attention';
  if (state.accepted?.override) return 'needs-attention';
  if (state.signed) return 'signed';
  if (!commission.search.accepted) return 'aligning';
  const proven = isCommissioning(commission) && isProven(commission, progressOf(commission, now));
  if (!proven) return 'aligned';
  return isIsolated(commission) ? 'needs-attention' : 'proven';
}
