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
