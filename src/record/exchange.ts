import { amendments } from '../log/amendments.ts';
import type { Entry } from '../model/entry.ts';
import type { Fact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { MeterProfile } from '../model/profile.ts';
import { describe, type Line } from '../phrases/describe.ts';

/** One entry as it is shown. */
export interface Item extends Line {
  seq: Seq;
  at: number;
  fact: Fact;
  /** The entry that took it back, or corrected it. */
  amended?: { by: Seq; how: 'taken back' | 'corrected' };
}

/** What was said, with what was made of it at once: the facts taken from it and their read-back. */
export interface Turn extends Item {
  madeOfIt: Item[];
}

/** The log as a conversation, oldest first. */
export function talk(entries: readonly Entry[], meter: MeterProfile | undefined): Turn[] {
  const { takenBackBy } = amendments(entries);
  const turns: Turn[] = [];
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
      ...(by !== undefined && { amended: { by, how } }),
    };
    const turn = turns.at(-1);
    if (turn && belongs(entry, turn)) turn.madeOfIt.push(item);
    else turns.push({ ...item, madeOfIt: [] });
  }
  return turns;
}

function belongs({ fact }: Entry, turn: Turn): boolean {
  if ('from' in fact && fact.from !== undefined) return fact.from === turn.seq;
  if (fact.type !== 'readback') return false;
  return fact.of === turn.seq || turn.madeOfIt.some(({ seq }) => seq === fact.of);
}

/** The lines that hold every one of the words, in any case; "#12" is an entry. */
export function matching(turns: readonly Turn[], wanted: string): readonly Turn[] {
  const words = wanted.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return turns;
  return turns.filter((turn) => {
    const items = [turn, ...turn.madeOfIt];
    const text = items.map((item) => item.text.toLowerCase()).join('\n');
    return words.every((word) => text.includes(word) || items.some(({ seq }) => word === `#${seq}`));
  });
}
