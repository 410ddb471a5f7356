import type { Seq } from '../model/ids.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import type { Pointing } from './slack.ts';
import type { Settled } from './stay.ts';

/** One turn of one adjuster; clockwise is positive. */
export interface Turn {
  readonly axis: Axis;
  readonly eighths: Eighths;
}

export type PerAxis<T> = Readonly<Record<Axis, T>>;

/** A settled reading, with the place where it was taken. */
export interface Sample extends Settled {
  /** Positions of the screws, eighths from the start. */
  readonly turned: PerAxis<Eighths>;
  readonly pointing: PerAxis<Pointing>;
  /** Turns of each screw before it: every one may have strayed a little (`HAND_SD`). */
  readonly turns: PerAxis<number>;
  /** The newest turn before it, as it was reported. */
  readonly move: { readonly seq: Seq; readonly turn: Turn } | undefined;
  /** Its gain setting: 0 as found, one more with each change. */
  readonly gain: number;
}
