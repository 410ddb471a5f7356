import { type AloneWay, isOnePhone } from '../../src/model/alone.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { FactOf, Seat } from '../../src/model/facts.ts';
import type { Seq } from '../../src/model/ids.ts';
import { isMine } from '../../src/model/mine.ts';
import type { Mounting } from '../../src/model/mounting.ts';
import type { Placed } from '../../src/model/placed.ts';
import { beamText } from '../../src/phrases/mounting.ts';
import { forTheLadder } from '../../src/phrases/readbacks.ts';
import { watcherRemarkText } from '../../src/phrases/watching.ts';
import { aloud } from '../language/aloud.ts';
import type { Link } from '../link/link.ts';
import { cueFor } from './cues.ts';
import type { SpeakerEvent } from './speaker.ts';

/** A read-back or a question is spoken only while it is fresh. */
const FRESH_MS = 10_000;

export interface ScriptClock {
  /** This phone's clock, ms. */
  now: number;
  /** Server clock minus this phone's, ms. */
  offset: number;
}

/** What an entry is said by: `of`, the entry that a read-back is about; `mounting`, how the emitter hangs. */
export interface Around {
  of?: Pick<Entry, 'actor'> | undefined;
  mounting?: Mounting | undefined;
  /** One person alone, and how. */
  alone?: AloneWay | undefined;
}

/**
 * What the phone of `seat` says about an entry that has just come on a live link. The phone on the ladder says less: not the orders to read the meter, and of a reading only its change.
 */
export function lineFor(
  entry: Entry,
  seat: Seat,
  clock: ScriptClock,
  { of, mounting, alone }: Around = {},
): SpeakerEvent[] {
  const { fact, seq } = entry;
  const until = clock.now + FRESH_MS;
  switch (fact.type) {
    case 'instruction':
      return [say({ ...fact, seq, at: entry.at }, seat, clock, { mounting, alone })];
    case 'notice':
      if (isCautions(fact)) return [];
      return [{ on: 'say', announcement: { seq, kind: 'notice', text: aloud(fact.text), until } }];
    case 'readback': {
      const words = seat === 'emitter' && of?.actor === 'panel' ? forTheLadder(fact.text) : fact.text;
      return [{ on: 'say', announcement: { seq, kind: fact.type, text: aloud(words), until } }];
    }
    case 'watcher-remark':
      return [
        { on: 'say', announcement: { seq, kind: 'notice', text: aloud(watcherRemarkText(fact)), until } },
      ];
    case 'query':
      return [{ on: 'say', announcement: { seq, kind: fact.type, text: aloud(fact.text), until } }];
    case 'withdrawn':
      return [{ on: 'withdraw', seq: fact.instruction }];
    // A separate read-back gives the words for these two.
    case 'stopped':
      return [{ on: 'forget' }, { on: 'cue', cue: 'stop' }];
    case 'pause':
      return [{ on: 'cue', cue: 'hold' }];
    default:
      return [];
  }
}

/** The cautions are read and accepted on their own page. Spoken again, they would delay the first step. */
export const isCautions = (fact: FactOf<'notice'>): boolean => fact.code === 'cautions';

/** After a gap nothing old is spoken, only the current instruction, if this phone did not speak it before the gap. */
function lineOnReturn(
  current: Placed<'instruction'> | undefined,
  saidUpTo: Seq | -1,
  seat: Seat,
  clock: ScriptClock,
  around: Around,
): SpeakerEvent[] {
  return current && current.seq > saidUpTo ? [say(current, seat, clock, around)] : [];
}

/** How far a phone has followed its log. */
export interface Followed {
  /** The socket whose history has been passed over. */
  readonly conn: number;
  /** The last entry that was given to the voice or left out for good. */
  readonly upTo: Seq | -1;
}

export const NOTHING_FOLLOWED: Followed = { conn: 0, upTo: -1 };

/**
 * What is to be said now: of what comes over a live link all that is new; of history only the instruction that
 * still holds, `current`. While the link is not live nothing is said, and what waits is forgotten: it may be out of
 * date when the link returns. `saidUpTo`: the last instruction that was said to its end; `now`: this phone's clock, ms.
 */
export function linesSince(
  followed: Followed,
  {
    phase,
    conn,
    entries,
    historyEnd,
    offset = 0,
  }: Pick<Link, 'phase' | 'conn' | 'entries' | 'historyEnd' | 'offset'>,
  {
    current,
    saidUpTo,
    mounting,
    alone,
  }: { current: Placed<'instruction'> | undefined; saidUpTo: Seq | -1 } & Pick<Around, 'mounting' | 'alone'>,
  seat: Seat,
  now: number,
): { followed: Followed; events: SpeakerEvent[] } {
  if (phase !== 'live') return { followed, events: [{ on: 'forget' }] };
  // It listens there: its own voice would be in the way of the tone.
  if (alone === 'sensing' && seat === 'panel') return { followed, events: [] };
  const clock = { now, offset };
  const isBack = conn !== followed.conn;
  const upTo = isBack ? Math.max(followed.upTo, historyEnd) : followed.upTo;
  const events = [
    ...(isBack ? lineOnReturn(current, saidUpTo, seat, clock, { mounting, alone }) : []),
    ...entries
      .slice(upTo + 1)
      .flatMap((entry) => lineFor(entry, seat, clock, { of: aboutOf(entry, entries), mounting, alone })),
  ];
  return { followed: { conn, upTo: entries.length - 1 }, events };
}

const aboutOf = ({ fact }: Entry, entries: readonly Entry[]): Entry | undefined =>
  fact.type === 'readback' ? entries[fact.of] : undefined;

function say(
  { seq, say, advice, expiresAt, quiet }: Placed<'instruction'>,
  seat: Seat,
  clock: ScriptClock,
  { mounting, alone }: Around,
): SpeakerEvent {
  const mine = isMine(advice, seat, alone);
  if (quiet) return { on: 'unspoken', ...(mine && { cue: 'settling' as const }) };
  if (seat === 'emitter' && advice.to === 'panel' && advice.action.kind === 'read') return { on: 'unspoken' };
  const { action } = advice;
  const isThere = seat === 'emitter' || isOnePhone(alone);
  const beam = isThere && action.kind === 'turn' ? beamText(mounting, action.axis) : undefined;
  return {
    on: 'say',
    announcement: {
      seq,
      kind: 'instruction',
      text: beam === undefined ? aloud(say) : `${aloud(say)} ${aloud(beam)}`,
      until: expiresAt - clock.offset,
      ...(mine && { cue: cueFor(advice.action) }),
    },
  };
}
