import { counting, type History, rewrites, type SearchEvent } from '../engine/history.ts';
import type { Action } from '../model/advice.ts';
import { isOnePhone } from '../model/alone.ts';
import type { Entry } from '../model/entry.ts';
import { type Fact, SearchFact, type Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { kindsOf } from '../model/kinds.ts';
import type { Mounting } from '../model/mounting.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { Person, PhoneMark } from '../model/person.ts';
import { type Counted, lastOf, type Placed } from '../model/placed.ts';
import type { JobSetup } from '../model/setup.ts';
import { isUpkeep } from '../model/upkeep.ts';
import { currentPlan, currentSetup, type LogVersion } from '../model/written.ts';
import type { Issue } from './commission.ts';
import { afterHandOver, type HandOver, NOTHING_HANDED_OVER } from './hand-over.ts';
import { afterRemoval, type Photo } from './photos.ts';

/** A phone in a seat, and its person, if somebody said who it is. */
export interface Sitting {
  device: string;
  online: boolean;
  person?: Person;
  phone?: PhoneMark;
}

/** The state of a job from its log. Plain data; every screen and the next advice come from it. */
export interface JobState {
  /** Number of entries folded in: the next entry's sequence number. */
  count: number;
  /** In whose words the log is written. */
  logVersion?: LogVersion;
  setup?: JobSetup;
  seats: Record<Seat, Sitting | undefined>;
  /** What was reported since the job was opened, newest first. What the search makes of it: `searchOf`, in search.ts. */
  history?: History;
  /** The last reading that still counts. */
  reading?: Placed<'reading'>;
  /** The present instruction, if any. It must not be spoken or followed after its `expiresAt`. */
  instruction?: Placed<'instruction'>;
  /** The entry that answered the current instruction, once there is one. */
  answeredBy?: Seq;
  /** The last turns asked for, newest last, and those of them that were made, taken back or not. */
  turnsAsked: readonly Placed<'instruction'>[];
  turnsMade: readonly Seq[];
  /** What was said aloud, and is not said again to the same people. */
  said: readonly Once[];
  /** The newest question in its first words, and how often it was asked with no other between. */
  asked?: { readonly text: string; readonly times: number };
  /** The question that waits for an answer. */
  query?: Placed<'query'>;
  /** When a phone that follows a tone or a lamp was taught last: its entry. */
  taughtAt?: Seq;
  /** How the emitter hangs, once somebody said so. */
  mounting?: Mounting;
  paused: boolean;
  /** Paused, because the next order waits for the emitter. */
  held: boolean;
  stopped: boolean;
  accepted?: Placed<'accept'>;
  issues: readonly Issue[];
  /** The plan of the pair as the desk changed it last since the visit began. */
  planNow?: PairPlan;
  /** Words of practice were changed on purpose once. */
  misheard?: true;
  handOver: HandOver;
  /** In the order in which they came, removed ones too. */
  photos: readonly Photo[];
  /** For how many days the sound of what is said is kept; missing: not at all. */
  soundDays?: number;
  /** The valid signature, those that stand beside it, and the first entry that changes what was signed. */
  signed?: Placed<'signed'>;
  beside: readonly Placed<'signed'>[];
  changedBy?: Seq;
}

/** Said aloud once: that it settles, and the caution of the laser. */
export type Once = 'settling' | 'laser';
/** The code of the notice that says it. */
export const LASER: Once = 'laser';

export const EMPTY: JobState = {
  count: 0,
  seats: { panel: undefined, emitter: undefined },
  issues: [],
  handOver: NOTHING_HANDED_OVER,
  photos: [],
  beside: [],
  turnsAsked: [],
  turnsMade: [],
  said: [],
  paused: false,
  held: false,
  stopped: false,
};

/** Who is connected and what is advised does not change what was signed. */
const KEEPS_SIGNATURE: ReadonlySet<Fact['type']> = new Set([
  'seated',
  'admission',
  'key-withdrawn',
  'brought',
  'camera',
  'sensor',
  'link',
  'notice',
  'instruction',
  'withdrawn',
  'signed',
]);

/** Nor does a name that is forgotten, or a picture that goes when its time is over: the signer knew, and its hash stays. */
export const keepsSignature = (fact: Fact): boolean => KEEPS_SIGNATURE.has(fact.type) || isUpkeep(fact);

/** Somebody was on it, and nobody is now. */
export const isLeft = ({ seats: { panel, emitter }, setup }: Pick<JobState, 'seats' | 'setup'>): boolean =>
  (panel ?? emitter) !== undefined && !panel?.online && (!emitter?.online || isOnePhone(setup?.alone));

/** What the crew reported since the job was opened, oldest first, without entries taken back. */
export function countedOf({ history }: Pick<JobState, 'history'>): readonly Counted[] {
  return history ? listed(history) : [];
}

/** What counts after an event, and after which earlier one that was known. */
interface Listed {
  readonly list: readonly Counted[];
  readonly base: History | undefined;
}
const LISTS = new WeakMap<History, Listed>();

const asCounted = ({ fact, seq, at }: SearchEvent): Counted => ({ ...fact, seq, at });

/**
 * Made only when needed, and once. Goes on from the list before where it can: a message must cost the same in a long
 * job as in a short one. Only the newest list and the one it was made from are kept.
 */
function listed(history: History): readonly Counted[] {
  const known = LISTS.get(history);
  if (known) return known.list;
  const since: Counted[] = [];
  let base: History | undefined = history;
  for (; base && !LISTS.has(base) && !rewrites(base.event); base = base.before)
    since.push(asCounted(base.event));
  const before = base && LISTS.get(base);
  const list = before ? [...before.list, ...since.reverse()] : counting(history).map(asCounted);
  LISTS.set(history, { list, base: before && base });
  if (before?.base) LISTS.delete(before.base);
  return list;
}

/** A question is open that only a person can answer. */
export const waitsForPerson = ({ query }: Pick<JobState, 'query'>): boolean =>
  query?.question !== undefined || query?.turn !== undefined;

/** How far back a late "done" can reach. */
const TURNS_REMEMBERED = 16;

/** An entry without its seal: known before it is in the log. */
export type Unsealed = Pick<Entry, 'seq' | 'at' | 'actor' | 'fact'>;

const SEARCH_TYPES = new Set<string>(kindsOf(SearchFact, 'type'));
const isSearchFact = (fact: Fact): fact is SearchFact => SEARCH_TYPES.has(fact.type);

/** The state after one more entry. Never throws, whatever the order of the entries. */
export function fold(state: JobState, entry: Unsealed): JobState {
  const next: JobState = { ...state, count: entry.seq + 1 };
  const { fact } = entry;
  if (state.signed && state.changedBy === undefined && !keepsSignature(fact)) {
    next.changedBy = entry.seq;
  }
  if (isSearchFact(fact)) return afterSearchFact(next, fact, entry);
  const placed = { ...fact, seq: entry.seq, at: entry.at };
  switch (placed.type) {
    case 'opened':
      next.logVersion = placed.logVersion;
      next.setup = currentSetup(placed.setup);
      delete next.history;
      break;
    case 'seated': {
      const { seat, device, person, phone } = placed;
      const sitting: Sitting = { device, online: true, ...(person && { person }), ...(phone && { phone }) };
      next.seats = { ...state.seats, [seat]: sitting };
      // Whoever comes new has not heard it.
      next.said = EMPTY.said;
      break;
    }
    case 'link': {
      const holder = state.seats[placed.seat];
      if (holder) next.seats = { ...state.seats, [placed.seat]: { ...holder, online: placed.online } };
      break;
    }
    case 'said':
      // Any words of people answer an open question, or end it.
      if (!placed.sensor || !waitsForPerson(state)) delete next.query;
      break;
    case 'query':
      next.query = placed;
      next.asked = askedWith(state, placed.text);
      break;
    case 'instruction':
      next.instruction = placed;
      delete next.answeredBy;
      if (ASKS.has(placed.advice.action.kind)) next.asked = askedWith(state, placed.say);
      else if (!BETWEEN_QUESTIONS.has(placed.advice.action.kind)) delete next.asked;
      if (isSettling(placed.advice.action)) next.said = withOnce(state.said, 'settling');
      if (placed.advice.action.kind === 'turn') {
        next.turnsAsked = [...state.turnsAsked, placed].slice(-TURNS_REMEMBERED);
      }
      break;
    case 'notice':
      if (placed.code === LASER) next.said = withOnce(state.said, LASER);
      break;
    case 'withdrawn':
      if (state.instruction?.seq === placed.instruction) delete next.instruction;
      break;
    case 'pause':
      next.paused = true;
      next.held = placed.why !== undefined;
      break;
    case 'resume':
      next.paused = false;
      next.held = false;
      break;
    case 'stopped':
      next.stopped = true;
      break;
    case 'restarted':
      next.stopped = false;
      next.paused = false;
      next.held = false;
      break;
    case 'issue-opened': {
      const { seq, at, about, text } = placed;
      next.issues = [...state.issues, { seq, at, about, text }];
      break;
    }
    case 'issue-closed': {
      const { seq, at, how } = placed;
      next.issues = state.issues.map((issue) =>
        issue.seq === placed.issue ? { ...issue, closed: { seq, at, how } } : issue,
      );
      break;
    }
    case 'sensor':
      if (placed.taught) next.taughtAt = placed.seq;
      break;
    case 'mounted':
      next.mounting = placed.mounting;
      break;
    case 'practised':
      if (placed.act.did === 'misheard') next.misheard = true;
      break;
    case 'plan-changed':
      next.planNow = currentPlan(placed.after);
      break;
    case 'as-left':
    case 'conditions':
    case 'variation':
    case 'next-due':
    case 'struck-out':
    case 'step':
      next.handOver = afterHandOver(state.handOver, placed);
      break;
    case 'sound':
      next.soundDays = placed.days;
      break;
    case 'photo':
      next.photos = [...state.photos, { ...placed, by: entry.actor }];
      break;
    case 'photo-removed':
      next.photos = afterRemoval(state.photos, placed);
      break;
    case 'signed':
      // A second signature does not change what was signed, so it replaces none that is still valid.
      if (state.signed && state.changedBy === undefined) next.beside = [...state.beside, placed];
      else {
        next.signed = placed;
        next.beside = [];
        delete next.changedBy;
      }
      break;
  }
  return next;
}

const withOnce = (said: readonly Once[], what: Once): readonly Once[] =>
  said.includes(what) ? said : [...said, what];

const isSettling = (action: Action): boolean => action.kind === 'hold' && action.reason === 'settling';

/** What is said in other words when it comes again: a question, a list of causes. */
const ASKS: ReadonlySet<Action['kind']> = new Set(['ask', 'check']);

/** It may come again after these. */
const BETWEEN_QUESTIONS: ReadonlySet<Action['kind']> = new Set(['hold', 'read']);

/** A question asked again begins with the words it had at first. */
const askedWith = ({ asked }: JobState, text: string): NonNullable<JobState['asked']> =>
  asked && text.startsWith(asked.text) ? { text: asked.text, times: asked.times + 1 } : { text, times: 1 };

/** How often this question was asked last, with no other between. */
export const timesAsked = ({ asked }: JobState, question: string): number =>
  asked?.text === question ? asked.times : 0;

/** Facts that carry out the instruction, or make it pointless. */
function answers({ instruction }: JobState, fact: SearchFact): boolean {
  const action = instruction?.advice.action;
  switch (fact.type) {
    case 'trend':
      // Where no number is wanted, it is the answer.
      return action?.kind === 'read' && action.as === 'trend';
    case 'reading':
      return action?.kind === 'read';
    case 'panel':
      return action?.kind === 'watch-panel';
    case 'item':
      return action?.kind === 'confirm-item' && action.item === fact.item;
    default:
      return true;
  }
}

function afterSearchFact(next: JobState, fact: SearchFact, { seq, at }: Unsealed): JobState {
  // Before the job is opened nothing is searched.
  if (next.setup) next.history = { event: { seq, at, fact }, before: next.history };
  if (answers(next, fact)) next.answeredBy = seq;
  if (fact.type === 'move' && fact.instruction !== undefined) {
    next.turnsMade = [...next.turnsMade, fact.instruction].slice(-TURNS_REMEMBERED);
  }
  if (rewrites({ seq, at, fact })) {
    const counted = countedOf(next);
    assign(next, 'reading', lastOf(counted, 'reading'));
    assign(next, 'accepted', lastOf(counted, 'accept'));
  } else if (fact.type === 'reading') next.reading = { ...fact, seq, at };
  else if (fact.type === 'accept') next.accepted = { ...fact, seq, at };
  return next;
}

function assign<K extends 'reading' | 'accepted'>(
  state: JobState,
  key: K,
  value: JobState[K] | undefined,
): void {
  if (value === undefined) delete state[key];
  else state[key] = value;
}
