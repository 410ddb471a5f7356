import { hiddenIn } from '../../src/model/hidden.ts';
import type { Person } from '../../src/model/person.ts';
import type { Storage } from '../browser/storage.ts';

/** Who is at this phone, as it stands in the form. */
export type TypedPerson = Readonly<Record<keyof Person, string>>;

export const NOBODY: TypedPerson = { name: '', firm: '', competence: '' };

const KEY = 'person';

/**
 * The person who used this phone last, so that nobody types it again for every job. Checked by hand: the page to join shows it,
 * and a schema library is larger than that page.
 */
export function ownPerson(storage: Storage): TypedPerson {
  const kept = (storage.read(KEY) ?? {}) as Partial<Record<keyof Person, unknown>>;
  const text = (part: keyof Person) => (typeof kept[part] === 'string' ? kept[part] : '');
  const {
    name,
    firm = '',
    competence = '',
  } = personIn({ name: text('name'), firm: text('firm'), competence: text('competence') }) ?? NOBODY;
  return { name, firm, competence };
}

/** Kept as it will be sent; a form without a name is kept as nobody. */
export function rememberPerson(storage: Storage, typed: TypedPerson): void {
  const person = personIn(typed);
  if (person) storage.write(KEY, person);
  else storage.remove(KEY);
}

/** Undefined without a name: the work goes on, and the record says "not named". Never refused for what it holds. */
export function personIn(typed: TypedPerson): Person | undefined {
  const name = cleaned(typed.name, 80);
  const firm = cleaned(typed.firm, 80);
  const competence = cleaned(typed.competence, 120);
  if (name === '') return undefined;
  return { name, ...(firm !== '' && { firm }), ...(competence !== '' && { competence }) };
}

/** A character that nobody sees comes with what is pasted, and no one can be asked to find it. */
const cleaned = (text: string, most: number): string =>
  [...text]
    .filter((letter) => hiddenIn(letter) === undefined)
    .join('')
    .trim()
    .slice(0, most)
    .trim();
