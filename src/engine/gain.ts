import { midBand } from '../model/profile.ts';
import { advice, figure, type TimedAdvice } from './advice.ts';
import { fromDb, lostDb, saturatedDb, toDb } from './level.ts';
import { isSamePlace } from './place.ts';
import { CAUSES } from './rules.ts';
import type { Search } from './search.ts';
import { agree } from './stay.ts';
import type { View } from './view.ts';

const adjustable = (search: Search): boolean =>
  search.meter.gain === 'continuous' || search.meter.gain === 'stepped';

/** Nobody could set it, or the last change did not change the reading: the gain goes no further that way. */
function isStuck({ search, samples }: View, way: -1 | 1): boolean {
  if (search.gainStuck === way) return true;
  if (search.gainWay === -way) return false;
  const after = samples.find((s) => s.gain === search.gain);
  const before = samples.findLast((s) => s.gain === search.gain - 1);
  if (!after || !before || !isSamePlace(after.turned, before.turned)) return false;
  return agree(before.reading, after.reading, search.meter);
}

/** A detector that sets its own gain does so when it is told to, at the place where the emitter points. */
export const setsItself = ({ meter }: Search): boolean => meter.gain === 'automatic';

export const canRaise = (view: View): boolean =>
  adjustable(view.search) && !view.search.gainFull && !isStuck(view, 1);
const canLower = (view: View): boolean => adjustable(view.search) && !isStuck(view, -1);

/** That the gain could not be set is the first thing to look into. */
const unset = ({ gainStuck }: Search, way: -1 | 1) => (gainStuck === way ? CAUSES.gainStuck : []);

/** How far above a saturated reading the peak is assumed to be, while nothing is known. dB. */
const UNKNOWN_CLIMB_DB = 6;

/** The same at an aim by eye for a person who walks: the places beside it are read next, and they must not be dark. dB. */
const AIMED_CLIMB_DB = 0.7;

/** The peak's height is known well enough for setting the gain. dB. */
const HEIGHT_KNOWN_DB = 1.2;

/** A reading so little below the peak is set into the band with it. dB. */
export const AT_PEAK_DB = 0.5;

/** Readings this close to the dark end are too coarse for setting a gain. dB. */
const ABOVE_LOST_DB = 4;

/** The meter is saturated: lower the gain, so that the peak should stay readable. */
export function flooded(view: View): TimedAdvice | undefined {
  const { search, here } = view;
  if (here?.level.kind !== 'above') return undefined;
  const { meter } = search;
  if (setsItself(search)) return advice('own-gain', { kind: 'read' }, [here]);
  if (!canLower(view)) {
    const causes = [...unset(search, -1), ...CAUSES.strong];
    return advice('too-strong', { kind: 'check', causes }, [here]);
  }
  const middle = (lostDb(meter) + saturatedDb(meter)) / 2;
  const climb = search.walk && search.moves === 0 ? AIMED_CLIMB_DB : UNKNOWN_CLIMB_DB;
  const db = Math.max(middle, toDb(midBand(meter), meter) - climb);
  const toward = fromDb(db, meter);
  return advice('lower-gain', { kind: 'gain', change: 'lower', toward }, [here], { toward });
}

/** The peak's height is known and outside the band: set the gain once, to bring it to the middle. */
export function peakOutOfBand(view: View): TimedAdvice | undefined {
  const { search, here, beam } = view;
  if (here?.level.kind !== 'level' || !beam || setsItself(search)) return undefined;
  const { meter } = search;
  const peak = beam.heights.get(here.gain);
  if (!peak || peak.sd > HEIGHT_KNOWN_DB) return undefined;
  const [low, high] = [toDb(meter.bandLow, meter), toDb(meter.bandHigh, meter)];
  const margin = Math.min(0.3, (high - low) / 4) - peak.sd;
  const isHigh = peak.value > high - margin;
  const isLow = peak.value < low + margin;
  const toward = here.level.db + toDb(midBand(meter), meter) - peak.value;
  if (!(isHigh || isLow) || toward < lostDb(meter) + ABOVE_LOST_DB) return undefined;
  // Near the edge of the band is still in it: it stays there where the next step leaves the band.
  if (peak.value >= low && peak.value <= high && isTooCoarse(view, isHigh ? 1 : -1)) return undefined;
  const figures = { peak: fromDb(peak.value, meter), uncertaintyDb: figure(peak.sd) };
  return setGain(view, isHigh, fromDb(toward, meter), figures);
}

/** A detector that sets its own gain does so at the peak, before that is proven: its sides must be read at the gain that stays. */
export function ownGainAtPeak(view: View): TimedAdvice | undefined {
  const { search, here, beam } = view;
  if (!setsItself(search) || here?.level.kind !== 'level') return undefined;
  const peak = beam?.heights.get(here.gain);
  if (!peak || peak.value - here.level.db > AT_PEAK_DB) return undefined;
  return outOfBand(view);
}

/** The peak is reached and its reading is outside the band: set the gain, or say that this is not possible. */
export function outOfBand(view: View): TimedAdvice | undefined {
  const { here, search } = view;
  if (here?.reading.kind !== 'value') return undefined;
  const { meter } = search;
  const { value } = here.reading;
  const figures = { reading: value, low: meter.bandLow, high: meter.bandHigh };
  if (value >= meter.bandLow && value <= meter.bandHigh) return undefined;
  const isHigh = value > meter.bandHigh;
  const own = setsItself(search) ? CAUSES.own : [];
  const causes = [...unset(search, isHigh ? -1 : 1), ...own, ...(isHigh ? CAUSES.strong : CAUSES.weak)];
  return (
    setGain(view, isHigh, fromDb(toDb(midBand(meter), meter), meter), figures) ??
    advice(isHigh ? 'too-strong' : 'too-weak', { kind: 'check', causes }, [here], figures)
  );
}

/**
 * The peak is on one side of the band at this setting and on the other at the one before. A crew may have passed the
 * step between, so unless the difference is that of one step, it is tried once more.
 */
function isTooCoarse({ search: { meter, gain }, beam }: View, side: -1 | 1): boolean {
  if (meter.gain !== 'stepped') return false;
  const height = (of: number): number | undefined => beam?.heights.get(of)?.value;
  const sideOf = (db: number | undefined): number =>
    db === undefined ? 0 : Number(db > toDb(meter.bandHigh, meter)) - Number(db < toDb(meter.bandLow, meter));
  const [now, before] = [height(gain), height(gain - 1)];
  if (now === undefined || before === undefined || sideOf(before) !== -side) return false;
  const { gainDbPerStep: step } = meter;
  return (step !== undefined && Math.abs(now - before) < 1.5 * step) || sideOf(height(gain - 2)) === side;
}

function setGain(
  view: View,
  down: boolean,
  toward: number,
  figures: Record<string, number>,
): TimedAdvice | undefined {
  if (setsItself(view.search)) {
    if (isStuck(view, down ? -1 : 1)) return undefined;
    const change = down ? 'lower' : 'raise';
    return advice('set-own-gain', { kind: 'gain', change }, [view.here], figures);
  }
  if (!(down ? canLower(view) : canRaise(view))) return undefined;
  if (isTooCoarse(view, down ? 1 : -1))
    return advice('gain-too-coarse', { kind: 'check', causes: [...CAUSES.coarse] }, [view.here], figures);
  const action = { kind: 'gain', change: down ? 'lower' : 'raise', toward } as const;
  return advice('mid-band', action, [view.here], { ...figures, toward });
}
