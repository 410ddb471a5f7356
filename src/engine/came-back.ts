import type { MeterProfile } from '../model/profile.ts';
import { unitsToDb } from './level.ts';
import type { Sample } from './sample.ts';
import { agree } from './stay.ts';

/** Whether light came back where the crew did. */

/** Near the top a place should read as it did; on the flanks backlash and stray hands may change it. dB. */
export const RETURN = { within: 1, missesBy: 0.3 };

/** The newest turns that are asked about: people do not remember more. */
export const REMEMBERED = 8;

/**
 * It reads less than it did at the same place, by more than the meter's tolerance. On a meter of few steps one step is
 * no noise: it is a whole decibel.
 */
export const isLess = (now: Sample, before: Sample, meter: MeterProfile): boolean =>
  before.level.kind === 'level' &&
  now.level.kind !== 'above' &&
  !agree(before.reading, now.reading, meter) &&
  lossDb(before, now) > RETURN.missesBy;

export const lossDb = (before: Sample, now: Sample): number =>
  now.level.kind === 'below' ? Number.POSITIVE_INFINITY : before.level.db - now.level.db;

/** One step of the meter is more here than a place may lose. */
export const isCoarse = ({ reading }: Sample, meter: MeterProfile): boolean =>
  reading.kind === 'value' && unitsToDb(meter.resolution, reading.value, meter) > RETURN.missesBy;

export const turnsBetween = (before: Sample, now: Sample): number =>
  now.turns.horizontal + now.turns.vertical - before.turns.horizontal - before.turns.vertical;
