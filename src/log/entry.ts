import { z } from 'zod';
import { Seq } from '../advice.ts';
import { Actor, Fact } from '../facts.ts';

export const JobId = z.string().regex(/^[A-Za-z0-9_-]{8,32}$/);
export type JobId = z.infer<typeof JobId>;

/** SHA-256 in lower-case hexadecimal. */
export const Hash = z.string().regex(/^[0-9a-f]{64}$/);

/** The id a phone gives a message, so that the same message sent twice is logged once. */
export const MessageId = z.string().regex(/^[A-Za-z0-9_-]{8,40}$/);
export type MessageId = z.infer<typeof MessageId>;

/** A fact on its way into the log. */
export interface Draft {
  actor: Actor;
  fact: Fact;
  /** The phone's message it came from. */
  ref?: MessageId;
}

/** One entry of a job's log: everything but `hash` is what the hash is taken over. */
export const Entry = z.object({
  job: JobId,
  seq: Seq,
  /** Server clock, milliseconds since 1970-01-01 UTC. */
  at: z.number().int(),
  actor: Actor,
  fact: Fact,
  ref: MessageId.optional(),
  /** Hash of the entry before; 64 zeros for the first. */
  prev: Hash,
  hash: Hash,
});
export type Entry = z.infer<typeof Entry>;

/** Where a log ends: enough to see that none of its tail was cut. */
export const Head = z.object({ job: JobId, count: z.number().int().nonnegative(), hash: Hash });
export type Head = z.infer<typeof Head>;
