import type { Axis, Eighths } from '../model/turns.ts';
import { predict } from './beam.ts';
import type { Estimate } from './fit.ts';
import { exactFromDb } from './level.ts';
import type { Search } from './search.ts';
import { look } from './view.ts';

/** The fitted beam along one adjuster, as the meter would read it. */
export interface Curve {
  /** Place of the peak, eighths, with its standard deviation. */
  readonly peak: Estimate;
  /** Readings in meter units, with two standard deviations (95 %) below and above. */
  readonly points: readonly { at: number; value: number; low: number; high: number }[];
}

/** How far the band reaches on each side of an estimate, standard deviations. */
export const SPREAD = 2;
/** Points in each eighth of a turn. */
const FINE = 4;

/**
 * The fitted beam of the search, drawn along `axis` from `from` to `to` at gain setting `gain`, with the
 * other adjuster at `otherAt`. Undefined where there is no beam yet, or none at that gain.
 */
export function curveAlong(
  search: Search,
  axis: Axis,
  { gain, otherAt, from, to }: { gain: number; otherAt: Eighths; from: Eighths; to: Eighths },
): Curve | undefined {
  const { beam, samples } = look(search);
  const [any] = samples;
  if (!beam || !any) return undefined;
  const { meter } = search;
  const points = Array.from({ length: (to - from) * FINE + 1 }, (_, index) => from + index / FINE).flatMap(
    (at) => {
      const turned = { horizontal: otherAt, vertical: otherAt, [axis]: at };
      const db = predict(beam, { ...any, gain, turned, pointing: { horizontal: [], vertical: [] } });
      if (!db) return [];
      const reading = (offset: number) => exactFromDb(db.value + offset * db.sd, meter);
      return [{ at, value: reading(0), low: reading(-SPREAD), high: reading(SPREAD) }];
    },
  );
  return points.length > 0 ? { peak: beam.peak[axis], points } : undefined;
}
