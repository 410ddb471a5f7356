import * as z from 'zod/mini';
import type { Draft, Entry } from '../model/entry.ts';
import { Alternative, type Fact, type FactOf, Signature } from '../model/facts.ts';
import { FORGOTTEN } from '../model/forgotten.ts';
import type { Seq } from '../model/ids.ts';
import { Person } from '../model/person.ts';
import type { Placed } from '../model/placed.ts';

/**
 * Names of people, kept so that they can be forgotten. The hashed body of an entry has, in place of the fields below, one
 * hash in `sealed`; the fields lie beside it with a salt. Each entry has a salt of its own: what stays says neither who it
 * was, nor which entries were of one person.
 */
const OF_PEOPLE = {
  seated: ['person'],
  signed: ['name', 'firm', 'competence', 'signature'],
  'watcher-remark': ['by'],
  item: ['note'],
  variation: ['agreedWith'],
  /** Only some of them: `isNamed`. */
  said: ['text', 'alternatives'],
  readback: ['text'],
} as const satisfies { [T in Fact['type']]?: readonly (keyof FactOf<T>)[] };

/** Fields of one fact that name people, as they stand in the fact. */
export const Names = z.partial(
  z.object({
    person: Person,
    name: z.string(),
    firm: z.string(),
    competence: z.string(),
    signature: Signature,
    by: z.string(),
    note: z.string(),
    agreedWith: z.string(),
    text: z.string(),
    alternatives: z.array(Alternative),
  }),
);
export type Names = z.infer<typeof Names>;

/** What stands where names were forgotten. */
const PLACEHOLDERS: Readonly<Record<keyof typeof OF_PEOPLE, Names>> = {
  seated: { person: { name: FORGOTTEN } },
  signed: { name: FORGOTTEN, signature: { kind: 'typed', text: FORGOTTEN } },
  'watcher-remark': { by: FORGOTTEN },
  item: { note: FORGOTTEN },
  variation: { agreedWith: FORGOTTEN },
  said: { text: FORGOTTEN },
  readback: { text: FORGOTTEN },
};

type Told = { readonly type?: unknown; readonly item?: unknown };

/** Of the notes to a checklist only the one that says who was told names somebody. */
function kindOf(fact: Told | null | undefined): keyof typeof OF_PEOPLE | undefined {
  const { type, item } = fact ?? {};
  if (typeof type !== 'string' || !Object.hasOwn(OF_PEOPLE, type)) return undefined;
  return type === 'item' && item !== 'people-told' ? undefined : (type as keyof typeof OF_PEOPLE);
}

/** Those of its fields that name people. */
export const fieldsOf = (fact: Told): readonly string[] => {
  const kind = kindOf(fact);
  return kind ? OF_PEOPLE[kind] : [];
};

/** Of a fact whose form nobody has checked, too. */
const only = (fact: object | undefined, keep: (field: string) => boolean): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(fact ?? {}).filter(([field, value]) => value !== undefined && keep(field)),
  );

/**
 * Whether what names people in a draft is to lie beside its entry. `together`: all drafts that one input led to. Words and what
 * is read back of them only where they tell who was told, and no reading: a reading must be found in its words for ever.
 */
export function isNamed({ fact }: Pick<Draft, 'fact'>, together: readonly Draft[]): boolean {
  if (!namesIn(fact)) return false;
  if (fact.type !== 'said' && fact.type !== 'readback') return true;
  const tells = together.some((each) => each.fact.type === 'item' && namesIn(each.fact) !== undefined);
  return tells && together.every((each) => each.fact.type !== 'reading');
}

/** Undefined where a fact has nothing that names people, or may. */
export function namesIn(fact: Fact): Names | undefined {
  const fields = fieldsOf(fact);
  const names = only(fact, (field) => fields.includes(field));
  return Object.keys(names).length > 0 ? names : undefined;
}

/** The fact as it stands in the hashed body. */
export function withoutNames(fact: Fact): object {
  const fields = fieldsOf(fact);
  return only(fact, (field) => !fields.includes(field));
}

/** A fact of a hashed body with what lies beside it; where that is gone, with what says so. It checks nothing. */
export function withNames(open: object, names: Names | undefined): Fact {
  const kind = kindOf(open);
  return { ...open, ...(names ?? (kind && PLACEHOLDERS[kind])) } as Fact;
}

/** What stands in a fact for the names that it had. */
export function placeholdersOf(fact: Fact): Names {
  const kind = kindOf(fact);
  return kind ? PLACEHOLDERS[kind] : {};
}

/** The entries whose names were forgotten, as the log itself says. */
export function forgottenIn(entries: Iterable<Pick<Entry, 'seq' | 'fact'>>): Set<Seq> {
  const forgotten = new Set<Seq>();
  // A log is read here before anybody has checked its form.
  for (const { seq: by, fact } of entries)
    if (fact?.type === 'names-forgotten' && Array.isArray(fact.entries))
      for (const seq of fact.entries) if (seq < by) forgotten.add(seq);
  return forgotten;
}

/** When and why the names of this entry were forgotten, and the entry that says so. */
export function forgettingOf(
  entries: Iterable<Entry>,
  forgotten: Seq,
): Placed<'names-forgotten'> | undefined {
  for (const { seq, at, fact } of entries)
    if (fact.type === 'names-forgotten' && fact.entries.includes(forgotten)) return { ...fact, seq, at };
  return undefined;
}

/** The entry without its names, as one reads it from now on. An entry that has none, or stands open, stays what it is. */
export function forget(entry: Entry): Entry {
  const { salt, ...kept } = entry;
  if (salt === undefined || entry.sealed === undefined) return entry;
  return { ...kept, fact: withNames(withoutNames(entry.fact), undefined) };
}

/** A copy of a log that was made before names were forgotten, with what its later entries say. */
export function asForgotten(entries: readonly Entry[]): readonly Entry[] {
  const forgotten = forgottenIn(entries);
  if (forgotten.size === 0) return entries;
  return entries.map((entry) => (forgotten.has(entry.seq) ? forget(entry) : entry));
}

/** Whether the names of this entry are there no more. */
export const isForgotten = ({ sealed, salt }: Pick<Entry, 'sealed' | 'salt'>): boolean =>
  sealed !== undefined && salt === undefined;

/** How many entries have their names no more. */
export const forgottenCount = (entries: readonly Entry[]): number => entries.filter(isForgotten).length;
