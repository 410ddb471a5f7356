import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';

/**
 * A reading on the decibel scale. A saturated meter says only "at least this much", a dark one "at most":
 * both are kept as that. `sd` is the standard deviation of one reading, dB.
 */
export type Level =
  | { kind: 'level'; db: number; sd: number }
  | { kind: 'above'; db: number }
  | { kind: 'below'; db: number };

const TEN_OVER_LN10 = 10 / Math.LN10;

/** Below this, in meter units above the meter's zero, a decibel figure makes no sense. */
const floorUnits = (meter: MeterProfile): number => meter.resolution / 2;

/**
 * Decibels relative to full scale. A linear meter's zero is its `min`. For a meter of unknown law this is
 * only a rising scale: good for "higher" and "lower", not for distances.
 */
export function toDb(value: number, meter: MeterProfile): number {
  if (meter.law === 'logarithmic') return (value - meter.max) * (meter.dbPerUnit ?? 1);
  const share = Math.max(value - meter.min, floorUnits(meter)) / (meter.max - meter.min);
  return 10 * Math.log10(share);
}

/** The meter's number at `db` below full scale, on a meter that shows every fraction. */
export const exactFromDb = (db: number, meter: MeterProfile): number =>
  meter.law === 'logarithmic'
    ? meter.max + db / (meter.dbPerUnit ?? 1)
    : meter.min + (meter.max - meter.min) * 10 ** (db / 10);

/** The meter's number at `db` below full scale, rounded to what the meter can show. */
export function fromDb(db: number, meter: MeterProfile): number {
  const steps = Math.round((exactFromDb(db, meter) - meter.min) / meter.resolution);
  return Number((meter.min + steps * meter.resolution).toFixed(6));
}

/** An uncertainty of `units` at `value`, in decibels. */
export function unitsToDb(units: number, value: number, meter: MeterProfile): number {
  if (meter.law === 'logarithmic') return units * (meter.dbPerUnit ?? 1);
  return (TEN_OVER_LN10 * units) / Math.max(value - meter.min, floorUnits(meter));
}

/**
 * Standard deviation of one settled reading, meter units: two that agree lie within the tolerance, so one is
 * within half of it (common practice, no source), and rounding adds to it (resolution / sqrt 12).
 */
export const readingSd = (meter: MeterProfile): number =>
  Math.hypot(meter.tolerance / 2, meter.resolution / Math.sqrt(12));

export const isLost = (reading: Reading, meter: MeterProfile): boolean =>
  reading.kind === 'none' || (reading.kind === 'value' && reading.value <= meter.lostAt);

export const isSaturated = (reading: Reading, meter: MeterProfile): boolean =>
  reading.kind === 'saturated' || (reading.kind === 'value' && reading.value >= meter.saturatedAt);

export const saturatedDb = (meter: MeterProfile): number => toDb(meter.saturatedAt, meter);
export const lostDb = (meter: MeterProfile): number => toDb(meter.lostAt, meter);

/** Puts a reading, or the mean of `n` that agree, on the decibel scale. */
export function toLevel(reading: Reading, meter: MeterProfile, n = 1): Level {
  if (isLost(reading, meter)) return { kind: 'below', db: lostDb(meter) };
  if (isSaturated(reading, meter) || reading.kind !== 'value')
    return { kind: 'above', db: saturatedDb(meter) };
  const units = readingSd(meter) / Math.sqrt(n);
  return {
    kind: 'level',
    db: toDb(reading.value, meter),
    sd: Math.hypot(unitsToDb(units, reading.value, meter), 0.01),
  };
}
