import { predict } from '../engine/beam.ts';
import { exactFromDb, toLevel } from '../engine/level.ts';
import { look } from '../engine/view.ts';
import type { JobState } from './state.ts';

/** Readings that would not surprise, in the meter's units. */
export interface Expectation {
  low: number;
  high: number;
}

/**
 * How far off a reading may be before it surprises, dB: a factor of five on a linear scale. So both of thirteen
 * and thirty, up to nineteen and ninety, are expected or neither is: what was known before never decides
 * between them.
 */
const OFF_DB = 7;
const SDS = 3;

/**
 * Which readings are plausible now: around what the meter last showed here and what the beam predicts; the whole
 * scale where neither says anything. Undefined before the job is opened.
 */
export function expectedReadings({ search }: JobState): Expectation | undefined {
  if (!search) return undefined;
  const { meter, path, stay, turned, pointing, gain } = search;
  const scale = { low: meter.min, high: meter.max };
  if (path !== 'clear') return scale;

  const known: { value: number; sd: number }[] = [];
  const last = stay.run.at(-1);
  if (last) {
    const level = toLevel(last.reading, meter);
    // What floods or starves the meter may become anything.
    if (level.kind !== 'level') return scale;
    known.push({ value: level.db, sd: level.sd });
  }
  const { beam, samples } = look(search);
  const any = samples.at(-1);
  const predicted = beam && any && predict(beam, { ...any, turned, pointing, gain });
  if (predicted) known.push(predicted);
  if (known.length === 0) return scale;

  const inScale = (db: number) => Math.min(meter.max, Math.max(meter.min, exactFromDb(db, meter)));
  return {
    low: inScale(Math.min(...known.map(({ value, sd }) => value - SDS * sd - OFF_DB))),
    high: inScale(Math.max(...known.map(({ value, sd }) => value + SDS * sd + OFF_DB))),
  };
}
