import type { Actor } from '../model/facts.ts';
import type { Person } from '../model/person.ts';

/** The words of the report's table of the entries that it names. */
export const ENTRY_COLUMNS = {
  entry: 'Entry',
  time: 'Time',
  by: 'By',
  text: 'What it says',
  namedIn: 'Named in',
} as const;

const WHERE: Readonly<Record<Actor, string>> = {
  panel: 'Panel',
  emitter: 'Emitter',
  engine: 'Ladderline',
  server: 'Ladderline',
  supervisor: 'Desk',
};

/** "A. Example, panel"; "Panel" where nobody was named; "Ladderline" where no person did it. */
export function byText(actor: Actor, person: Person | undefined): string {
  const where = WHERE[actor];
  return person && where !== WHERE.server ? `${person.name}, ${where.toLowerCase()}` : where;
}
