import type { Person } from '../model/person.ts';

export const NOT_NAMED = 'not named';

/** "A. Example (Larkmoor Fire Systems; card 1234)" */
export function personText(person: Person | undefined): string {
  if (!person) return NOT_NAMED;
  const { name, firm, competence } = person;
  const more = [firm, competence].filter((text) => text !== undefined);
  return more.length === 0 ? name : `${name} (${more.join('; ')})`;
}
