import type { Seq } from '../advice.ts';
import type { Fact, JobSetup, Seat } from '../facts.ts';
import type { Entry } from '../log/entry.ts';

/** A fact with its place and time in the log. */
export type Placed<T extends Fact['type']> = Extract<Fact, { type: T }> & { seq: Seq; at: number };

/** A job as its log tells it. Plain data; every screen and the next advice are drawn from it. */
export interface JobState {
  /** Number of entries folded in: the next entry's sequence number. */
  count: number;
  setup?: JobSetup;
  seats: Record<Seat, { device: string; online: boolean } | undefined>;
  /** The instruction that holds now, if any. It must not be spoken or acted on after its `expiresAt`. */
  instruction?: Placed<'instruction'>;
  /** The question that waits for an answer. */
  query?: Placed<'query'>;
  /** The last reading that still counts. */
  reading?: Placed<'reading'>;
  paused: boolean;
  stopped: boolean;
  accepted?: Placed<'accept'>;
}

export declare const EMPTY: JobState;
export declare function fold(state: JobState, entry: Entry): JobState;
