import type { Entry } from '../model/entry.ts';
import type { FactOf } from '../model/facts.ts';
import { FORGOTTEN } from '../model/forgotten.ts';
import { isSameName } from '../model/person.ts';
import { found, type Look } from './look.ts';

type Seated = Entry & { fact: FactOf<'seated'> };
const isSeated = (entry: Entry): entry is Seated => entry.fact.type === 'seated';

const SAME = {
  person: ({ person: a }: FactOf<'seated'>, { person: b }: FactOf<'seated'>) =>
    a !== undefined && b !== undefined && a.name !== FORGOTTEN && isSameName(a.name, b.name),
  phone: ({ phone: a }: FactOf<'seated'>, { phone: b }: FactOf<'seated'>) => a !== undefined && a === b,
} as const;

/**
 * The work is for two: the same person, or the same phone, was in both seats, at once or one after the other. Of names that were
 * forgotten nobody can tell.
 */
export const sameInBoth: Look = ({ entries, commission }) => {
  // Alone they are the same, and the finding of that says so.
  if (commission.setup.alone) return [];
  const seated = entries.filter(isSeated);
  const at = (seat: 'panel' | 'emitter') => seated.filter(({ fact }) => fact.seat === seat);
  const both = (['person', 'phone'] as const).flatMap((what) => {
    const seqs = at('panel').flatMap((one) =>
      at('emitter').flatMap((other) => (SAME[what](one.fact, other.fact) ? [one.seq, other.seq] : [])),
    );
    return seqs.length > 0 ? [{ what, seqs }] : [];
  });
  if (both.length === 0) return [];
  const rests = [...new Set(both.flatMap(({ seqs }) => seqs))].sort((a, b) => a - b);
  return [found('same-in-both', { severity: 'note', entries: rests, about: both.map(({ what }) => what) })];
};
