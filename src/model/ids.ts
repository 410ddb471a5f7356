import * as z from 'zod/mini';

/** Names one log: a job's or a site's. */
export const JobId = z.string().check(z.regex(/^[A-Za-z0-9_-]{8,32}$/));
export type JobId = z.infer<typeof JobId>;

/** Sequence number of a log entry. */
export const Seq = z.int().check(z.nonnegative());
export type Seq = z.infer<typeof Seq>;

/** SHA-256 in lower-case hexadecimal. */
export const Hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));
export type Hash = z.infer<typeof Hash>;

/** The id a phone gives a message, so that the same message sent twice is logged once. */
export const MessageId = z.string().check(z.regex(/^[A-Za-z0-9_-]{8,40}$/));
export type MessageId = z.infer<typeof MessageId>;

/** Where a log ends: enough to see that its end was not cut off. */
export const Head = z.object({ job: JobId, count: z.int().check(z.nonnegative()), hash: Hash });
export type Head = z.infer<typeof Head>;
