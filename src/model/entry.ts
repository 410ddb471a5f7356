import * as z from 'zod/mini';
import { Actor, Fact } from './facts.ts';
import { Salt } from './forgotten.ts';
import { Hash, type Head, JobId, MessageId, Seq } from './ids.ts';

/** A fact before it is sealed into the log. */
export interface Draft {
  actor: Actor;
  fact: Fact;
  /** The phone's message it came from. */
  ref?: MessageId;
}

/**
 * One entry of a log. The hash is taken over everything but `hash` and `salt`, and where the entry has `sealed`, without the
 * fields of the fact that name people.
 */
export const Entry = z.object({
  job: JobId,
  seq: Seq,
  /** Server clock, milliseconds since 1970-01-01 UTC. */
  at: z.int(),
  actor: Actor,
  fact: Fact,
  ref: z.optional(MessageId),
  /** SHA-256 of `salt` and of what names people in the fact. Without it they stand in the hashed body, as in older logs. */
  sealed: z.optional(Hash),
  /** Beside the entry, with the names. Where it is missing, they were forgotten. */
  salt: z.optional(Salt),
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
