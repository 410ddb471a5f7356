import type { Seq } from '../../src/model/ids.ts';
import { type Cue, cueLength } from './cues.ts';

/**
 * What this phone says, and when: a plain record and one pure step. It never says two things at once. The newest
 * instruction replaces an older one, even in the middle of it. It says nothing while the microphone is open.
 */

/** The phone's own voice, or one that the server makes for phones that have none. */
export type By = 'phone' | 'server';

/** Something to be said. */
export interface Announcement {
  seq: Seq;
  kind: 'instruction' | 'readback' | 'query' | 'notice';
  /** What is said, in words. */
  text: string;
  /** The signal before it, if this seat has to do something. */
  cue?: Cue;
  /** It is not begun after this time (this phone's clock, ms). */
  until: number;
  /** How often the voice failed to say it. */
  failures?: number;
}

export interface Speaker {
  readonly waiting: readonly Announcement[];
  /** The voice in use: the phone's own, until it stays silent. */
  readonly by: By;
  /** Given to the voice: requested, or already heard. */
  readonly saying?: Announcement & { startBy: number; endBy: number; begun: boolean };
  /** A cue lasts until then; 0: it is over. This phone's clock, ms. */
  readonly soundingUntil: number;
  /** After a cut the voice needs a moment, or it skips the next words. */
  readonly restUntil: number;
  readonly microphoneOpen: boolean;
  readonly muted: boolean;
  /** The first touch has allowed this page to speak. */
  readonly unlocked: boolean;
  /** Both voices stayed silent: people have to read the screen. */
  readonly silent: boolean;
  /** The last instruction that was spoken to its end. */
  readonly said: Seq | -1;
}

export type SpeakerEvent =
  | { on: 'say'; announcement: Announcement }
  /** A new instruction without words: what waits of the one before is no longer valid. */
  | { on: 'unspoken'; cue?: Cue }
  /** A signal without words. */
  | { on: 'cue'; cue: Cue }
  /** The instruction of this entry is no longer valid. */
  | { on: 'withdraw'; seq: Seq }
  /** The link is lost: what waits may be out of date when it is back. */
  | { on: 'forget' }
  | { on: 'microphone'; open: boolean }
  | { on: 'mute'; muted: boolean }
  | { on: 'unlock' }
  | { on: 'began' }
  | { on: 'ended' }
  /** The voice that was asked cannot say it. */
  | { on: 'failed' }
  | { on: 'tick' };

export type SpeakerEffect = { do: 'speak'; text: string; by: By } | { do: 'cut' } | { do: 'cue'; cue: Cue };

/** If the voice has not begun by then, it skipped the words. */
export const START_WITHIN_MS = 2_000;
/** The server must make the sound and send it. */
export const SERVER_START_WITHIN_MS = 6_000;
/**
 * A slow voice needs about this long for one letter. If a voice never reports its end, it counts as finished then.
 */
export const LONGEST_MS_A_LETTER = 150;
export const REST_AFTER_CUT_MS = 200;
const TRIES: Readonly<Record<By, number>> = { phone: 2, server: 1 };

export const newSpeaker = (muted: boolean, by: By = 'phone'): Speaker => ({
  waiting: [],
  by,
  restUntil: 0,
  soundingUntil: 0,
  microphoneOpen: false,
  muted,
  unlocked: false,
  silent: false,
  said: -1,
});

export interface Spoken {
  speaker: Speaker;
  effects: SpeakerEffect[];
}

/** This phone itself makes a sound: it must not count as the crew's voice. */
export const isHeard = ({ saying, soundingUntil }: Speaker): boolean =>
  saying?.begun === true || soundingUntil > 0;

export function speak(speaker: Speaker, event: SpeakerEvent, now: number): Spoken {
  const { speaker: then, effects } = answer(speaker, event, now);
  const ends = effects.flatMap((effect) => (effect.do === 'cue' ? [now + cueLength(effect.cue)] : []));
  const over = now < then.soundingUntil ? then.soundingUntil : 0;
  return { speaker: { ...then, soundingUntil: Math.max(over, ...ends) }, effects };
}

function answer(speaker: Speaker, event: SpeakerEvent, now: number): Spoken {
  switch (event.on) {
    case 'say':
      return say(speaker, event.announcement, now);
    case 'unspoken': {
      const dropped = drop(speaker, ({ kind }) => kind === 'instruction', now);
      const cue = event.cue ? signal(dropped.speaker, event.cue) : [];
      return { speaker: dropped.speaker, effects: [...dropped.effects, ...cue] };
    }
    case 'cue':
      return { speaker, effects: signal(speaker, event.cue) };
    case 'withdraw':
      return drop(speaker, (u) => u.seq === event.seq, now);
    case 'forget':
      return drop(speaker, () => true, now);
    case 'microphone':
      return event.open ? listen(speaker, now) : next({ ...speaker, microphoneOpen: false }, now);
    case 'mute':
      return event.muted
        ? drop({ ...speaker, muted: true }, () => true, now)
        : next({ ...speaker, muted: false }, now);
    case 'unlock':
      return next({ ...speaker, unlocked: true }, now);
    case 'began':
      return still(
        speaker.saying ? { ...speaker, saying: { ...speaker.saying, begun: true }, silent: false } : speaker,
      );
    case 'ended':
      return next(unsaying(finished(speaker)), now);
    case 'failed':
      return speaker.saying && !speaker.saying.begun ? fail(speaker, speaker.saying, now) : still(speaker);
    case 'tick':
      return tick(speaker, now);
  }
}

const still = (speaker: Speaker): Spoken => ({ speaker, effects: [] });

/**
 * The newest replaces a waiting one of the same kind. Notices are all kept. An instruction also cuts one that is
 * being spoken.
 */
function say(speaker: Speaker, announcement: Announcement, now: number): Spoken {
  const waiting = [...speaker.waiting.filter((u) => !supersedes(announcement, u)), announcement];
  const cue = announcement.cue ? signal(speaker, announcement.cue) : [];
  if (speaker.muted) return { speaker, effects: cue };
  const queued = { ...speaker, waiting };
  const outdated = announcement.kind === 'instruction' && speaker.saying?.kind === 'instruction';
  const then = outdated ? cut(queued, now) : next(queued, now);
  return { speaker: then.speaker, effects: [...cue, ...then.effects] };
}

function drop(speaker: Speaker, gone: (u: Announcement) => boolean, now: number): Spoken {
  const kept = { ...speaker, waiting: speaker.waiting.filter((u) => !gone(u)) };
  return speaker.saying && gone(speaker.saying) ? cut(kept, now) : still(kept);
}

/** Stops for the person. What it was saying waits until the microphone is closed. */
function listen(speaker: Speaker, now: number): Spoken {
  const open = { ...speaker, microphoneOpen: true };
  if (!speaker.saying) return still(open);
  const interrupted = plain(speaker.saying);
  const outdated = speaker.waiting.some((u) => supersedes(u, interrupted));
  const waiting = outdated ? speaker.waiting : [interrupted, ...speaker.waiting];
  return cut({ ...open, waiting }, now);
}

function cut(speaker: Speaker, now: number): Spoken {
  return {
    speaker: { ...unsaying(speaker), restUntil: now + REST_AFTER_CUT_MS },
    effects: [{ do: 'cut' }],
  };
}

function tick(speaker: Speaker, now: number): Spoken {
  const { saying } = speaker;
  if (!saying) return next(speaker, now);
  if (saying.begun) return now < saying.endBy ? still(speaker) : next(unsaying(speaker), now);
  return now < saying.startBy ? still(speaker) : fail(speaker, saying, now);
}

/** Asks once more, then the other voice, then leaves it to the screen. */
function fail(speaker: Speaker, saying: Announcement, now: number): Spoken {
  const failures = (saying.failures ?? 0) + 1;
  const again = plain(saying);
  if (failures < TRIES[speaker.by])
    return cut({ ...speaker, waiting: [{ ...again, failures }, ...speaker.waiting] }, now);
  if (speaker.by === 'phone')
    return cut({ ...speaker, by: 'server', waiting: [again, ...speaker.waiting] }, now);
  return cut({ ...speaker, by: 'phone', silent: true }, now);
}

/** Begins the next one, oldest entry first, if the voice is free and allowed. */
function next(speaker: Speaker, now: number): Spoken {
  const waiting = speaker.waiting.filter((u) => u.until > now);
  const idle = { ...speaker, waiting };
  const hushed = speaker.saying || speaker.muted || speaker.microphoneOpen || !speaker.unlocked;
  if (hushed || now < speaker.restUntil) return still(idle);
  const [first, ...others] = [...waiting].sort((a, b) => a.seq - b.seq);
  if (!first) return still(idle);
  const { by } = speaker;
  const startBy = now + (by === 'phone' ? START_WITHIN_MS : SERVER_START_WITHIN_MS);
  const endBy = startBy + 1_000 + first.text.length * LONGEST_MS_A_LETTER;
  return {
    speaker: { ...idle, waiting: others, saying: { ...first, startBy, endBy, begun: false } },
    effects: [{ do: 'speak', text: first.text, by }],
  };
}

const signal = ({ microphoneOpen, unlocked }: Speaker, cue: Cue): SpeakerEffect[] =>
  microphoneOpen || !unlocked ? [] : [{ do: 'cue', cue }];

const supersedes = (newer: Announcement, older: Announcement): boolean =>
  newer.kind === older.kind && newer.kind !== 'notice';

const finished = (speaker: Speaker): Speaker =>
  speaker.saying?.kind === 'instruction' ? { ...speaker, said: speaker.saying.seq } : speaker;

const unsaying = ({ saying: _, ...rest }: Speaker): Speaker => rest;

const plain = ({ seq, kind, text, until, cue }: Announcement): Announcement => ({
  seq,
  kind,
  text,
  until,
  ...(cue && { cue }),
});
