/**
 * When speech begins and ends, for talk without a button: a plain record and one pure step for each frame. In a
 * noisy place the voice detector must be more certain. What this phone says itself is never let in.
 */
export interface Gate {
  /** Loudness of the place without speech, dB below full scale. Undefined until the first frame. */
  readonly floor: number | undefined;
  /** Loudness of speech heard so far, dB. */
  readonly speech: number | undefined;
  /** Frames since the start, without the deaf ones. */
  readonly frames: number;
  /** For how many frames speech has been let through; 0: it is not. */
  readonly open: number;
  /** Frames in a row that sounded like speech, and frames since the last one that did. */
  readonly run: number;
  readonly lull: number;
  /** Frames of this utterance that sounded like speech. */
  readonly voiced: number;
  /** Nothing is let in for this many more frames: the room still echoes our own voice. */
  readonly deaf: number;
}

export interface GateFrame {
  /** From the voice detector, 0 to 1. */
  probability: number;
  /** Root mean square, dB below full scale. */
  db: number;
  /** This phone is speaking or playing a signal. */
  speaking: boolean;
}

export type GateEffect =
  /** Speech has begun. The held frames before it belong to it. */
  | 'begin'
  /** It has ended. Now it can be turned into words. */
  | 'end'
  /** It was a knock or a cough, or our own voice interrupted it. */
  | 'drop';

export const FRAME_MS = 32;
const frames = (ms: number): number => Math.round(ms / FRAME_MS);

/** Sound from before speech was noticed is kept, so that the first word is complete. */
export const PRE_ROLL = frames(480);
const BEGIN_AFTER = frames(64);
const END_AFTER = frames(700);
const SHORTEST = frames(160);
/** With the pre-roll, still below the server's limit for one utterance. */
const LONGEST = frames(13_500);
/** Echo of our own voice after it has ended. */
const DEAF_TAIL = frames(400);

const QUIET_DB = -60;
const LOUD_DB = -25;
const SURE_IN_QUIET = 0.5;
const SURE_IN_NOISE = 0.85;
/** To continue needs less than to begin. Otherwise words break at their soft ends. */
const SLACK = 0.15;
/** Speech is at least this much louder than the noise of the place. */
const ABOVE_FLOOR_DB = 4;
/** If speech is less than this above the noise, numbers are heard wrong. Common practice, no source. */
const TOO_CLOSE_DB = 9;
/** It follows a quieter place fast, and a louder one slowly: a long word must not count as noise. */
const FALL = 0.2;
const RISE = 0.01;
const SETTLED = frames(1_000);

export const newGate = (): Gate => ({
  floor: undefined,
  speech: undefined,
  frames: 0,
  open: 0,
  run: 0,
  lull: 0,
  voiced: 0,
  deaf: 0,
});

/** How sure the detector must be in a place this loud. */
export function sureness(floor: number | undefined): number {
  const share = ((floor ?? QUIET_DB) - QUIET_DB) / (LOUD_DB - QUIET_DB);
  return SURE_IN_QUIET + (SURE_IN_NOISE - SURE_IN_QUIET) * Math.min(1, Math.max(0, share));
}

/** The voice is too close to the noise, or the noise is as loud as a voice: it is better to type. */
export const tooLoudHere = ({ floor, speech, frames: heard }: Gate): boolean =>
  heard >= SETTLED &&
  floor !== undefined &&
  (speech === undefined ? floor > LOUD_DB : speech - floor < TOO_CLOSE_DB);

export interface Gated {
  gate: Gate;
  effect?: GateEffect;
}

export function step(gate: Gate, frame: GateFrame): Gated {
  if (frame.speaking) return shut({ ...gate, deaf: DEAF_TAIL });
  if (gate.deaf > 0) return shut({ ...gate, deaf: gate.deaf - 1 });
  const needed = sureness(gate.floor);
  const above = frame.db - (gate.floor ?? frame.db) >= ABOVE_FLOOR_DB || gate.floor === undefined;
  const speaks = above && frame.probability >= (gate.open > 0 ? needed - SLACK : needed);
  const heard = { ...learn(gate, frame, speaks), frames: gate.frames + 1 };
  const run = speaks ? gate.run + 1 : 0;
  if (gate.open === 0) {
    if (run < BEGIN_AFTER) return { gate: { ...heard, run } };
    return { gate: { ...heard, run, open: 1, lull: 0, voiced: run }, effect: 'begin' };
  }
  const lull = speaks ? 0 : gate.lull + 1;
  const voiced = gate.voiced + (speaks ? 1 : 0);
  if (lull < END_AFTER && gate.open < LONGEST)
    return { gate: { ...heard, run, open: gate.open + 1, lull, voiced } };
  const effect = voiced < SHORTEST ? 'drop' : 'end';
  return { gate: { ...heard, run: 0, open: 0, lull: 0, voiced: 0 }, effect };
}

function shut(gate: Gate): Gated {
  const quiet = { ...gate, run: 0, open: 0, lull: 0, voiced: 0 };
  return gate.open > 0 ? { gate: quiet, effect: 'drop' } : { gate: quiet };
}

/** The noise is learnt between words, the loudness of speech during words. */
function learn(gate: Gate, { db, probability }: GateFrame, speaks: boolean): Gate {
  if (speaks) return { ...gate, speech: toward(gate.speech, db, 0.1) };
  if (probability > SURE_IN_QUIET - SLACK || gate.open > 0) return gate;
  return {
    ...gate,
    floor: toward(gate.floor, db, gate.floor !== undefined && db > gate.floor ? RISE : FALL),
  };
}

const toward = (from: number | undefined, to: number, share: number): number =>
  from === undefined ? to : from + (to - from) * share;
