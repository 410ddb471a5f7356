import { type ScaleLinear, scaleLinear } from 'd3-scale';
import type { Sample } from '../../src/log/series.ts';
import type { MeterProfile } from '../../src/profile.ts';
import type { Reading } from '../../src/reading.ts';

/** Height of the strips beyond the scale where readings without a number are marked, pixels. */
const STRIP = 30;
/** Free space above and below the readings, as a part of their span. */
const SLACK = 0.08;

/** Where readings stand on the upright axis, in pixels from the top of the plot. */
export interface Levels {
  scale: ScaleLinear<number, number>;
  /** Middle of the strips; absent where no such reading is shown. */
  saturated?: number;
  none?: number;
  y(reading: Reading): number;
}

export function levels(samples: readonly Sample[], meter: MeterProfile, height: number): Levels {
  const has = (kind: Reading['kind']) => samples.some(({ reading }) => reading.kind === kind);
  const top = has('saturated') ? STRIP : 0;
  const bottom = height - (has('none') ? STRIP : 0);
  const scale = scaleLinear().domain(span(samples, meter)).range([bottom, top]);
  const saturated = STRIP / 2;
  const none = height - STRIP / 2;
  return {
    scale,
    ...(top > 0 && { saturated }),
    ...(bottom < height && { none }),
    y(reading) {
      if (reading.kind === 'value') return scale(reading.value);
      return reading.kind === 'saturated' ? saturated : none;
    },
  };
}

function span(samples: readonly Sample[], meter: MeterProfile): [number, number] {
  const values = samples.flatMap(({ reading }) => (reading.kind === 'value' ? [reading.value] : []));
  if (values.length === 0) return [meter.min, meter.max];
  const low = Math.min(...values);
  const high = Math.max(...values);
  // A flat run of readings must not be blown up until its noise looks like a slope.
  const slack = Math.max((high - low) * SLACK, meter.tolerance * 4);
  return [Math.min(low, Math.max(meter.min, low - slack)), Math.max(high, Math.min(meter.max, high + slack))];
}
