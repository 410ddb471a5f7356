import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import { agree } from './stay.ts';

/** A clear reading that fell by more than this was not made by noise, dB. Common practice, no source. */
export const BEAM_FALL_DB = 0.5;

/** Figures are entered as decimals: a tiny binary rounding error must not count. */
const ROUNDING_DB = 1e-9;

/**
 * With the path clear the meter no longer shows what it did: less light by more than `BEAM_FALL_DB`, or too much
 * to tell. On a meter of unknown law: less by more than its tolerance. More light than before is no loss.
 */
export function isBeamMoved(before: Reading, now: Reading, meter: MeterProfile): boolean {
  if (agree(before, now, meter)) return false;
  if (now.kind === 'saturated') return true;
  const fall = lossBetween(before, now, meter);
  if (fall !== undefined) return fall > BEAM_FALL_DB + ROUNDING_DB;
  if (before.kind !== 'value' || now.kind === 'seen') return false;
  return now.kind === 'none' || now.value < before.value;
}

/** How much light was lost between two clear readings, dB, as a figure; none where it is not known or endless. */
export function fallFigure(before: Reading, now: Reading, meter: MeterProfile): { fall?: number } {
  const fall = lossBetween(before, now, meter);
  return fall !== undefined && Number.isFinite(fall) ? { fall } : {};
}
