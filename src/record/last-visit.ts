import { isTouch, lastOf, type Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import type { Visit } from '../visit/visit.ts';

/** How the final reading of one visit was found at the next, before anything was touched. */
export interface VisitDrift {
  readonly accepted: Placed<'accept'>;
  readonly found: Placed<'reading'>;
  /** Light lost since, dB; negative where there is more. Undefined where the meter's law does not tell. */
  readonly lostDb?: number;
  readonly from: Reading;
  readonly to: Reading;
}

/** Undefined where the earlier visit accepted nothing, or the later one touched before it read. */
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
