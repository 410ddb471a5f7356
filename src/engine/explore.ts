import type { Action } from '../advice.ts';
import { AXES, type Axis, type Eighths } from '../turns.ts';
import { type Beam, fitShape, isFromElsewhere } from './beam.ts';
import { stepTo } from './hunt.ts';
import type { PerAxis, Sample } from './search.ts';
import { type Told, tell } from './tell.ts';
import type { View } from './view.ts';

/** Distance of the places looked at about a brighter spot, and how near counts as looked at. Eighths. */
const STRIDE = 5;
const LOOKED_AT = 3;

/** Readings at a gain whose height is known no better say nothing about brightness here. dB. */
const COMPARABLE_DB = 2;

type Spot = PerAxis<Eighths>;

/** Readings at different gains made comparable: dB below the fitted peak at the same gain. */
const brightness = ({ beam }: View, s: Sample): number =>
  s.level.db - (beam?.heights.get(s.gain)?.value ?? 0);

/** How much lower a second peak has to be to be left alone, and how surely. dB, standard deviations. */
const LOWER = { db: 1, sds: 2 };

/** The other light's own peak, fitted as a beam, is certain to be lower than this one's. */
function isLower({ search }: View, beam: Beam): boolean {
  const other = fitShape(beam.otherLight, search.meter, beam.lash, 1);
  // Two lights that are no one beam have no one peak.
  if (!other || other.chi2 > 10 + beam.otherLight.length) return false;
  return [...other.heights].every(([gain, { value, sd }]) => {
    const top = beam.heights.get(gain);
    return top && value + LOWER.sds * sd < top.value - LOWER.db;
  });
}

const isWithin = ({ search: { limits } }: View, spot: Spot): boolean =>
  AXES.every((axis) => spot[axis] >= limits[axis].low && spot[axis] <= limits[axis].high);

const isNear = (s: Sample, spot: Spot, by: Eighths): boolean =>
  AXES.every((axis) => Math.abs(s.turned[axis] - spot[axis]) <= by);

/**
 * Light that was read and is not accounted for: given up with what was known before, or taken at a gain that
 * says nothing of this one. The brightest at each gain is looked at again: a peak that was forgotten may be the
 * higher one.
 */
function unaccounted(view: View): Sample | undefined {
  const { beam, samples, search } = view;
  // What an unknown law makes of a reading says nothing about light from elsewhere.
  if (!beam || search.meter.law === 'unknown') return undefined;
  const isComparable = ({ gain }: Sample) => (beam.heights.get(gain)?.sd ?? COMPARABLE_DB) < COMPARABLE_DB;
  const forgotten = search.samples.filter((s) => s.level.kind !== 'below' && !samples.includes(s));
  const brightest = new Map<number, Sample>();
  for (const s of [...beam.otherLight.filter((o) => !isComparable(o)), ...forgotten]) {
    const known = brightest.get(s.gain);
    if (!known || s.level.db > known.level.db) brightest.set(s.gain, s);
  }
  const isLookedAt = ({ turned }: Sample) =>
    !isWithin(view, turned) || samples.some((s) => isComparable(s) && isNear(s, turned, LOOKED_AT));
  return [...brightest.values()].find(
    (s) => (!isComparable(s) || isFromElsewhere(beam, s, search.meter)) && !isLookedAt(s),
  );
}

/**
 * Light where this beam cannot be: a side lobe, a reflection, or the true peak. The place next to the
 * brightest of it that has not been looked at; undefined once it is known to peak lower, or ringed by places
 * that are darker.
 */
export function unexplored(view: View): { spot: Spot; seen: Sample } | undefined {
  const { beam, samples } = view;
  const [first, ...others] = beam?.otherLight ?? [];
  if (!beam || !first || isLower(view, beam)) return undefined;
  const seen = others.reduce((a, b) => (brightness(view, b) > brightness(view, a) ? b : a), first);
  const next = (axis: Axis, by: number): Spot => ({ ...seen.turned, [axis]: seen.turned[axis] + by });
  const spot = AXES.flatMap((axis) => [next(axis, STRIDE), next(axis, -STRIDE)]).find(
    (place) => isWithin(view, place) && !samples.some((s) => isNear(s, place, LOOKED_AT)),
  );
  return spot && { spot, seen };
}

/** Before anything is accepted, what was read and given up is looked at again. */
export function forgottenLight(view: View): Told | undefined {
  const seen = unaccounted(view);
  const action: Action | undefined = seen && stepTo(view, seen.turned);
  return action && tell('second-peak', action, [seen, view.here]);
}

export const hasForgotten = (view: View): boolean => unaccounted(view) !== undefined;

/** A second peak is looked at before this one is proven: the higher one counts. */
export function secondPeak(view: View): Told | undefined {
  const found = unexplored(view);
  const action: Action | undefined = found && stepTo(view, found.spot);
  return action && tell('second-peak', action, [found?.seen, view.here]);
}
