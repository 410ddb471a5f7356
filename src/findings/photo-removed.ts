import { found, type Look } from './look.ts';

/** A picture was taken out of the record, with a reason; which photo it was, and who took it, stays. */
export const photoRemoved: Look = ({ end: { photos } }) => {
  const gone = photos.flatMap(({ seq, removed }) => (removed ? [seq, removed.seq] : []));
  if (gone.length === 0) return [];
  const entries = gone.toSorted((a, b) => a - b);
  return [found('photo-removed', { severity: 'note', entries, figures: { count: gone.length / 2 } })];
};
