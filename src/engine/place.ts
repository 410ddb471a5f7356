import { AXES, type Eighths } from '../model/turns.ts';
import type { PerAxis, Sample } from './sample.ts';

/** The positions of the screws, and the gain setting. */
export interface Place {
  readonly gain: number;
  readonly turned: PerAxis<Eighths>;
}

export const isSamePlace = (a: PerAxis<Eighths>, b: PerAxis<Eighths>): boolean =>
  AXES.every((axis) => a[axis] === b[axis]);

/** The newest reading at a place and gain: it counts more than the older ones. */
export const newestAt = (samples: readonly Sample[], { gain, turned }: Place): Sample | undefined =>
  samples.findLast((s) => s.gain === gain && isSamePlace(s.turned, turned));
