import type { MeterProfile } from '../model/profile.ts';
import { NO_SIGNAL, type Reading, valueReading } from '../model/reading.ts';

/**
 * What the meter should show, by its law, when `lossDb` of the light that gave `clear` is blocked. Undefined
 * where the law or the first reading is not enough to know.
 */
export function readingBehind(clear: Reading, lossDb: number, meter: MeterProfile): Reading | undefined {
  if (clear.kind !== 'value') return undefined;
  const value = valueBehind(clear.value, lossDb, meter);
  if (value === undefined) return undefined;
  return value <= meter.lostAt ? NO_SIGNAL : valueReading(value);
}

function valueBehind(value: number, lossDb: number, meter: MeterProfile): number | undefined {
  switch (meter.law) {
    case 'linear':
      return meter.min + (value - meter.min) * 10 ** (-lossDb / 10);
    case 'logarithmic':
      return value - lossDb / (meter.dbPerUnit ?? 1);
    case 'unknown':
      return undefined;
  }
}

/**
 * Decibels of light lost between two readings: infinite where the second is no signal. Undefined where the
 * meter's law is not known, either reading is saturated, or nobody read a number.
 */
export function lossBetween(clear: Reading, behind: Reading, meter: MeterProfile): number | undefined {
  if (clear.kind !== 'value' || behind.kind === 'saturated' || behind.kind === 'seen') return undefined;
  if (meter.law === 'unknown') return undefined;
  if (behind.kind === 'none' || behind.value <= meter.lostAt) return Number.POSITIVE_INFINITY;
  if (meter.law === 'logarithmic') return (clear.value - behind.value) * (meter.dbPerUnit ?? 1);
  return 10 * Math.log10((clear.value - meter.min) / (behind.value - meter.min));
}
