import type { TimedAdvice } from './advice.ts';
import { returnToPeak } from './aim.ts';
import { AT_PEAK_DB, ownGainAtPeak, peakOutOfBand, setsItself } from './gain.ts';
import { saturatedDb } from './level.ts';
import type { View } from './view.ts';

/**
 * For a crew of two the gain waits until they are at the peak, and is set once: a height foretold from a flank is set
 * wrong. Only where the peak would flood the meter it does not wait.
 */
export function peakFloods(view: View): TimedAdvice | undefined {
  const { here, beam, search } = view;
  const peak = here && beam?.heights.get(here.gain);
  return peak && peak.value + peak.sd > saturatedDb(search.meter) ? peakOutOfBand(view) : undefined;
}

/** The peak is known, and would read outside the band: there first, then the gain, before its sides are read at it. */
export function gainAtPeak(view: View): TimedAdvice | undefined {
  const { here, beam, search } = view;
  const peak = here && beam?.heights.get(here.gain);
  if (setsItself(search) || !peak || here.level.kind !== 'level') return ownGainAtPeak(view);
  const given = peakOutOfBand(view);
  if (given?.advice.action.kind !== 'gain') return given;
  return peak.value - here.level.db > AT_PEAK_DB ? (returnToPeak(view) ?? given) : given;
}
