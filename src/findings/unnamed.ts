import type { Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { seatOf } from '../model/people.ts';
import { found, type Look } from './look.ts';

/** Somebody in a seat reported something, and nobody knows who it was. Logs of before names have the same. */
export const unnamed: Look = ({ entries }) => {
  const since: Partial<Record<Seat, Seq>> = {};
  const nameless = new Map<Seq, Seat>();
  for (const entry of entries) {
    const { seq, fact } = entry;
    if (fact.type === 'seated') {
      delete since[fact.seat];
      if (!fact.person) since[fact.seat] = seq;
      continue;
    }
    const seat = entry.actor === 'server' ? undefined : seatOf(entry);
    const began = seat && since[seat];
    if (seat && began !== undefined) nameless.set(began, seat);
  }
  if (nameless.size === 0) return [];
  const seats = [...new Set(nameless.values())];
  return [
    found('unnamed', { severity: 'note', entries: [...nameless.keys()].sort((a, b) => a - b), about: seats }),
  ];
};
