import { isTouch, lastOf, type Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import type { Visit } from '../visit/visit.ts';

/** The final reading of one visit, and the reading found at the next before anything was touched. */
export interface VisitDrift {
  readonly accepted: Placed<'accept'>;
  readonly found: Placed<'reading'>;
  /** Light lost since, dB; negative if there is more. Undefined if the meter's law is not known. */
  readonly lostDb?: number;
  readonly from: Reading;
  readonly to: Reading;
}

/** Undefined if the earlier visit accepted nothing, or the later one touched something before it read. */
export function driftBetween(earlier: Visit, later: Visit): VisitDrift | undefined {
  const accepted = lastOf(earlier.commission.counted, 'accept');
  const { counted } = later.commission;
  const untouched = counted.findIndex((fact) => isTouch(fact) || fact.type === 'path');
  const before = untouched < 0 ? counted : counted.slice(0, untouched);
  const found = lastOf(before, 'reading');
  if (!earlier.accepted || !accepted || !found) return undefined;
  const lostDb = lossBetween(accepted.reading, found.reading, later.commission.setup.meter);
  const drift = { accepted, found, from: accepted.reading, to: found.reading };
  return lostDb === undefined ? drift : { ...drift, lostDb };
}
