import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { decimalsOf, stepsOf } from '../model/shown.ts';
import type { FinalReading } from '../visit/final.ts';
import { placesBeside } from './beside-limits.ts';

/** Digits after the decimal point that the meter shows. */
export const decimals = (meter: MeterProfile): number => decimalsOf(stepsOf(meter));

/**
 * A number as the meter shows it, and never on another side of the band, or of the meter's limits, than it is. Trailing
 * zeros stay, so that 50.0 is not taken for a whole-number meter.
 */
export function valueText(value: number, meter: MeterProfile): string {
  const { lostAt, bandLow, bandHigh, saturatedAt } = meter;
  return value.toFixed(placesBeside(value, [lostAt, bandLow, bandHigh, saturatedAt], decimals(meter)));
}

/** A difference of two readings: the band is no limit of it. */
const differenceText = (value: number, meter: MeterProfile): string => value.toFixed(decimals(meter));

/** "up 6", "down 0.05", "the same": what changed since the reading before, as the meter shows it. */
export function changeText(value: number, before: number, meter: MeterProfile): string {
  const change = differenceText(Math.abs(value - before), meter);
  if (Number(change) === 0) return 'the same';
  return `${value > before ? 'up' : 'down'} ${change}`;
}

/** "142", "no signal", "saturated". */
export function readingText(reading: Reading, meter: MeterProfile): string {
  switch (reading.kind) {
    case 'none':
      return 'no signal';
    case 'saturated':
      return 'saturated';
    case 'seen':
      return 'light, no number';
    case 'value':
      return valueText(reading.value, meter);
  }
}

/** What a final reading counts as. */
export const FINAL_AS: Record<FinalReading['as'], string> = {
  'after-tests': 'after the tests',
  accepted: 'when accepted',
  'last-read': 'last read, not accepted',
};

/** "142 counts", "142 counts, not accepted": the last reading of a visit, in a few words. */
export const finalText = ({ reading, as }: FinalReading, meter: MeterProfile): string =>
  `${readingWithUnit(reading, meter)}${as === 'last-read' ? ', not accepted' : ''}`;

/** "142 counts"; without a number there is no unit. */
export const readingWithUnit = (reading: Reading, meter: MeterProfile): string =>
  reading.kind === 'value' ? `${readingText(reading, meter)} ${meter.unit}` : readingText(reading, meter);
