import type { VisitOutcome } from '../findings/outcome.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { LastLeft } from '../model/setup.ts';

/**
 * What a periodic visit is compared with: the signal that the latest signed visit left, read on the same meter. Undefined
 * where a visit since touched something, signed or not: then nobody knows what the pair was left with.
 */
export function lastLeftOf(visits: readonly VisitOutcome[], meter: MeterProfile): LastLeft | undefined {
  // A visit that was begun and left without a touch changed nothing.
  const last = visits.findLast(({ signed, commission }) => signed || commission.counted.length > 0);
  if (!last?.signed || !last.left || last.commission.setup.meter.name !== meter.name) return undefined;
  const { at, value } = last.left;
  return { job: last.job, at, value };
}
