import { found, type Look } from './look.ts';

/** What was corrected later, and what was taken back. */
export const corrections: Look = ({ entries }) => {
  const amending = entries.filter(
    ({ fact }) => fact.type === 'retract' || ('replaces' in fact && fact.replaces !== undefined),
  );
  if (amending.length === 0) return [];
  return [
    found('corrections', {
      severity: 'note',
      entries: amending.map(({ seq }) => seq),
      figures: { count: amending.length },
    }),
  ];
};
