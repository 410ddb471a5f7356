import * as z from 'zod/mini';
import { Actor, Fact } from './facts.ts';
import { Hash, type Head, JobId, MessageId, Seq } from './ids.ts';

/** A fact before it is sealed into the log. */
export interface Draft {
  actor: Actor;
  fact: Fact;
  /** The phone's message it came from. */
  ref?: MessageId;
}

/** One entry of a log. The hash is taken over everything but `hash`. */
export const Entry = z.object({
  job: JobId,
  seq: Seq,
  /** Server clock, milliseconds since 1970-01-01 UTC. */
  at: z.int(),
  actor: Actor,
  fact: Fact,
  ref: z.optional(MessageId),
  /** Hash of the entry before; 64 zeros for the first. */
  prev: Hash,
  hash: Hash,
});
export type Entry = z.infer<typeof Entry>;

/** A log as it was read, and where it ends. */
export interface Log {
  readonly entries: readonly Entry[];
  readonly head: Head;
}
