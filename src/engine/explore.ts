import type { Action } from '../advice.ts';
import { AXES, type Axis, type Eighths } from '../turns.ts';
import { type Beam, fitShape } from './beam.ts';
import { stepTo } from './hunt.ts';
import type { PerAxis, Sample } from './search.ts';
import { type Told, tell } from './tell.ts';
import type { View } from './view.ts';

/** Distance of the places looked at about a brighter spot, and how near counts as looked at. Eighths. */
const STRIDE = 5;
const LOOKED_AT = 3;

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

/**
 * Light where this beam cannot be: a side lobe, a reflection, or the true peak. The place next to the
 * brightest of it that has not been looked at; undefined once it is known to peak lower, or ringed by places
 * that are darker.
 */
export function unexplored(view: View): { spot: Spot; seen: Sample } | undefined {
  const { beam, samples, search } = view;
  const [first, ...others] = beam?.otherLight ?? [];
  if (!beam || !first || isLower(view, beam)) return undefined;
  const seen = others.reduce((a, b) => (brightness(view, b) > brightness(view, a) ? b : a), first);
  const isKnown = (spot: Spot) =>
    samples.some((s) => AXES.every((axis) => Math.abs(s.turned[axis] - spot[axis]) <= LOOKED_AT));
  const isWithin = (spot: Spot) =>
    AXES.every((axis) => spot[axis] >= search.limits[axis].low && spot[axis] <= search.limits[axis].high);
  const next = (axis: Axis, by: number): Spot => ({ ...seen.turned, [axis]: seen.turned[axis] + by });
  const spot = AXES.flatMap((axis) => [next(axis, STRIDE), next(axis, -STRIDE)]).find(
    (place) => isWithin(place) && !isKnown(place),
  );
  return spot && { spot, seen };
}

/** A second peak is looked at before this one is proven: the higher one counts. */
export function secondPeak(view: View): Told | undefined {
  const found = unexplored(view);
  const action: Action | undefined = found && stepTo(view, found.spot);
  return action && tell('second-peak', action, [found?.seen, view.here]);
}
