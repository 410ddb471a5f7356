import type { SiteFinding } from '../model/finding.ts';
import { behindGain, weakerBy } from './behind-gain.ts';
import type { PairOutcome } from './outcome.ts';

/** Paths within this share of each other count as equally long. Common practice, no source. */
const EQUAL_LENGTH = 0.1;
/**
 * A pair this far below the middle one of its equals is much weaker, dB. Where the gain is not
 * known, it makes up for what it can, and the rest shows a pair that is weak even at full gain. Common practice, no source.
 */
export const WEAK_DB = 1;
/** With fewer equals nobody can say which one is wrong. */
const FEWEST_EQUALS = 2;

/** A pair accepted at a much weaker signal than others of its length on the same kind of meter: reading and gain together. */
export function weakNeighbour(pairs: readonly PairOutcome[]): SiteFinding[] {
  const known = pairs.flatMap(({ pair, pathLength, visits }) => {
    const visit = visits.findLast(({ accepted }) => accepted);
    const signal = visit && behindGain(visit);
    if (!visit?.accepted || !signal || pathLength === undefined) return [];
    return [{ pair, pathLength, signal, entry: { job: visit.job, seq: visit.accepted.seq } }];
  });
  return known.flatMap((one): SiteFinding[] => {
    const equals = known.flatMap((other) => {
      const isEqual =
        other !== one &&
        other.signal.meter.name === one.signal.meter.name &&
        Math.abs(other.pathLength - one.pathLength) <= EQUAL_LENGTH * one.pathLength;
      const compared = isEqual ? weakerBy(other.signal, one.signal) : undefined;
      return compared ? [{ ...compared, value: other.signal.value, entry: other.entry }] : [];
    });
    if (equals.length < FEWEST_EQUALS) return [];
    const byWeaker = equals.toSorted((a, b) => a.weaker - b.weaker);
    const middle = byWeaker[Math.floor((equals.length - 1) / 2)];
    if (!middle || middle.weaker < WEAK_DB) return [];
    const { weaker, moreGain, value } = middle;
    const figures = {
      weaker,
      reading: one.signal.value,
      equals: value,
      ...(moreGain !== undefined && { moreGain }),
    };
    const entries = [one.entry, ...equals.map(({ entry }) => entry)];
    return [{ id: 'weak-neighbour', severity: 'question', pair: one.pair, entries, figures }];
  });
}
