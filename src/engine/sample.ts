import type { Axis, Eighths } from '../model/turns.ts';
import type { Pointing } from './slack.ts';
import type { Settled } from './stay.ts';

/** One turn of one adjuster; clockwise is positive. */
export interface Turn {
  readonly axis: Axis;
  readonly eighths: Eighths;
}

export type PerAxis<T> = Readonly<Record<Axis, T>>;

/** A settled reading with where it was taken. */
export interface Sample extends Settled {
  /** Where the screws stood, eighths from the start. */
  readonly turned: PerAxis<Eighths>;
  readonly pointing: PerAxis<Pointing>;
  /** Which gain setting it was taken at: 0 as found, one more with each change. */
  readonly gain: number;
}
