import type { SiteFinding } from '../model/finding.ts';
import { behindGain, weakerBy } from './behind-gain.ts';
import type { PairOutcome } from './outcome.ts';
import { WEAK_DB } from './weak-neighbour.ts';

/**
 * A later visit accepted a weaker signal than the one before, though its reading may be the same: the gain hides it.
 * Only where the gain of both visits is known.
 */
export function weakerSince(pairs: readonly PairOutcome[]): SiteFinding[] {
  return pairs.flatMap(({ pair, visits }): SiteFinding[] => {
    const [before, last] = visits.filter(({ accepted }) => accepted).slice(-2);
    const was = before && behindGain(before);
    const is = last && behindGain(last);
    if (!was || !is || !before?.accepted || !last?.accepted || was.meter.name !== is.meter.name) return [];
    const compared = weakerBy(was, is);
    if (compared?.moreGain === undefined || compared.weaker < WEAK_DB) return [];
    const { weaker, moreGain } = compared;
    const entries = [
      { job: before.job, seq: before.accepted.seq },
      { job: last.job, seq: last.accepted.seq },
    ];
    const figures = { weaker, moreGain, reading: is.value, before: was.value };
    return [{ id: 'weaker-since', severity: 'question', pair, entries, figures }];
  });
}
