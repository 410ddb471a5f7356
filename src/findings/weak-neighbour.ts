import type { SiteFinding } from '../model/finding.ts';
import { valueReading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import type { PairOutcome } from './outcome.ts';

/** Paths within this share of each other count as equally long. Common practice, no source. */
const EQUAL_LENGTH = 0.1;
/**
 * A pair this far below the middle one of its equals is much weaker, dB. The gain makes up for what it can,
 * so the rest shows a pair that is weak even at full gain. Common practice, no source.
 */
export const WEAK_DB = 1;
/** With fewer equals nobody can say which one is wrong. */
const FEWEST_EQUALS = 2;

/** A pair accepted at a much weaker reading than others of its length on the same kind of meter. */
export function weakNeighbour(pairs: readonly PairOutcome[]): SiteFinding[] {
  const known = pairs.flatMap(({ pair, pathLength, visits }) => {
    const visit = visits.findLast(({ accepted }) => accepted);
    const accepted = visit?.accepted;
    if (!visit || accepted?.reading.kind !== 'value' || pathLength === undefined) return [];
    const { meter } = visit.commission.setup;
    const entry = { job: visit.job, seq: accepted.seq };
    return [{ pair, pathLength, meter, value: accepted.reading.value, entry }];
  });
  // Sorted once, not for the equals of each pair.
  const byValue = known.toSorted((a, b) => a.value - b.value);
  return known.flatMap((one): SiteFinding[] => {
    const isEqual = (other: typeof one): boolean =>
      other !== one &&
      other.meter.name === one.meter.name &&
      Math.abs(other.pathLength - one.pathLength) <= EQUAL_LENGTH * one.pathLength;
    const equals = byValue.filter(isEqual);
    const middle = equals[Math.floor((equals.length - 1) / 2)]?.value;
    if (middle === undefined || equals.length < FEWEST_EQUALS) return [];
    const weaker = lossBetween(valueReading(middle), valueReading(one.value), one.meter);
    if (weaker === undefined || weaker < WEAK_DB) return [];
    const figures = { weaker, reading: one.value, equals: middle };
    const entries = [one.entry, ...known.filter(isEqual).map(({ entry }) => entry)];
    return [{ id: 'weak-neighbour', severity: 'question', pair: one.pair, entries, figures }];
  });
}
