import type { Seq } from '../advice.ts';
import type { Alternative, JobSetup, Seat, Via } from '../facts.ts';
import type { Draft } from '../log/entry.ts';
import type { Refusal } from '../protocol.ts';
import type { JobState } from './state.ts';

/** What can happen to a job from outside. */
export type Input =
  | { kind: 'open'; setup: JobSetup }
  | { kind: 'seated'; seat: Seat; device: string; takeover: boolean }
  | { kind: 'link'; seat: Seat; online: boolean }
  | {
      kind: 'words';
      seat: Seat;
      via: Via;
      text: string;
      confidence?: number;
      alternatives?: Alternative[];
      /** The instruction on the speaker's screen. */
      re?: Seq;
    }
  | { kind: 'unheard'; seat: Seat; why: 'silence' | 'unavailable' | 'timeout' | 'failed' | 'cut-short' }
  | { kind: 'remark'; seat: Seat; text: string }
  | { kind: 'correct'; seat: Seat; target: Seq; text: string }
  | { kind: 'take-back'; seat: Seat; target: Seq }
  | { kind: 'override'; seat: Seat; reason: string }
  /** Time has passed. */
  | { kind: 'tick' };

/** What it leads to: facts for the log, in order, and when to `tick` again; or a named refusal. */
export type Response =
  | { kind: 'facts'; drafts: Draft[]; wakeAt?: number }
  | { kind: 'refused'; reason: Refusal; text: string };

/** Pure: the same state, input and time give the same response. */
export declare function respond(state: JobState, input: Input, now: number): Response;
