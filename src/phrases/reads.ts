import type { ReaderKind, ReadKind } from '../model/read-kinds.ts';

/** What an administrator reads about who read what. */

export const READS_NEED_ACCOUNTS =
  'Who read what is for an administrator with an account. This server has no accounts, and knows readers by their links alone.';

export const READS_ARE =
  'One line for each reader, record and hour. Who is not signed in is known only by the link that was used.';
export const NO_READS = 'Nothing was read yet.';

const KINDS: Record<ReadKind, string> = {
  record: 'Record',
  board: 'Board of the site',
  report: 'Report as PDF',
  export: 'Export',
  figures: 'All sites in figures',
  reads: 'Who read what',
};
export const readKindText = (what: ReadKind): string => KINDS[what];

const READERS: Record<Exclude<ReaderKind, 'account'>, string> = {
  link: 'Not signed in',
  forgotten: 'A name that was deleted',
};
export const readerText = (reader: keyof typeof READERS): string => READERS[reader];
