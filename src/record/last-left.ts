import type { VisitOutcome } from '../findings/outcome.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { LastLeft } from '../model/setup.ts';

/**
 * What a periodic visit is compared with: the signal that the latest visit left, read on the same meter. Undefined where
 * that visit is not signed or left nothing proven: an older one says nothing about what was done since.
 */
export function lastLeftOf(visits: readonly VisitOutcome[], meter: MeterProfile): LastLeft | undefined {
  const last = visits.at(-1);
  if (!last?.signed || !last.left || last.commission.setup.meter.name !== meter.name) return undefined;
  const { at, value } = last.left;
  return { job: last.job, at, value };
}
