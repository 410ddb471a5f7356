import type { Entry } from './entry.ts';
import type { Seat } from './facts.ts';
import type { Person } from './person.ts';

/** Whose words or deed an entry is: the seat that said it, or that it is about. */
export function seatOf({ actor, fact }: Pick<Entry, 'actor' | 'fact'>): Seat | undefined {
  if (actor === 'panel' || actor === 'emitter') return actor;
  return 'seat' in fact ? fact.seat : undefined;
}

/**
 * The person behind each entry, by its number: who was in its seat when it was logged, or who signed. Undefined for
 * entries of the program itself, and where nobody was named.
 */
export function peopleOf(entries: readonly Entry[]): readonly (Person | undefined)[] {
  const there: Partial<Record<Seat, Person>> = {};
  return entries.map((entry) => {
    const { fact } = entry;
    if (fact.type === 'signed') {
      const { name, firm, competence } = fact;
      return { name, ...(firm && { firm }), ...(competence && { competence }) };
    }
    if (fact.type === 'seated') {
      delete there[fact.seat];
      if (fact.person) there[fact.seat] = fact.person;
    }
    const seat = seatOf(entry);
    return seat && there[seat];
  });
}
