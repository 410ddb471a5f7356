import { amendments } from '../log/amendments.ts';
import type { Entry } from '../model/entry.ts';
import type { Fact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { peopleOf } from '../model/people.ts';
import type { Person } from '../model/person.ts';
import type { MeterProfile } from '../model/profile.ts';
import { describe, type Line } from '../phrases/describe.ts';

/** One entry as it is shown. */
export interface Item extends Line {
  seq: Seq;
  at: number;
  fact: Fact;
  /** The name of who was in the seat then, or who signed, if it is known. */
  person?: string;
  /** The entry that took it back, or corrected it. */
  amended?: { by: Seq; how: 'taken back' | 'corrected' };
}

/** What was said, with what followed at once: the facts understood from it and their read-back. */
export interface Passage extends Item {
  madeOfIt: Item[];
}

/** The log as a conversation, oldest first. */
export function exchange(entries: readonly Entry[], meter: MeterProfile | undefined): Passage[] {
  const { takenBackBy } = amendments(entries);
  const people = peopleOf(entries);
  const passages: Passage[] = [];
  for (const entry of entries) {
    const line = describe(entry, meter);
    if (!line) continue;
    const { seq, at, fact } = entry;
    const by = takenBackBy.get(seq);
    const how = by !== undefined && entries[by]?.fact.type === 'retract' ? 'taken back' : 'corrected';
    const item: Item = {
      ...line,
      seq,
      at,
      fact,
      ...personOf(entry, people[seq]),
      ...(by !== undefined && { amended: { by, how } }),
    };
    const passage = passages.at(-1);
    if (passage && belongs(entry, passage)) passage.madeOfIt.push(item);
    else passages.push({ ...item, madeOfIt: [] });
  }
  return passages;
}

/** A line of the program itself has none. */
const personOf = ({ actor }: Entry, person: Person | undefined): Pick<Item, 'person'> =>
  person && (actor === 'panel' || actor === 'emitter') ? { person: person.name } : {};

function belongs({ fact }: Entry, passage: Passage): boolean {
  if ('from' in fact && fact.from !== undefined) return fact.from === passage.seq;
  if (fact.type !== 'readback') return false;
  return fact.of === passage.seq || passage.madeOfIt.some(({ seq }) => seq === fact.of);
}
