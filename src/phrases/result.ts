import type { PairStatus } from '../model/pair-status.ts';
import { pairCount } from './counts.ts';
import { STATUS_WORDS } from './statuses.ts';

/** How the pairs of a report stand, in numbers. */
export interface Outcome {
  readonly pairs: number;
  /** Pairs of the site. */
  readonly all: number;
  readonly statuses: Readonly<Record<PairStatus, number>>;
  /** Findings on pairs and across the site. */
  readonly serious: number;
  readonly questions: number;
  /** Pairs with a log that fails its check; whether the site's own does. */
  readonly broken: number;
  readonly siteBroken: boolean;
  /** Pairs with tests that failed or were not all made; with a failure answered for in writing; with one made good. */
  readonly untested: number;
  readonly answeredFor: number;
  readonly retested: number;
}

/** True only where nothing is left to look at: every pair of the site is signed and passed, and nothing serious was found. */
export const isClear = (outcome: Outcome): boolean =>
  outcome.pairs > 0 &&
  outcome.pairs === outcome.all &&
  outcome.statuses.signed === outcome.pairs &&
  outcome.serious + outcome.broken + outcome.untested + outcome.answeredFor === 0 &&
  !outcome.siteBroken;

/** In the box beside the title. */
export function resultBadge(outcome: Outcome): string {
  const { pairs, all, statuses, broken, siteBroken } = outcome;
  if (siteBroken || broken > 0) return 'Log broken';
  if (pairs < all) return `${pairs} of ${pairCount(all)}`;
  if (isClear(outcome)) return 'All signed';
  if (statuses['needs-attention'] > 0) return `Need attention: ${statuses['needs-attention']}`;
  return statuses.signed === pairs && pairs > 0 ? 'All signed; see result' : 'Not all signed';
}

const standText = (status: PairStatus, pairs: number): string =>
  status === 'needs-attention' && pairs > 1 ? 'need attention' : STATUS_WORDS[status].toLowerCase();

const allSigned = (pairs: number): string =>
  pairs === 1 ? 'The pair is signed' : `All ${pairs} pairs are signed`;

/** The result in a sentence, never calmer than the pairs. */
export function resultText(outcome: Outcome): string {
  const { pairs, all, statuses, serious, questions, broken, siteBroken } = outcome;
  const { signed } = statuses;
  if (pairs === 0) return 'No pairs are planned: there is nothing to certify.';
  const others = (Object.keys(statuses) as PairStatus[])
    .filter((status) => status !== 'signed' && statuses[status] > 0)
    .map((status) => `${statuses[status]} ${standText(status, statuses[status])}`);
  const parts = [
    siteBroken && "the site's log is broken",
    broken > 0 && `the log of ${pairCount(broken)} is broken`,
    pairs < all && `only ${pairs} of the site's ${all} pairs ${pairs === 1 ? 'is' : 'are'} in this report`,
    ...others,
    serious > 0 && `${serious} serious ${serious === 1 ? 'finding' : 'findings'}`,
    outcome.untested > 0 && `tests failed or not all made on ${pairCount(outcome.untested)}`,
    outcome.answeredFor > 0 && `a failed test answered for in writing on ${pairCount(outcome.answeredFor)}`,
    outcome.retested > 0 && `a test that failed first and passed later on ${pairCount(outcome.retested)}`,
    questions > 0 && `${questions} ${questions === 1 ? 'question' : 'questions'} to be asked`,
  ].filter((part) => part !== false);
  const signedText = signed === pairs ? allSigned(pairs) : `${signed} of ${pairCount(pairs)} signed`;
  if (isClear(outcome)) {
    return parts.length === 0
      ? `${signedText}; all tests passed, and nothing serious was found.`
      : `${signedText}, all tests passed in the end, and nothing serious was found; but: ${parts.join('; ')}.`;
  }
  return `NOT CLEAR: ${signedText}; ${parts.join('; ')}.`;
}
