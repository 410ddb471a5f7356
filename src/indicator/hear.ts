import type { Profile } from '../model/sensor.ts';
import type { Shown } from './profile.ts';
import { soundIn } from './tone.ts';
import type { Doubt, Moment } from './watch.ts';
import { semitones } from './window.ts';

/** What is known of the sound around a tone since it was taught. */
export interface Ear {
  /** How loud it was around it at none, dB. */
  readonly quietDb: number;
  /** Between which pitches it lies, semitones; missing where its pitch follows the light. */
  readonly pitches?: readonly [low: number, high: number];
}

export interface Heard extends Moment {
  readonly restDb: number;
}

/** By so much louder than when it was taught, a weak tone that was told from none then may be hidden. dB; our own figure, no source. */
const LOUDER_DB = 6;
/** So far from what was taught it is another tone. Semitones; our own figure, no source. */
const OTHER_TONE = 1;

/** One piece of sound. Without an ear, while it is taught, any tone counts. */
export function heardAt(at: number, samples: ArrayLike<number>, rate: number, ear?: Ear): Heard {
  const { tone, restDb } = soundIn(samples, rate);
  const pitch = tone && semitones(tone.frequency);
  const doubt = doubtAbout(samples, pitch, restDb, ear);
  return {
    at,
    restDb,
    db: tone?.db,
    ...(pitch !== undefined && { pitch }),
    ...(doubt && { doubt }),
  };
}

function doubtAbout(
  samples: ArrayLike<number>,
  pitch: number | undefined,
  restDb: number,
  ear: Ear | undefined,
): Doubt | undefined {
  // Where a microphone is on there is noise: nothing but zeros come from none.
  if (!Array.prototype.some.call(samples, (sample: number) => sample !== 0)) return 'silent';
  if (!ear) return undefined;
  if (pitch === undefined) return restDb > ear.quietDb + LOUDER_DB ? 'noisy' : undefined;
  const [low, high] = ear.pitches ?? [pitch, pitch];
  return pitch < low - OTHER_TONE || pitch > high + OTHER_TONE ? 'noisy' : undefined;
}

/** From what was heard while it was taught. */
export function earFrom(
  none: readonly Heard[],
  some: Shown,
  plenty: Shown,
  { feature }: Pick<Profile, 'feature'>,
): Ear {
  const rests = none.map(({ restDb }) => restDb).sort((a, b) => a - b);
  const quietDb = rests[Math.floor(rests.length / 2)] ?? 0;
  const known = [some.pitch?.value, plenty.pitch?.value].filter((pitch) => pitch !== undefined);
  return feature === 'pitch' || known.length === 0
    ? { quietDb }
    : { quietDb, pitches: [Math.min(...known), Math.max(...known)] };
}
