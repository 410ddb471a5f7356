import * as z from 'zod/mini';
import { AdmissionAnswer, Mark } from './admission.ts';
import { Advice, Question } from './advice.ts';
import { CameraReading, CameraState } from './camera.ts';
import { Checklist, ChecklistItem, UsedCover } from './checklists.ts';
import { forgottenFacts } from './forgotten.ts';
import { Guidance } from './guidance.ts';
import { handOverFacts } from './hand-over.ts';
import { Head, JobId, Seq } from './ids.ts';
import { TypedLanguage } from './language.ts';
import { Mounting } from './mounting.ts';
import { Name } from './name.ts';
import { PairId } from './pair-plan.ts';
import { Person, PhoneMark } from './person.ts';
import { photoFacts } from './photo.ts';
import { PracticeAct } from './practice.ts';
import { Reading } from './reading.ts';
import { CannotWhy, DisturbedWhy, PanelIndication, PathState, Trend } from './reports.ts';
import { Profile, SensorLook, SensorSort, SensorState } from './sensor.ts';
import { KeptSound, SoundDays } from './sound.ts';
import { SiteSteps } from './steps.ts';
import { Axis, Eighths, TurnSoFar } from './turns.ts';
import { Units } from './units.ts';
import { LogVersion, WrittenPlan, WrittenSetup } from './written.ts';

/** The two seats of a job. A supervisor watches and has none. */
export const Seat = z.enum(['panel', 'emitter']);
export type Seat = z.infer<typeof Seat>;

export const Actor = z.enum(['panel', 'emitter', 'engine', 'server', 'supervisor']);
export type Actor = z.infer<typeof Actor>;

export const Via = z.enum(['typed', 'voice', 'button']);
export type Via = z.infer<typeof Via>;

/** `from`: the entry of the words it was understood from. */
const from = z.optional(Seq);

/**
 * The entry that this one replaces: a correction said later is about what was read or turned then, and counts
 * at that place in the log. Without it, a correction counts where it was logged.
 */
const replaces = z.optional(Seq);

/** What the crew reports or decides, and can take back. Search and proving are built from these. */
const searchFacts = [
  z.object({ type: z.literal('reading'), reading: Reading, replaces, from }),
  /** `first`: it was held against no look before, so it says only that there is light. */
  z.object({ type: z.literal('trend'), trend: Trend, first: z.optional(z.literal(true)), from }),
  /** A turn that was really made. `instruction`: the entry that asked for it, if one did. */
  z.object({
    type: z.literal('move'),
    axis: Axis,
    eighths: Eighths,
    instruction: z.optional(Seq),
    replaces,
    from,
  }),
  z.object({
    type: z.literal('gain'),
    change: z.enum(['lowered', 'raised', 'set', 'full']),
    to: z.optional(z.number()),
    from,
  }),
  /** `cover`: with what a part is covered, where it is known. */
  z.object({ type: z.literal('path'), state: PathState, cover: z.optional(UsedCover), from }),
  /** The emitter was brought by eye onto the receiver: positions start again from zero. */
  z.object({ type: z.literal('re-aimed'), from }),
  /**
   * It no longer points where the count of the turns says: it was knocked, or a screw was turned and nobody knows how
   * far. Positions start again from here.
   */
  z.object({ type: z.literal('disturbed'), why: DisturbedWhy, from }),
  /** The crew chose an adjuster. */
  z.object({ type: z.literal('choice'), axis: Axis, from }),
  /** The order of entry `instruction` could not be carried out. */
  z.object({
    type: z.literal('cannot'),
    why: CannotWhy,
    instruction: Seq,
    /** The turn that was asked for, if it was a turn: that adjuster goes no further that way. */
    turn: z.optional(z.object({ axis: Axis, eighths: Eighths })),
    /** The kind of any other order, and which way the gain was to go; older logs have neither. */
    order: z.optional(z.string().check(z.maxLength(40))),
    gain: z.optional(z.enum(['lower', 'raise', 'full'])),
    from,
  }),
  /** A cause list was worked through. */
  z.object({ type: z.literal('checked'), instruction: Seq, from }),
  /** An item of a checklist was answered. `note`: in words, such as who was told. */
  z.object({
    type: z.literal('item'),
    list: Checklist,
    item: ChecklistItem,
    done: z.boolean(),
    note: z.optional(z.string().check(z.trim(), z.minLength(1), z.maxLength(200))),
    from,
  }),
  /** What the fire panel shows. */
  z.object({ type: z.literal('panel'), shows: PanelIndication, from }),
  /** The entry `target` was questioned and confirmed. */
  z.object({ type: z.literal('confirm'), target: Seq, from }),
  /** The entry `target` no longer counts; it stays in the log. */
  z.object({ type: z.literal('retract'), target: Seq, why: z.enum(['undo', 'correction']), from }),
  /** The alignment was accepted: with all its evidence, or without it for a typed reason. */
  z.object({
    type: z.literal('accept'),
    reading: Reading,
    override: z.optional(
      z.object({
        reason: z.string().check(z.trim(), z.minLength(3), z.maxLength(500)),
        missing: z.array(z.string()),
      }),
    ),
    /** Kept as the last visit left it, with this reading: nothing was turned, and nothing searched. */
    kept: z.optional(Reading),
    from,
  }),
] as const;

export const SearchFact = z.discriminatedUnion('type', searchFacts);
export type SearchFact = z.infer<typeof SearchFact>;

export const Alternative = z.object({
  text: z.string(),
  confidence: z.number().check(z.minimum(0), z.maximum(1)),
});
export type Alternative = z.infer<typeof Alternative>;

/** A name typed, or drawn with a finger: strokes of points in a box of 1000 by 400. */
export const Signature = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('typed'), text: Name }),
  z.object({
    kind: z.literal('drawn'),
    strokes: z
      .array(z.array(z.tuple([z.int(), z.int()])).check(z.minLength(1), z.maxLength(500)))
      .check(z.minLength(1), z.maxLength(60)),
  }),
]);
export type Signature = z.infer<typeof Signature>;

/** Facts that only the log of a site holds. */
const siteFacts = [
  /** `code`: the design guidance that the plans are checked against. */
  z.object({
    type: z.literal('site-opened'),
    site: Name,
    code: z.optional(Guidance),
    units: z.optional(Units),
    logVersion: LogVersion,
  }),
  /** From here on the site reads and writes in these units. Visits that have begun keep theirs. */
  z.object({ type: z.literal('units-chosen'), units: Units }),
  /** The test steps of visits that begin from here on; they replace those before. */
  z.object({ type: z.literal('steps-defined'), steps: SiteSteps }),
  /** Adds a pair, or replaces the plan of the one with the same id. */
  z.object({ type: z.literal('pair-planned'), pair: WrittenPlan }),
  z.object({
    type: z.literal('pair-dropped'),
    pair: PairId,
    reason: z.string().check(z.trim(), z.minLength(3), z.maxLength(500)),
  }),
  /** A visit to a pair: its record is the log `job`. */
  z.object({ type: z.literal('job-begun'), pair: PairId, job: JobId }),
] as const;

export const SiteFact = z.discriminatedUnion('type', siteFacts);
export type SiteFact = z.infer<typeof SiteFact>;

/** Everything that a log can hold. */
export const Fact = z.discriminatedUnion('type', [
  /** `engine`: the version of the rules behind the advice, see `ENGINE_VERSION`. */
  z.object({
    type: z.literal('opened'),
    setup: WrittenSetup,
    engine: z.optional(z.int()),
    logVersion: LogVersion,
  }),
  /**
   * A phone took a seat. `takeover`: it replaces a phone that was gone. `person`: who is at it; missing if nobody
   * said, and in older logs. `handedOn`: the phone stayed, and its person is another from here on, or now named.
   */
  z.object({
    type: z.literal('seated'),
    seat: Seat,
    device: z.string().check(z.maxLength(80)),
    takeover: z.boolean(),
    person: z.optional(Person),
    phone: z.optional(PhoneMark),
    handedOn: z.optional(z.literal(true)),
  }),
  /** The panel answered a phone that asked for a seat without a code, and showed `mark`. After a yes it is seated. */
  z.object({
    type: z.literal('admission'),
    seat: Seat,
    device: z.string().check(z.maxLength(80)),
    mark: Mark,
    answer: AdmissionAnswer,
  }),
  /** A key to this log opens nothing from here on: of a phone in a seat, or a link. */
  z.object({ type: z.literal('key-withdrawn'), role: z.enum(['panel', 'emitter', 'watcher', 'desk']) }),
  /** Up to here one phone alone kept the log; now the server does. */
  z.object({ type: z.literal('brought') }),
  z.object({ type: z.literal('link'), seat: Seat, online: z.boolean() }),
  /**
   * Words as they were received, before they were understood. `language`: that they were typed in; absent: English.
   * `camera`: nobody said them, a phone read the number from the display. `sensor`: a phone heard or saw what an indicator does.
   */
  z.object({
    type: z.literal('said'),
    seat: Seat,
    via: Via,
    text: z.string().check(z.maxLength(2000)),
    language: z.optional(TypedLanguage),
    confidence: z.optional(z.number().check(z.minimum(0), z.maximum(1))),
    alternatives: z.optional(z.array(Alternative)),
    camera: z.optional(CameraReading),
    sensor: z.optional(SensorLook),
    sound: z.optional(KeptSound),
  }),
  /** What a phone that watches the meter by camera says of itself. */
  z.object({ type: z.literal('camera'), seat: Seat, state: CameraState }),
  /** What a phone that follows a tone or a lamp says of itself; when it begins, what it was taught. */
  z.object({
    type: z.literal('sensor'),
    seat: Seat,
    sort: SensorSort,
    state: SensorState,
    taught: z.optional(Profile),
  }),
  /** Sound that gave no words, and why. */
  z.object({
    type: z.literal('unheard'),
    seat: Seat,
    why: z.enum(['silence', 'unavailable', 'timeout', 'failed', 'cut-short']),
    sound: z.optional(KeptSound),
  }),
  /** From here on the sound of what is said is kept for so many days; 0: no longer. Before the first of these none is kept. */
  z.object({ type: z.literal('sound'), seat: Seat, days: SoundDays }),
  ...searchFacts,
  /**
   * The crew asked for time; there is no advice until they continue. `why`: nobody asked, but the next order is for the
   * emitter, whose phone is away: it waits until somebody there says that they are back.
   */
  z.object({ type: z.literal('pause'), why: z.optional(z.literal('emitter-away')), from }),
  z.object({ type: z.literal('resume'), from }),
  z.object({ type: z.literal('remark'), seat: Seat, text: z.string().check(z.maxLength(2000)), from }),
  /** By somebody who watches, under the name that they typed. */
  z.object({ type: z.literal('watcher-remark'), by: Name, text: z.string().check(z.maxLength(2000)) }),
  /** How the emitter hangs, as the person facing it sees it. The words of orders on the ladder follow it; the search does not. */
  z.object({ type: z.literal('mounted'), mounting: Mounting }),
  /** "Heard 142." */
  z.object({ type: z.literal('readback'), of: Seq, text: z.string() }),
  /** A question about words that could mean two things or none; the answer is looked at first. */
  z.object({
    type: z.literal('query'),
    of: Seq,
    text: z.string(),
    question: z.optional(Question),
    /** Of a turn that was told in part: what need not be said again. */
    turn: z.optional(TurnSoFar),
  }),
  /** Something both should know; it asks for no action. */
  z.object({ type: z.literal('notice'), text: z.string(), code: z.string() }),
  /** The next move, as it was spoken. Supersedes every earlier one. */
  z.object({
    type: z.literal('instruction'),
    advice: Advice,
    /** One short spoken sentence. */
    say: z.string(),
    /** A few words for very large type. */
    show: z.string(),
    why: z.string(),
    /** After this (ms, the log's clock) it must not be acted on without asking again. */
    expiresAt: z.number(),
    /** It was said before in the same words: this time a tone and the screen say it. */
    quiet: z.optional(z.literal(true)),
  }),
  /** The current instruction is no longer valid, and there is no new one. */
  z.object({
    type: z.literal('withdrawn'),
    instruction: Seq,
    why: z.enum(['expired', 'paused', 'stopped', 'changed']),
  }),
  z.object({ type: z.literal('stopped'), from }),
  z.object({ type: z.literal('restarted'), from }),
  /**
   * Something that must be settled before signing: a test failed. `about`: the entry that began it or
   * answered it.
   */
  z.object({ type: z.literal('issue-opened'), about: Seq, text: z.string().check(z.maxLength(500)) }),
  z.object({
    type: z.literal('issue-closed'),
    issue: Seq,
    how: z.string().check(z.trim(), z.minLength(3), z.maxLength(500)),
    from,
  }),
  /**
   * The desk changed the plan of the pair while this visit was open. The visit goes on by the plan that it was opened
   * with. `before`: the plan that the crew knew until then.
   */
  z.object({ type: z.literal('plan-changed'), before: WrittenPlan, after: WrittenPlan }),
  /**
   * The record up to `head` was read and signed. `findings`: the ids the signer was shown. `declaration`: the words
   * that were signed. `ofSite`: the findings about this pair against the others of its site, and where the site's
   * log ended then. `account`: the name is that of an account of the server, and its holder was signed in with a passkey.
   * Older logs have only the first five. A signature on a record that has not changed since the one
   * before stands beside it.
   */
  z.object({
    type: z.literal('signed'),
    name: Name,
    role: Name,
    firm: Person.shape.firm,
    competence: Person.shape.competence,
    account: z.optional(z.literal(true)),
    signature: Signature,
    head: Head,
    findings: z.array(z.string()),
    declaration: z.optional(z.string().check(z.maxLength(1000))),
    ofSite: z.optional(z.object({ head: Head, findings: z.array(z.string()) })),
  }),
  /** Only in a log of practice: what was really done at the simulated pair, whatever was said of it. */
  z.object({ type: z.literal('practised'), act: PracticeAct }),
  ...handOverFacts,
  ...photoFacts,
  ...forgottenFacts,
  ...siteFacts,
]);
export type Fact = z.infer<typeof Fact>;
export type FactOf<T extends Fact['type']> = Extract<Fact, { type: T }>;
