import * as z from 'zod/mini';
import { Head, JobId } from '../../src/model/ids.ts';

export const MANIFEST_FILE = 'manifest.json';
export const READS_FILE = 'who-read.jsonl';
export const ENTRIES_FILE = 'entries.jsonl';
export const ACCOUNTS_FILE = 'accounts.json';
export const HEADS_FILE = 'signed-heads.jsonl';
export const STAMPS_FILE = 'stamps.jsonl';

const common = {
  format: z.literal('ladderline-own-data'),
  version: z.literal(1),
  /** When it was begun, ms since 1970. */
  at: z.int(),
  /** Lines of who read what. */
  reads: z.int(),
};

const Count = z.int().check(z.nonnegative());

/** What an export of one's data says of itself. */
export const Manifest = z.discriminatedUnion('of', [
  z.object({
    ...common,
    of: z.literal('firm'),
    /** As the database knows it; '' where one firm has the records for itself. */
    firm: z.string(),
    records: z.array(
      z.object({
        file: z.string(),
        head: Head,
        /** The log fails its check: it is in the export as it is. */
        damaged: z.optional(z.literal(true)),
      }),
    ),
    /** Practice is no record of anything, and is left out: so many. */
    practice: Count,
    /** Logs that something names, and of which no entry is left. */
    lost: z.array(JobId),
    signedHeads: Count,
    stamps: Count,
  }),
  z.object({
    ...common,
    of: z.literal('person'),
    name: z.string(),
    records: z.array(
      z.object({
        head: Head,
        site: z.optional(z.string()),
        pair: z.optional(z.string()),
        /** Entries that the name lies beside, that hold it in their hashed text, and that hold it in free text. */
        beside: z.array(Count),
        inside: z.array(Count),
        text: z.array(Count),
        damaged: z.optional(z.literal(true)),
      }),
    ),
  }),
]);
export type Manifest = z.infer<typeof Manifest>;
