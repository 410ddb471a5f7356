import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { Sample } from '../log/series.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';

/** Height of the strips outside the scale for readings without a number, pixels. */
const STRIP = 30;
/** Free space above and below the readings, as a part of their span. */
const SLACK = 0.08;

/** Where readings are on the vertical axis, in pixels. */
export interface Levels {
  scale: ScaleLinear<number, number>;
  /** Middle of the strips; missing if no such reading is shown. */
  saturated?: number;
  none?: number;
  y(reading: Reading): number;
}

/** The axis over `height` pixels, from `upper` down. */
export function levels(
  samples: readonly Pick<Sample, 'reading'>[],
  meter: MeterProfile,
  height: number,
  upper = 0,
): Levels {
  const has = (kind: Reading['kind']) => samples.some(({ reading }) => reading.kind === kind);
  const lower = upper + height;
  const top = upper + (has('saturated') ? STRIP : 0);
  const bottom = lower - (has('none') ? STRIP : 0);
  const scale = scaleLinear().domain(span(samples, meter)).range([bottom, top]);
  const saturated = upper + STRIP / 2;
  const none = lower - STRIP / 2;
  return {
    scale,
    ...(top > upper && { saturated }),
    ...(bottom < lower && { none }),
    y(reading) {
      if (reading.kind === 'value') return scale(reading.value);
      return reading.kind === 'saturated' ? saturated : none;
    },
  };
}

function span(samples: readonly Pick<Sample, 'reading'>[], meter: MeterProfile): [number, number] {
  const values = samples.flatMap(({ reading }) => (reading.kind === 'value' ? [reading.value] : []));
  if (values.length === 0) return [meter.min, meter.max];
  const low = Math.min(...values);
  const high = Math.max(...values);
  // A flat run of readings must not be enlarged until its noise looks like a slope.
  const slack = Math.max((high - low) * SLACK, meter.tolerance * 4);
  return [Math.min(low, Math.max(meter.min, low - slack)), Math.max(high, Math.min(meter.max, high + slack))];
}
