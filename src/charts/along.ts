import { type Curve, curveAlong } from '../engine/curve.ts';
import type { Search } from '../engine/search.ts';
import { type Sample, type Series, type Sweep, type Top, topOf } from '../log/series.ts';
import type { Axis, Eighths } from '../model/turns.ts';

/** What is drawn of one adjuster, whatever the size: its readings, how far they reach, and the fitted beam. Plain data. */
export interface Along {
  readonly sweeps: readonly Sweep[];
  readonly samples: readonly Sample[];
  readonly low: Eighths;
  readonly high: Eighths;
  readonly top: Top | undefined;
  readonly curve: Curve | undefined;
}

/** Since the emitter was last aimed by eye. `search`: as of the same entry as the series. */
export function alongAxis(series: Series, search: Search | undefined, axis: Axis): Along {
  const sweeps = series.sweeps.filter((sweep) => sweep.axis === axis && sweep.aim === series.aim);
  const samples = [...new Set(sweeps.flatMap((sweep) => sweep.samples))];
  const positions = [...samples.map(({ position }) => position[axis]), series.position[axis]];
  const low = Math.min(...positions, -2) - 1;
  const high = Math.max(...positions, 2) + 1;
  const top = topOf(series, axis);
  const curve = search && top && fitted(search, axis, top, low, high);
  return { sweeps, samples, low, high, top, curve };
}

/** With fewer places along an adjuster, its fit is little more than what was assumed before. */
const ENOUGH = 3;

function fitted(search: Search, axis: Axis, top: Top, from: Eighths, to: Eighths): Curve | undefined {
  if (top.below + 1 + top.above < ENOUGH) return undefined;
  const { position, gain } = top.sample;
  const otherAt = position[axis === 'horizontal' ? 'vertical' : 'horizontal'];
  return curveAlong(search, axis, { gain, otherAt, from, to });
}
