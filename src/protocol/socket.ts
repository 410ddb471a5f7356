import * as z from 'zod/mini';
import { AdmissionAnswer } from '../model/admission.ts';
import { CameraReading, CameraState } from '../model/camera.ts';
import { Entry } from '../model/entry.ts';
import { Seat } from '../model/facts.ts';
import { HandOverFact } from '../model/hand-over.ts';
import { Head, JobId, MessageId, Seq } from '../model/ids.ts';
import { TypedLanguage } from '../model/language.ts';
import { Mounting } from '../model/mounting.ts';
import { Name } from '../model/name.ts';
import { Person } from '../model/person.ts';
import { HandAct } from '../model/practice.ts';
import { Refusal } from '../model/refusal.ts';
import { Profile, SensorLook, SensorSort, SensorState } from '../model/sensor.ts';
import { SoundDays } from '../model/sound.ts';
import { Voice } from '../model/voice.ts';
import { SENSED_WORDS } from '../phrases/buttons.ts';
import { Invite, Role, Token } from './access.ts';
import { AskShown } from './ask-shown.ts';

/**
 * The messages between phones and server; docs/protocol.md numbers their rules. Text frames are these in
 * JSON; binary frames are sound: 16-bit little-endian mono PCM at `SAMPLE_RATE`, belonging to the talk that
 * was last opened on the same socket.
 */
export const PROTOCOL_VERSION = 4;
export const OLDEST_PROTOCOL_VERSION = 4;

/** Where the websocket is. */
export const SOCKET_PATH = '/api/socket';

/** Samples per second of all speech on the wire. */
export const SAMPLE_RATE = 16_000;
/** The longest single utterance. */
export const MAX_TALK_MS = 15_000;
/** A phone that receives nothing for this long treats its socket as dead. */
export const DEAD_AFTER_MS = 6_000;
export const PING_EVERY_MS = 2_000;
/** Largest text or binary frame the server takes, bytes. */
export const MAX_FRAME_BYTES = 64 * 1024;

/**
 * Refusals that end the connection, with the close code that follows the `refused` message. Others leave it
 * open. The server also closes with 1001 (it is stopping) and 1009 (frame too large).
 */
export const CLOSE_CODES = {
  'bad-message': 4400,
  'bad-token': 4401,
  'seat-lost': 4403,
  revoked: 4410,
  version: 4406,
  replaced: 4409,
  'from-the-future': 4416,
  'too-fast': 4429,
  'store-failed': 4503,
} as const satisfies Partial<Record<Refusal, number>>;
export type ClosingRefusal = keyof typeof CLOSE_CODES;

const id = MessageId;
const Text = z.string().check(z.trim(), z.minLength(1), z.maxLength(500));
/** 0 to 1. */
const Share = z.number().check(z.minimum(0), z.maximum(1));

/** All that a phone that follows a tone or a lamp can say. */
const SENSED: ReadonlySet<string> = new Set(Object.values(SENSED_WORDS));

/** How an instruction reached the person on the ladder. */
export const ReceiptHow = z.enum(['shown', 'spoken']);

export const ClientMessage = z.discriminatedUnion('t', [
  /** First frame. `after`: the last entry that the phone has, -1 for none. */
  z.object({
    t: z.literal('hello'),
    v: z.int(),
    token: Token,
    after: z.int().check(z.minimum(-1)),
    /** Only of a watcher: who watches. The crew sees it. */
    name: z.optional(Name),
  }),
  /**
   * Words that were typed, chosen with a button, or heard by the phone itself; all go through the same
   * parser. `re`: the instruction on the speaker's screen, so that a late "done" counts for the right turn.
   * `language`: what typed words are in; without it they are English, as those of all buttons are.
   * Heard words carry how sure the phone's speech model is, like words heard by the server. `camera`: nobody pressed or said
   * anything; the phone read this number from the display. `sensor`: the phone heard or saw what an indicator does.
   */
  z
    .object({
      t: z.literal('say'),
      id,
      via: z.enum(['typed', 'button', 'voice']),
      text: Text,
      language: z.optional(TypedLanguage),
      re: z.optional(Seq),
      confidence: z.optional(Share),
      alternatives: z.optional(z.array(z.object({ text: Text, confidence: Share })).check(z.maxLength(8))),
      camera: z.optional(CameraReading),
      sensor: z.optional(SensorLook),
    })
    .check(
      z.refine(
        ({ via, confidence, alternatives }) =>
          (via === 'voice') === (confidence !== undefined) && (via === 'voice' || !alternatives),
        { error: 'confidence and alternatives come with via voice, and only with it', path: ['confidence'] },
      ),
      z.refine(({ via, language }) => via === 'typed' || language === undefined, {
        error: 'a language comes with via typed, and only with it',
        path: ['language'],
      }),
      z.refine(({ via, text, camera }) => !camera || (via === 'button' && /^-?\d+(\.\d+)?$/.test(text)), {
        error: 'a camera says a number and nothing else, with via button',
        path: ['camera'],
      }),
      z.refine(
        ({ via, text, sensor, camera, re }) =>
          !sensor || (!camera && via === 'button' && re !== undefined && SENSED.has(text)),
        {
          error: 'a sensor says one of its words and nothing else, with via button and re',
          path: ['sensor'],
        },
      ),
    ),
  /** `by`: of a watcher, and only of one: under which name. */
  z.object({
    t: z.literal('remark'),
    id,
    text: z.string().check(z.trim(), z.minLength(1), z.maxLength(2000)),
    by: z.optional(Name),
  }),
  /** From the emitter: how the unit hangs. */
  z.object({ t: z.literal('mounted'), id, mounting: Mounting }),
  /** The crew wants the sound of what is said kept with the record for so many days; 0: no longer. */
  z.object({ t: z.literal('sound'), id, days: SoundDays }),
  /** From the emitter: its phone has shown this instruction as current, or has spoken it to its end. Not logged. */
  z.object({ t: z.literal('receipt'), instruction: Seq, how: ReceiptHow }),
  /** A phone that watches the meter by camera says how it is. */
  z.object({ t: z.literal('camera'), id, state: CameraState }),
  /** A phone that follows a tone or a lamp says how it is; when it begins, what it was taught. */
  z
    .object({
      t: z.literal('sensor'),
      id,
      sort: SensorSort,
      state: SensorState,
      taught: z.optional(Profile),
    })
    .check(
      z.refine(({ state, taught }) => !taught || state === 'sensing', {
        error: 'what was taught comes when it begins',
        path: ['taught'],
      }),
    ),
  /** Replaces the reading of entry `target` by what `text` says. */
  z.object({
    t: z.literal('correct'),
    id,
    target: Seq,
    text: z.string().check(z.trim(), z.minLength(1), z.maxLength(200)),
    language: z.optional(TypedLanguage),
  }),
  /** Takes back the entry `target`. */
  z.object({ t: z.literal('take-back'), id, target: Seq }),
  /** Accept although evidence is missing, with a typed reason. */
  z.object({
    t: z.literal('override'),
    id,
    reason: z.string().check(z.trim(), z.minLength(3), z.maxLength(500)),
  }),
  /** The person at this phone is another, or says now who it is; without `person`, nobody is named. */
  z.object({ t: z.literal('person'), id, person: z.optional(Person) }),
  /** Something about how the pair is handed over, or an answer to a step. */
  z.object({ t: z.literal('hand-over'), id, fact: HandOverFact }),
  /** In a practice job: what hands did at the simulated pair. */
  z.object({ t: z.literal('practise'), id, act: HandAct }),
  /** Sound follows in binary frames until `talk-end`; `talk-drop` throws it away. */
  z.object({ t: z.literal('talk'), id, re: z.optional(Seq), voice: z.optional(Voice) }),
  /** A talk in which somebody reads ten digits, for `voice`. Nothing of it is logged or kept. */
  z.object({ t: z.literal('read'), id }),
  z.object({ t: z.literal('talk-end'), id }),
  z.object({ t: z.literal('talk-drop'), id }),
  /** Asks for a join code for the other seat, or for this one on a new phone. */
  z.object({ t: z.literal('invite'), id, seat: Seat }),
  /** From the panel: whether the phone that asks is its emitter. */
  z.object({ t: z.literal('admit'), id, ask: AskShown.shape.ask, answer: AdmissionAnswer }),
  z.object({ t: z.literal('ping'), n: z.int() }),
]);
export type ClientMessage = z.infer<typeof ClientMessage>;

export const SeatPresence = z.enum(['empty', 'away', 'online']);
export const Presence = z.object({
  panel: SeatPresence,
  emitter: SeatPresence,
  watchers: z.int(),
  /** Of those who watch: who gave a name, each once. */
  watching: z.optional(z.array(Name)),
});
export type Presence = z.infer<typeof Presence>;

/** The speech engine: its name, and whether it can be used now. */
export const SpeechState = z.object({ name: z.string(), ready: z.boolean() });
export type SpeechState = z.infer<typeof SpeechState>;

/** The last instruction that the phone on the ladder has shown or spoken. */
export const Receipt = z.object({ instruction: Seq, how: ReceiptHow });
export type Receipt = z.infer<typeof Receipt>;

export const ServerMessage = z.discriminatedUnion('t', [
  z.object({
    t: z.literal('welcome'),
    v: z.int(),
    role: Role,
    job: JobId,
    head: Head,
    /** Server clock, ms: instructions expire by it. */
    now: z.number(),
    speech: SpeechState,
    /** To the panel: the word under which a phone without a code asks it, as long as this server runs. */
    word: z.optional(z.string()),
  }),
  /** Entries in order, each once; history after `hello`, then live. */
  z.object({ t: z.literal('entries'), entries: z.array(Entry) }),
  /** History ends here: only from now on may an instruction be spoken. */
  z.object({ t: z.literal('caught-up'), seq: z.int() }),
  /** The message is in the log for good. `seq`: its first entry. */
  z.object({ t: z.literal('ack'), id, seq: Seq }),
  z.object({ t: z.literal('refused'), id: z.optional(id), reason: Refusal, text: z.string() }),
  z.object({ t: z.literal('presence'), presence: Presence }),
  z.extend(Receipt, { t: z.literal('receipt') }),
  /** What happens to sound someone is sending: shown to both, not logged. */
  z.object({
    t: z.literal('hearing'),
    seat: Seat,
    id,
    stage: z.enum(['listening', 'working', 'done', 'failed']),
  }),
  /** To who read ten digits. Without `voice`: they were not heard as such. */
  z.object({ t: z.literal('voice'), id, voice: z.optional(Voice) }),
  z.object({ t: z.literal('invite'), id, invite: Invite }),
  /** To the panel: a phone asks to come in; without `asks`, none does any more. */
  z.object({ t: z.literal('ask'), asks: z.optional(AskShown) }),
  z.object({ t: z.literal('speech'), speech: SpeechState }),
  z.object({ t: z.literal('pong'), n: z.int(), now: z.number() }),
  /** The server stops, and closes with 1001 as soon as all that it has is written. Nothing is lost: connect again. */
  z.object({ t: z.literal('stopping') }),
]);
export type ServerMessage = z.infer<typeof ServerMessage>;
