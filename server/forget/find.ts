import { type Names, namesIn, withoutNames } from '../../src/log/names.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { isSameName } from '../../src/model/person.ts';
import { namesNobody } from '../../src/visit/told.ts';
import { wholeLog } from '../record/files.ts';
import { checkNamed } from '../store/check.ts';
import type { Store } from '../store/store.ts';

/** Where a name stands in one log. */
export interface Found {
  readonly job: JobId;
  /** Entries that it lies beside: from there it can be deleted. */
  readonly beside: readonly Seq[];
  /** As it is written there, with what goes with it: each form once. */
  readonly as: readonly string[];
  /** Entries that hold it in their hashed text, in a field for names: made before names could be forgotten. */
  readonly inside: readonly Seq[];
  /** Entries that hold it in free text: what was said, remarks, captions, reasons. */
  readonly loose: readonly Seq[];
  /** The log fails its check. */
  readonly damaged: boolean;
}

/** Every log that a name stands in, in the order in which the store names them. Rejects with `StoreFailure`. */
export async function findName(store: Store, name: string): Promise<Found[]> {
  const all: Found[] = [];
  for (const job of await store.logs()) {
    const { entries } = await wholeLog(store, job);
    const found = inLog(entries, name);
    if (found.beside.length + found.inside.length + found.loose.length === 0) continue;
    all.push({ job, ...found, damaged: (await checkNamed(store, job)) !== undefined });
  }
  return all;
}

function inLog(entries: readonly Entry[], name: string): Omit<Found, 'job' | 'damaged'> {
  const beside: Seq[] = [];
  const inside: Seq[] = [];
  const loose: Seq[] = [];
  const as = new Set<string>();
  for (const { seq, fact, sealed, salt } of entries) {
    const names = namesIn(fact);
    const isSealed = sealed !== undefined;
    // Words stand beside an entry only where they tell who was told.
    const isForNames = isSealed || (fact.type !== 'said' && fact.type !== 'readback');
    if (names && isForNames && (!isSealed || salt !== undefined) && isNamed(names, name)) {
      (isSealed ? beside : inside).push(seq);
      if (isSealed) as.add(textOf(names));
    }
    const free = isForNames ? withoutNames(fact) : fact;
    if (textsIn(free).some((text) => holdsName(text, name))) loose.push(seq);
  }
  return { beside, inside, loose, as: [...as] };
}

function isNamed(
  { person, name: signer, by, note, agreedWith, text, alternatives = [] }: Names,
  name: string,
) {
  const whole = [person?.name, signer, by].some((each) => each !== undefined && isSameName(each, name));
  const told = note !== undefined && !namesNobody(note) ? [note] : [];
  const texts = [...told, agreedWith, text, ...alternatives.map((each) => each.text)];
  return whole || texts.some((each) => each !== undefined && holdsName(each, name));
}

/** For people who must see whether it is the right person. */
function textOf({ person, name, firm, competence, by, note, agreedWith, text }: Names): string {
  const who = person ?? (name === undefined ? undefined : { name, firm, competence });
  if (!who) return by ?? note ?? agreedWith ?? text ?? '';
  return [who.name, who.firm, who.competence].filter((each) => each !== undefined).join(', ');
}

/** Whether the words of the name stand in a text, one behind the other. */
function holdsName(text: string, name: string): boolean {
  return ` ${plain(text)} `.includes(` ${plain(name)} `);
}

const plain = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, ' ')
    .trim();

/** Every text somewhere in a value. */
function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}
