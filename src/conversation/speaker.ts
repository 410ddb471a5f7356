import type { Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { SensorLook } from '../model/sensor.ts';
import type { TurnSoFar } from '../model/turns.ts';

/** Where words come from: who said what, the entry, and the instruction on that person's screen. */
export interface Speaker {
  seat: Seat;
  said: Seq;
  text: string;
  re?: Seq;
  /** The question that was open when the words came. */
  asked?: string;
  /** What that question knew of the turn that it was about. */
  turn?: TurnSoFar;
  /** Nobody said it: a phone heard or saw it. */
  sensor?: SensorLook;
}
