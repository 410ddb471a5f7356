import * as z from 'zod/mini';
import { JobId } from '../model/ids.ts';
import { ReaderKind, ReadKind } from '../model/read-kinds.ts';
import { KeyId, KeyRole } from './keys.ts';

/** Somebody read something within an hour, once or often. */
export const ReadLine = z.object({
  number: z.int(),
  /** When the hour began, ms. */
  hour: z.int(),
  what: ReadKind,
  reader: ReaderKind,
  /** Of the account. */
  name: z.optional(z.string()),
  /** What the key was that it was read with; none for what an account alone opens. */
  role: z.optional(KeyRole),
  key: z.optional(KeyId),
  /** Whose log: of a job or a site. */
  log: z.optional(JobId),
  site: z.optional(z.string()),
  pair: z.optional(z.string()),
});
export type ReadLine = z.infer<typeof ReadLine>;

const LineNumber = z
  .string()
  .check(z.regex(/^\d{1,15}$/), z.describe('Only lines before the one of this number.'));

/** GET /api/reads?before=&log= */
export const WantReads = z.object({
  before: z.optional(LineNumber),
  log: z.optional(JobId.check(z.describe('Only of this job or site.'))),
});

/** The newest first. `more`: there are older ones. */
export const Reads = z.object({ reads: z.array(ReadLine), more: z.boolean() });
export type Reads = z.infer<typeof Reads>;
