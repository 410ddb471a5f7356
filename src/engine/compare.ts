import type { Eighths } from '../model/turns.ts';
import { newestAt } from './place.ts';
import type { PerAxis, Sample } from './sample.ts';

/** A reading that is higher than the accepted one by up to this may be noise. dB. */
const HIGHER_DB = 0.3;

/** A place with a higher reading at this gain, by more than noise: then this is not the peak. */
export function higherReading(samples: readonly Sample[], here: Sample): Sample | undefined {
  return samples.find((s) => s.gain === here.gain && lower(here, s, HIGHER_DB) && newestAt(samples, s) === s);
}

/** A place was read at this gain and was lower than here: it is no better, whatever the fit says. */
export function isKnownLower(samples: readonly Sample[], here: Sample, turned: PerAxis<Eighths>): boolean {
  const there = newestAt(samples, { gain: here.gain, turned });
  return there !== undefined && lower(there, here);
}

/** Certainly lower: by more than noise explains. */
export function lower(a: Sample, than: Sample, atLeastDb = 0): boolean {
  if (than.level.kind !== 'level') return false;
  if (a.level.kind === 'below') return true;
  if (a.level.kind !== 'level') return false;
  return than.level.db - a.level.db > Math.max(atLeastDb, 2.5 * Math.hypot(a.level.sd, than.level.sd));
}
