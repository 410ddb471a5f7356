import type { Entry } from '../../src/model/entry.ts';
import { Seat } from '../../src/model/facts.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { Key } from '../../src/protocol/keys.ts';
import type { LastSeen } from '../guard/last-seen.ts';
import { keyIdOf } from '../guard/secrets.ts';
import type { Member } from '../jobs/room.ts';
import { wholeLog } from '../record/files.ts';
import type { Digest, HeldPass, Store } from '../store/store.ts';

/** What a log says of a seat: who took it when, and when its phone was last known to come or go. */
function sittingsIn(entries: readonly Entry[]) {
  const sittings = new Map<Seat, { since: number; seen: number; device: string; people: Key['people'] }>();
  for (const { at, fact } of entries) {
    if (fact.type === 'seated') {
      const people = fact.person ? [fact.person] : [];
      const since = fact.handedOn ? (sittings.get(fact.seat)?.since ?? at) : at;
      sittings.set(fact.seat, { since, seen: at, device: fact.device, people });
    } else if (fact.type === 'link') {
      const sitting = sittings.get(fact.seat);
      if (sitting) sittings.set(fact.seat, { ...sitting, seen: at });
    }
  }
  return sittings;
}

/** When links of this role were last exchanged, or else when the log was opened. */
function givenOut(entries: readonly Entry[], role: HeldPass['role']): number {
  const exchanged = entries.findLast(({ fact }) => fact.type === 'key-withdrawn' && fact.role === role);
  return (exchanged ?? entries[0])?.at ?? 0;
}

/** Every key of a job or site that is good now, the longest held first. `own`: the token that was asked with. */
export async function keysOf(
  store: Store,
  job: JobId,
  { seen, members, own }: { seen: LastSeen; members: Iterable<Member>; own: Digest },
): Promise<Key[]> {
  const { entries } = await wholeLog(store, job);
  const sittings = sittingsIn(entries);
  const connected = [...members];
  const held = await store.passes(job);
  const keys = held.map(({ token, role }): Key => {
    const here = connected.filter((member) => member.key === token);
    const seat = Seat.safeParse(role);
    const sitting = seat.success ? sittings.get(seat.data) : undefined;
    const last = Math.max(seen.of(token) ?? 0, sitting?.seen ?? 0);
    const watching = here.flatMap(({ name }) => (name === undefined ? [] : [{ name }]));
    return {
      key: keyIdOf(token),
      role,
      since: sitting?.since ?? givenOut(entries, role),
      ...(last > 0 && { seen: last }),
      online: here.length,
      ...(sitting && { device: sitting.device }),
      people: sitting?.people ?? watching,
      own: token === own,
    };
  });
  return keys.sort((a, b) => a.since - b.since);
}
