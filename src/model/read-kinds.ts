import * as z from 'zod/mini';

/** What is read. `record`: also as it grows, by a phone that is connected; `reads`: this list itself. */
export const ReadKind = z.enum(['record', 'board', 'report', 'export', 'figures', 'reads']);
export type ReadKind = z.infer<typeof ReadKind>;

/** How it is known who it was: by a link or seat alone, or by an account. `forgotten`: there was a name, and it was deleted. */
export const ReaderKind = z.enum(['link', 'account', 'forgotten']);
export type ReaderKind = z.infer<typeof ReaderKind>;
