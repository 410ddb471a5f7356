import type { FactOf } from '../model/facts.ts';

/** A watcher's remark, as it is shown and said to both seats. */
export const watcherRemarkText = ({ by, text }: Pick<FactOf<'watcher-remark'>, 'by' | 'text'>): string =>
  `${by} is watching and says: ${text}`;

/** At the top of both seats' screens. `names`: of those who gave one. */
export function watchedByText(watchers: number, names: readonly string[]): string {
  if (names.length === 0) return `${watchers} watching`;
  const others = watchers - names.length;
  return `${names.join(', ')}${others > 0 ? ` and ${others} more` : ''} watching`;
}

export const REMARK_TITLE = 'Say something to the crew';
export const REMARK_HINT = 'Both phones show it and say it. It stays in the record, under your name.';
export const REMARK_NAME = 'Your name';
export const REMARK_WORDS = 'Your remark';
export const REMARK_SEND = 'Send to the crew';
/** `waiting`: remarks that the server has not confirmed yet. */
export const remarkWaitsText = (waiting: number): string =>
  waiting === 1 ? 'One remark waits to be sent.' : `${waiting} remarks wait to be sent.`;
export const REMARK_SENT = 'The remark is in the record.';
