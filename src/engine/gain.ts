import { midBand } from '../profile.ts';
import { fromDb, lostDb, saturatedDb, toDb } from './level.ts';
import { CAUSES } from './rules.ts';
import type { Search } from './search.ts';
import { figure, type Told, tell } from './tell.ts';
import type { View } from './view.ts';

const adjustable = (search: Search): boolean =>
  search.meter.gain === 'continuous' || search.meter.gain === 'stepped';

export const canRaise = (search: Search): boolean => adjustable(search) && !search.gainFull;

/** How far the peak is taken to lie above a flooded reading while nothing is known of it. dB. */
const UNKNOWN_CLIMB_DB = 6;

/** The peak's height is known well enough to set the gain by it. dB. */
const HEIGHT_KNOWN_DB = 1.2;

/** Readings this close to the dark end are too coarse to set a gain by. dB. */
const ABOVE_LOST_DB = 4;

/** The meter is flooded: down, to where the peak is expected to stay readable. */
export function flooded({ search, here }: View): Told | undefined {
  if (here?.level.kind !== 'above') return undefined;
  const { meter } = search;
  if (!adjustable(search)) return tell('too-strong', { kind: 'check', causes: [...CAUSES.strong] }, [here]);
  const middle = (lostDb(meter) + saturatedDb(meter)) / 2;
  const db = Math.max(middle, toDb(midBand(meter), meter) - UNKNOWN_CLIMB_DB);
  const toward = fromDb(db, meter);
  return tell('lower-gain', { kind: 'gain', change: 'lower', toward }, [here], { toward });
}

/** The peak's height is known and lies outside the band: set the gain once, so that it comes to the middle. */
export function peakOutOfBand({ search, here, beam }: View): Told | undefined {
  if (here?.level.kind !== 'level' || !beam) return undefined;
  const { meter } = search;
  const peak = beam.heights.get(here.gain);
  if (!peak || peak.sd > HEIGHT_KNOWN_DB) return undefined;
  const [low, high] = [toDb(meter.bandLow, meter), toDb(meter.bandHigh, meter)];
  const margin = Math.min(0.3, (high - low) / 4);
  const tooHigh = peak.value - peak.sd > high - margin;
  if (!tooHigh && peak.value + peak.sd > low + margin) return undefined;
  const db = here.level.db + toDb(midBand(meter), meter) - peak.value;
  if (db < lostDb(meter) + ABOVE_LOST_DB) return undefined;
  const toward = fromDb(db, meter);
  const figures = { peak: fromDb(peak.value, meter), toward, uncertaintyDb: figure(peak.sd) };
  if (tooHigh && adjustable(search)) {
    return tell('mid-band', { kind: 'gain', change: 'lower', toward }, [here], figures);
  }
  if (!tooHigh && canRaise(search)) {
    return tell('mid-band', { kind: 'gain', change: 'raise', toward }, [here], figures);
  }
  return undefined;
}

/** The peak has been reached and the gain cannot bring it into the band. */
export function outOfReach({ search, here, beam }: View): Told | undefined {
  if (!here || !beam || here.reading.kind !== 'value') return undefined;
  const { bandLow, bandHigh } = search.meter;
  const figures = { reading: here.reading.value, low: bandLow, high: bandHigh };
  if (here.reading.value < bandLow)
    return tell('too-weak', { kind: 'check', causes: [...CAUSES.weak] }, [here], figures);
  if (here.reading.value > bandHigh)
    return tell('too-strong', { kind: 'check', causes: [...CAUSES.strong] }, [here], figures);
  return undefined;
}
