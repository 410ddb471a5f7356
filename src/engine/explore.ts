import type { Action } from '../model/advice.ts';
import { AXES, type Axis, type Eighths } from '../model/turns.ts';
import { advice, type TimedAdvice } from './advice.ts';
import { type Beam, fitShape, halfWidth } from './beam.ts';
import { stepTo } from './hunt.ts';
import { isFromElsewhere } from './one-beam.ts';
import type { PerAxis, Sample } from './sample.ts';
import type { View } from './view.ts';

/** Distance of the places checked around a brighter spot, and how near counts as checked. Eighths. */
const STRIDE = 5;
const LOOKED_AT = 3;

/** If the height at a gain is less certain than this, its readings say nothing about brightness here. dB. */
const COMPARABLE_DB = 2;

type Spot = PerAxis<Eighths>;

/** Readings at different gains made comparable: dB below the fitted peak at the same gain. */
const brightness = ({ beam }: View, s: Sample): number =>
  s.level.db - (beam?.heights.get(s.gain)?.value ?? 0);

/** How much lower a second peak must be to be ignored, and how surely. dB, standard deviations. */
const LOWER = { db: 1, sds: 2 };

/** The other light's own peak, fitted as a beam, is certainly lower than this one's. */
function isLower({ search }: View, beam: Beam): boolean {
  const other = fitShape(beam.otherLight, search.meter, beam.backlash, 1);
  // Two lights that are not one beam have no single peak.
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

/** How much dimmer a place may be now and still be the same place. dB. */
const DIMMER_DB = 6;

/** Only a reading this near shows that the light is gone from a place. Eighths. */
const SAME_PLACE = 1;

/** Brighter than this beam's peak by more than the uncertainty of either. dB, standard deviations. */
const BRIGHTER = { db: 1, sds: 2 };

/** The height is known well enough to compare readings at its gain with those at others. */
const isComparable = ({ beam }: View, { gain }: Sample): boolean =>
  (beam?.heights.get(gain)?.sd ?? COMPARABLE_DB) < COMPARABLE_DB;

/** Light was read here, or near enough. A steep flank is dark three eighths from where it was bright. */
const isLookedAt = (view: View, seen: Sample): boolean =>
  !isWithin(view, seen.turned) ||
  view.samples.some((s) => {
    if (!isComparable(view, s) || !isNear(s, seen.turned, LOOKED_AT)) return false;
    if (!isComparable(view, seen) || isNear(s, seen.turned, SAME_PLACE)) return true;
    return brightness(view, s) > brightness(view, seen) - DIMMER_DB;
  });

const forgotten = ({ search, samples }: View): Sample[] =>
  search.samples.filter((s) => s.level.kind !== 'below' && !samples.includes(s));

/**
 * Light that was read and is not explained: dropped with what was known before, or taken at a gain that says
 * nothing about this one. The brightest at each gain is checked again: a forgotten peak may be the higher
 * one.
 */
function unaccounted(view: View): Sample | undefined {
  const { beam, search } = view;
  // With an unknown law, a reading says nothing about light from elsewhere.
  if (!beam || search.meter.law === 'unknown') return undefined;
  const brightest = new Map<number, Sample>();
  for (const s of [...beam.otherLight.filter((o) => !isComparable(view, o)), ...forgotten(view)]) {
    const known = brightest.get(s.gain);
    if (!known || s.level.db > known.level.db) brightest.set(s.gain, s);
  }
  return [...brightest.values()].find(
    (s) => (!isComparable(view, s) || isFromElsewhere(beam, s, search.meter)) && !isLookedAt(view, s),
  );
}

/**
 * The brightest reading above this beam's peak that was dropped and is gone from its place. One may be a
 * wrong reading; two say that the screws are not where we think.
 */
function gone(view: View): Sample | undefined {
  const { beam, search } = view;
  if (!beam || search.meter.law === 'unknown') return undefined;
  const above = forgotten(view).filter((s) => {
    const top = beam.heights.get(s.gain);
    const isAbove = top && s.level.db > top.value + Math.max(BRIGHTER.db, BRIGHTER.sds * top.sd);
    return isAbove && isComparable(view, s) && isLookedAt(view, s);
  });
  if (above.reduce((sum, { seqs }) => sum + seqs.length, 0) < 2) return undefined;
  return above.reduce((a, b) => (brightness(view, b) > brightness(view, a) ? b : a));
}

/**
 * Light where this beam cannot be: a side lobe, a reflection, or the true peak. The next unchecked place near
 * its brightest reading; undefined once its peak is known to be lower, or darker places surround it.
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

/** A peak this many half-widths from the aim by eye may be a side lobe. Common practice, no source. */
const FAR_FROM_AIM = 2.4;

/**
 * The place as far beyond the aim by eye as the peak is before it: a side lobe is next to its beam, and the
 * eye aims at the beam. Undefined where the peak is near, or the place was read.
 */
function beyondAim(view: View): Spot | undefined {
  const { beam, search } = view;
  // After a mistake nobody knows where the eye aimed.
  if (!beam || search.restarts > 0) return undefined;
  const peak = (axis: Axis) => beam.peak[axis].value;
  if (Math.hypot(...AXES.map((axis) => peak(axis) / halfWidth(beam, axis))) < FAR_FROM_AIM) return undefined;
  const spot = { horizontal: -Math.round(peak('horizontal')), vertical: -Math.round(peak('vertical')) };
  const isRead = view.samples.some((s) => isNear(s, spot, LOOKED_AT));
  return isRead || !isWithin(view, spot) ? undefined : spot;
}

/** Before acceptance, light that was read and dropped is checked again; if it is gone, the crew aims by eye. */
export function forgottenLight(view: View): TimedAdvice | undefined {
  const seen = unaccounted(view);
  const action: Action | undefined = seen && stepTo(view, seen.turned);
  if (action) return advice('second-peak', action, [seen, view.here]);
  const lost = gone(view);
  if (lost) return advice('brighter-before', { kind: 're-aim' }, [lost, view.here]);
  const beyond = beyondAim(view);
  const across: Action | undefined = beyond && stepTo(view, beyond);
  return across && advice('beyond-aim', across, [view.here]);
}

/** There may be brighter light than this peak that was not checked yet. */
export const hasUnseen = (view: View): boolean =>
  (unexplored(view) ?? beyondAim(view) ?? unaccounted(view) ?? gone(view)) !== undefined;

/** A second peak is checked before this one is proven: the higher one counts. */
export function secondPeak(view: View): TimedAdvice | undefined {
  const found = unexplored(view);
  const action: Action | undefined = found && stepTo(view, found.spot);
  return action && advice('second-peak', action, [found?.seen, view.here]);
}
