import { asForgotten } from '../../src/log/names.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { MessageId, Seq } from '../../src/model/ids.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { OTHER_HISTORY, unreadableText } from '../../src/phrases/requests.ts';
import type { Invite } from '../../src/protocol/access.ts';
import type { AskShown } from '../../src/protocol/ask-shown.ts';
import type {
  ClientMessage,
  Presence,
  Receipt,
  ServerMessage,
  SpeechState,
} from '../../src/protocol/socket.ts';
import { DEAD_AFTER_MS, PING_EVERY_MS, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';

/**
 * The phone's end of the link, as a plain record and one pure step: an event goes in, the next record and the
 * effects come out. The socket, the clock and the storage are in `connection.ts`.
 */

/** A message that must reach the log exactly once, also on a bad link. */
export type Letter = Extract<
  ClientMessage,
  {
    t:
      | 'say'
      | 'person'
      | 'remark'
      | 'mounted'
      | 'sound'
      | 'correct'
      | 'take-back'
      | 'camera'
      | 'sensor'
      | 'override'
      | 'hand-over'
      | 'practise'
      | 'invite'
      | 'admit';
  }
>;

/** A letter not yet acknowledged. */
export interface Pending {
  letter: Letter;
  /** When it was written, this phone's clock, ms. */
  since: number;
  /** It is not sent (again) before this. */
  dueAt: number;
}

/** A refusal that the crew must see. */
export interface Complaint {
  reason: Refusal;
  text: string;
  /** The message that was refused, and the letter it was, if it was one. */
  id?: MessageId;
  letter?: Letter;
}

export type Phase =
  /** No socket: not started, or waiting for `retryAt`. */
  | 'resting'
  | 'connecting'
  /** The server sends the history. Nothing in it is current. */
  | 'catching-up'
  | 'live'
  /** The server refused, and a new try cannot help. */
  | 'ended';

export interface Link {
  readonly token: string;
  /** Of a watcher who gave one: the crew is told who watches. */
  readonly name: string | undefined;
  readonly phase: Phase;
  /** Number of the socket in use. Events of other sockets are ignored. */
  readonly conn: number;
  readonly visible: boolean;
  readonly entries: readonly Entry[];
  /** Entries up to this one are history on this socket: shown, but never spoken. */
  readonly historyEnd: Seq | -1;
  readonly outbox: readonly Pending[];
  readonly complaints: readonly Complaint[];
  /** Server clock minus this phone's, ms. Undefined until the first message from the server. */
  readonly offset: number | undefined;
  /** Round trip of the pong that gave the offset, ms. */
  readonly offsetTrip: number;
  readonly presence: Presence | undefined;
  /** What the phone on the ladder has shown or spoken last, as far as the server knows. */
  readonly receipt: Receipt | undefined;
  readonly speech: SpeechState | undefined;
  readonly hearing: Readonly<Partial<Record<Seat, { id: MessageId; stage: HearingStage }>>>;
  /** What came of the last reading of ten digits at this phone. */
  readonly learnt: Learnt | undefined;
  /** Under which a phone without a code asks this panel. */
  readonly word: string | undefined;
  /** A phone that asks to come in. */
  readonly asks: AskShown | undefined;
  readonly invites: Readonly<Partial<Record<Seat, Invite>>>;
  readonly ended: Complaint | undefined;
  /** The server has said that it stops. Until the next one lets this phone in. */
  readonly serverStops: boolean;

  /** How many attempts in a row have failed. */
  readonly failures: number;
  readonly retryAt: number;
  /** While connecting: give up at this time. Later: if no frame has come by this time, the socket is dead. */
  readonly deadline: number;
  readonly pingAt: number;
  readonly pings: readonly { n: number; at: number }[];
  readonly tickedAt: number;
}

/** Without `voice`: they were not heard as ten digits. */
export type Learnt = Omit<Extract<ServerMessage, { t: 'voice' }>, 't'>;
type HearingStage = Extract<ServerMessage, { t: 'hearing' }>['stage'];

export type LinkEvent =
  | { on: 'start' }
  | { on: 'stop' }
  | { on: 'tick' }
  | { on: 'opened'; conn: number }
  | { on: 'frame'; conn: number; message: ServerMessage }
  /** A frame of a known kind with the wrong shape. */
  | { on: 'unreadable'; conn: number }
  | { on: 'closed'; conn: number }
  | { on: 'visible'; visible: boolean }
  /** The phone says that the network may be back. */
  | { on: 'online' }
  | { on: 'post'; letter: Letter }
  /** This phone, on the ladder, has shown or spoken an instruction. Said again on each new link. */
  | ({ on: 'receipt' } & Receipt)
  | { on: 'dismiss'; complaint: Complaint };

export type Effect =
  | { do: 'open'; conn: number }
  | { do: 'close'; conn: number }
  | { do: 'send'; conn: number; message: ClientMessage };

export const CONNECT_TIMEOUT_MS = 5_000;
/** After a freeze or a change of network, a working server answers within this time. */
export const PROBE_MS = 2_000;
/** If a letter is not acknowledged on a live socket, it is sent again after this time. The server logs it once. */
export const RESEND_AFTER_MS = 8_000;
/** If the server asked for a slower pace, or could not write, the letter waits this long. */
export const REFUSED_PAUSE_MS = 3_000;

const BACK_OFF_MS = [250, 500, 1_000, 2_000, 4_000];
const BACK_OFF_HIDDEN_MS = 15_000;
/** A timer this late was frozen: the silence before it proves nothing about the socket. */
const FROZEN_MS = 2 * PING_EVERY_MS;

/** A new try cannot help with these. */
const FINAL: readonly Refusal[] = [
  'bad-token',
  'version',
  'seat-lost',
  'revoked',
  'replaced',
  'from-the-future',
];
/** The letter itself is good: it is sent again later. */
const PASSING: readonly Refusal[] = ['too-fast', 'store-failed'];

export const newLink = (
  token: string,
  outbox: readonly Pending[] = [],
  entries: readonly Entry[] = [],
  name?: string,
): Link => ({
  token,
  name,
  phase: 'resting',
  conn: 0,
  visible: true,
  entries,
  historyEnd: -1,
  outbox: outbox.map((p) => ({ ...p, dueAt: 0 })),
  complaints: [],
  offset: undefined,
  offsetTrip: Number.POSITIVE_INFINITY,
  presence: undefined,
  receipt: undefined,
  speech: undefined,
  hearing: {},
  learnt: undefined,
  word: undefined,
  asks: undefined,
  invites: {},
  ended: undefined,
  serverStops: false,
  failures: 0,
  retryAt: Number.POSITIVE_INFINITY,
  deadline: Number.POSITIVE_INFINITY,
  pingAt: Number.POSITIVE_INFINITY,
  pings: [],
  tickedAt: 0,
});

export interface Stepped {
  link: Link;
  effects: Effect[];
}

/** `now`: this phone's clock, ms. */
export function step(link: Link, event: LinkEvent, now: number): Stepped {
  switch (event.on) {
    case 'start':
      return link.phase === 'resting' ? connect(link, now) : same(link);
    case 'stop':
      return rest({ ...link, retryAt: Number.POSITIVE_INFINITY });
    case 'tick':
      return tick(link, now);
    case 'opened':
      if (event.conn !== link.conn || link.phase !== 'connecting') return same(link);
      return opened(link, now);
    case 'frame':
      return event.conn === link.conn && hasSocket(link)
        ? frame(heard(link, now), event.message, now)
        : same(link);
    case 'unreadable':
      return event.conn === link.conn && hasSocket(link) ? end(link, UNREADABLE) : same(link);
    case 'closed':
      return event.conn === link.conn && hasSocket(link) ? failed(link, now) : same(link);
    case 'visible':
      return hint({ ...link, visible: event.visible }, event.visible, now);
    case 'online':
      return hint(link, true, now);
    case 'post':
      return flush(
        { ...link, outbox: [...link.outbox, { letter: event.letter, since: now, dueAt: 0 }] },
        now,
      );
    case 'receipt': {
      const { instruction, how } = event;
      const message = { t: 'receipt', instruction, how } as const;
      return { link, effects: link.phase === 'live' ? [{ do: 'send', conn: link.conn, message }] : [] };
    }
    case 'dismiss':
      return same({ ...link, complaints: link.complaints.filter((c) => c !== event.complaint) });
  }
}

/** The server's clock, as well as this phone knows it. */
export const serverNow = (link: Link, now: number): number => now + (link.offset ?? 0);

const UNREADABLE: Complaint = {
  reason: 'version',
  text: unreadableText(),
};

const RESTORED: Complaint = { reason: 'from-the-future', text: OTHER_HISTORY };

/** Whether the log that this phone has ends with this hash. */
const isAfter = (link: Link, hash: string | undefined): boolean =>
  link.entries.length === 0 || link.entries.at(-1)?.hash === hash;

const same = (link: Link): Stepped => ({ link, effects: [] });

const hasSocket = (link: Link): boolean => link.phase !== 'resting' && link.phase !== 'ended';

function connect(link: Link, now: number): Stepped {
  const conn = link.conn + 1;
  return {
    link: {
      ...link,
      phase: 'connecting',
      conn,
      deadline: now + CONNECT_TIMEOUT_MS,
      tickedAt: now,
      pings: [],
    },
    effects: [{ do: 'open', conn }],
  };
}

function opened(link: Link, now: number): Stepped {
  const { token, name } = link;
  const after = link.entries.length - 1;
  const hello = {
    t: 'hello',
    v: PROTOCOL_VERSION,
    token,
    after,
    ...(name !== undefined && { name }),
  } as const;
  return {
    // The server says it anew. What it said before may be of another phone on the ladder.
    link: { ...heard(link, now), phase: 'catching-up', pingAt: now + PING_EVERY_MS, receipt: undefined },
    effects: [{ do: 'send', conn: link.conn, message: hello }],
  };
}

const heard = (link: Link, now: number): Link => ({ ...link, deadline: now + DEAD_AFTER_MS });

function frame(link: Link, message: ServerMessage, now: number): Stepped {
  switch (message.t) {
    case 'welcome':
      if (message.head.count === link.entries.length && !isAfter(link, message.head.hash))
        return end(link, RESTORED);
      return same({
        ...clockFrom(link, message.now - now, Number.POSITIVE_INFINITY),
        speech: message.speech,
        word: message.word,
        asks: undefined,
        serverStops: false,
      });
    case 'entries':
      return take(link, message.entries, now);
    case 'caught-up':
      return flush({ ...link, phase: 'live', historyEnd: message.seq, failures: 0 }, now);
    case 'ack':
      return same(without(link, message.id));
    case 'refused':
      return refused(link, message, now);
    case 'presence':
      return same({ ...link, presence: message.presence });
    case 'receipt': {
      const { instruction, how } = message;
      return same({ ...link, receipt: { instruction, how } });
    }
    case 'hearing':
      return same({
        ...link,
        hearing: { ...link.hearing, [message.seat]: { id: message.id, stage: message.stage } },
      });
    case 'voice': {
      const { t: _t, ...learnt } = message;
      return same({ ...link, learnt });
    }
    case 'invite':
      return same({
        ...without(link, message.id),
        invites: { ...link.invites, [message.invite.seat]: message.invite },
      });
    case 'ask':
      return same({ ...link, asks: message.asks });
    case 'speech':
      return same({ ...link, speech: message.speech });
    case 'stopping':
      return same({ ...link, serverStops: true });
    case 'pong':
      return same(pong(link, message.n, message.now, now));
  }
}

/** Entries come in order. Known ones are skipped. After a gap the socket cannot be trusted. */
function take(link: Link, arrived: readonly Entry[], now: number): Stepped {
  const fresh = arrived.filter((e) => e.seq >= link.entries.length);
  if (fresh.length === 0) return same(link);
  if (fresh.some((e, i) => e.seq !== link.entries.length + i)) return failed(link, now);
  // What was kept over a reload can be of a log that the server has lost since, and has continued otherwise.
  if (!isAfter(link, fresh[0]?.prev)) return end(link, RESTORED);
  const logged = new Set(fresh.map((e) => e.ref));
  // A code is good for one phone: whoever took the seat has used it up.
  const seated = fresh.flatMap(({ fact }) =>
    fact.type === 'seated' && !fact.handedOn ? [[fact.seat, undefined]] : [],
  );
  return same({
    ...link,
    ...(seated.some(([seat]) => seat === 'emitter') && { receipt: undefined }),
    ...(seated.length > 0 && { invites: { ...link.invites, ...Object.fromEntries(seated) } }),
    // Names that were forgotten meanwhile go from this phone, too.
    entries: fresh.some(({ fact }) => fact.type === 'names-forgotten')
      ? asForgotten([...link.entries, ...fresh])
      : [...link.entries, ...fresh],
    // A letter in the log counts as acknowledged: the acknowledgement may have been lost with its socket.
    outbox: link.outbox.filter((p) => !logged.has(p.letter.id)),
  });
}

function refused(link: Link, message: Extract<ServerMessage, { t: 'refused' }>, now: number): Stepped {
  const { reason, text, id } = message;
  const letter = link.outbox.find((p) => p.letter.id === id)?.letter;
  const complaint: Complaint = { reason, text, ...(id && { id }), ...(letter && { letter }) };
  if (FINAL.includes(reason)) return end(link, complaint);
  if (letter && PASSING.includes(reason)) {
    const outbox = link.outbox.map((p) =>
      p.letter === letter ? { ...p, dueAt: now + REFUSED_PAUSE_MS } : p,
    );
    return same({ ...link, outbox, complaints: complain(link, complaint) });
  }
  return same({ ...(id ? without(link, id) : link), complaints: complain(link, complaint) });
}

/** One complaint of each kind is enough: the newest. */
const complain = (link: Link, complaint: Complaint): Complaint[] => [
  ...link.complaints.filter((c) => c.reason !== complaint.reason),
  complaint,
];

const without = (link: Link, id: MessageId): Link => ({
  ...link,
  outbox: link.outbox.filter((p) => p.letter.id !== id),
});

/** Sends what is due, but only after the history has come: letters found there are not sent again. */
function flush(link: Link, now: number): Stepped {
  if (link.phase !== 'live') return same(link);
  const due = link.outbox.filter((p) => p.dueAt <= now);
  if (due.length === 0) return same(link);
  return {
    link: {
      ...link,
      outbox: link.outbox.map((p) => (p.dueAt <= now ? { ...p, dueAt: now + RESEND_AFTER_MS } : p)),
    },
    effects: due.map((p) => ({ do: 'send', conn: link.conn, message: p.letter })),
  };
}

function tick(link: Link, now: number): Stepped {
  const frozen = hasSocket(link) && now - link.tickedAt > FROZEN_MS;
  const at = { ...link, tickedAt: now };
  if (link.phase === 'ended') return same(link);
  if (link.phase === 'resting') return now >= link.retryAt ? connect(at, now) : same(link);
  if (frozen && link.phase !== 'connecting') return probe(at, now);
  if (now >= link.deadline) return failed(at, now);
  if (link.phase === 'connecting') return same(at);
  if (now < link.pingAt) return flush(at, now);
  const pinged = ping(at, now);
  const flushed = flush(pinged.link, now);
  return { link: flushed.link, effects: [...pinged.effects, ...flushed.effects] };
}

function ping(link: Link, now: number): Stepped {
  const n = (link.pings.at(-1)?.n ?? 0) + 1;
  return {
    link: { ...link, pingAt: now + PING_EVERY_MS, pings: [...link.pings.slice(-3), { n, at: now }] },
    effects: [{ do: 'send', conn: link.conn, message: { t: 'ping', n } }],
  };
}

/** Sends a ping on a socket that may be dead, and waits only a short time for the answer. */
function probe(link: Link, now: number): Stepped {
  const pinged = ping(link, now);
  return { ...pinged, link: { ...pinged.link, deadline: now + PROBE_MS } };
}

function pong(link: Link, n: number, server: number, now: number): Link {
  const sent = link.pings.find((p) => p.n === n);
  if (!sent) return link;
  const trip = now - sent.at;
  const pings = link.pings.filter((p) => p.n > n);
  return clockFrom({ ...link, pings }, server - (sent.at + now) / 2, trip);
}

/** Keeps the offset of the fastest round trip. An old one loses weight, because clocks drift and are set. */
function clockFrom(link: Link, offset: number, trip: number): Link {
  const worse = trip > link.offsetTrip;
  return worse ? { ...link, offsetTrip: link.offsetTrip * 1.1 + 1 } : { ...link, offset, offsetTrip: trip };
}

/** The socket cannot be used any more. What is not acknowledged is sent again on the next one. */
function failed(link: Link, now: number): Stepped {
  const wait = link.visible
    ? (BACK_OFF_MS[Math.min(link.failures, BACK_OFF_MS.length - 1)] as number)
    : BACK_OFF_HIDDEN_MS;
  return rest({ ...link, failures: link.failures + 1, retryAt: now + wait });
}

function rest(link: Link): Stepped {
  if (!hasSocket(link)) return same(link);
  return {
    link: {
      ...link,
      phase: 'resting',
      hearing: {},
      offsetTrip: Number.POSITIVE_INFINITY,
      outbox: link.outbox.map((p) => ({ ...p, dueAt: 0 })),
    },
    effects: [{ do: 'close', conn: link.conn }],
  };
}

function end(link: Link, ended: Complaint): Stepped {
  return { link: { ...link, phase: 'ended', ended }, effects: [{ do: 'close', conn: link.conn }] };
}

function hint(link: Link, promising: boolean, now: number): Stepped {
  if (!promising || link.phase === 'ended' || link.phase === 'connecting') return same(link);
  if (link.phase === 'resting') {
    const wanted = link.retryAt !== Number.POSITIVE_INFINITY;
    return wanted ? connect({ ...link, failures: 0 }, now) : same(link);
  }
  return probe({ ...link, tickedAt: now }, now);
}
