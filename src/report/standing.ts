import type { SiteFinding } from '../model/finding.ts';
import type { PairStatus } from '../model/pair-status.ts';
import { PAIR_STATUSES } from '../model/pair-status.ts';
import type { Outcome } from '../phrases/result.ts';
import type { PairPage } from './pair-page.ts';

type Made = Omit<PairPage, 'part'>;

/** How many of the site's pairs stand how: what the cover's one sentence and its box are made from. */
export function outcomeOf(
  {
    pairs,
    found,
  }: { readonly pairs: readonly { readonly made: Made }[]; readonly found: readonly SiteFinding[] },
  all: number,
  siteBroken: boolean,
): Outcome {
  const count = (test: (made: Made) => boolean) => pairs.filter(({ made }) => test(made)).length;
  const sum = (severity: 'serious' | 'question') =>
    pairs.reduce((total, { made }) => total + made.findings[severity], 0) +
    found.filter((each) => each.severity === severity).length;
  return {
    pairs: pairs.length,
    all,
    statuses: Object.fromEntries(
      PAIR_STATUSES.map((status) => [status, count((made) => made.status === status)]),
    ) as Record<PairStatus, number>,
    serious: sum('serious'),
    questions: sum('question'),
    broken: count(({ broken }) => broken),
    siteBroken,
    untested: count(({ tests }) => tests?.came === 'missing' || tests?.came === 'failed'),
    answeredFor: count(({ tests }) => tests?.came === 'answered-for'),
    retested: count(({ tests }) => (tests?.retested.length ?? 0) > 0),
  };
}
