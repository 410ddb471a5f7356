import * as z from 'zod/mini';
import { Seq } from './ids.ts';

/** What a propped phone follows where no number is shown: a tone by its microphone, a lamp by its camera. */
export const SensorSort = z.enum(['tone', 'lamp']);
export type SensorSort = z.infer<typeof SensorSort>;

/** What of an indicator may follow the light. Level: of a tone, or of a lamp against what is around it. */
export const Feature = z.enum(['level', 'pitch', 'hue', 'rate']);
export type Feature = z.infer<typeof Feature>;

/**
 * What the person taught: which feature follows the light, and what it is at none, some and plenty. dB, semitones above 1 Hz, degrees,
 * pulses a second.
 */
export const Profile = z.object({
  feature: Feature,
  /** Missing: it is not there at all, such as the pitch of silence. */
  none: z.optional(z.number()),
  some: z.number(),
  plenty: z.number(),
  /** How far single looks scattered while it was taught. */
  sd: z.number().check(z.positive()),
});
export type Profile = z.infer<typeof Profile>;

/**
 * How a phone came to a word: from so many moments; `place`: how far along the way from some (0) to plenty (1); `against`: the
 * words that it was held against. Missing: there are none.
 */
export const SensorLook = z.object({
  sort: SensorSort,
  moments: z.int().check(z.minimum(1), z.maximum(1_000)),
  place: z.optional(z.number()),
  against: z.optional(Seq),
});
export type SensorLook = z.infer<typeof SensorLook>;

/** What such a phone says of itself. Each is said once, when it begins. */
export const SensorState = z.enum([
  'sensing',
  /** The lamp is not where it was taught, or something else is before the camera. */
  'moved',
  /** Around the lamp nothing is to be seen: the camera may be covered. */
  'dark',
  /** It is louder around the tone than when it was taught: a tone may be hidden. */
  'noisy',
  /** Not even noise: the microphone is off. */
  'silent',
  /** There is something that fits nothing that was taught, or the page cannot be seen. */
  'unclear',
  'battery-low',
  'ended',
]);
export type SensorState = z.infer<typeof SensorState>;
