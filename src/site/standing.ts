import { isCommissioning } from '../commission/commission.ts';
import { isProven, progressOf } from '../commission/progress.ts';
import { commissionOf, type JobState } from '../job/state.ts';

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
 * Needs attention: an issue is open, the alignment was accepted against its evidence, the crew stopped, or
 * the record has changed since it was signed. `now`: ms, the log's clock.
 */
export function standingOf(state: JobState | undefined, now: number): PairStanding {
  const commission = state && commissionOf(state);
  if (!commission) return 'not-started';
  const open = state.issues.some(({ closed }) => !closed);
  if (open || state.stopped || state.changedBy !== undefined) return 'needs-attention';
  if (state.signed) return 'signed';
  if (state.accepted?.override) return 'needs-attention';
  if (!commission.search.accepted) return 'aligning';
  const proven = isCommissioning(commission) && isProven(commission, progressOf(commission, now));
  return proven ? 'proven' : 'aligned';
}
