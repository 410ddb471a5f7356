import * as z from 'zod/mini';
import { Hash } from './ids.ts';

/** The most that the sound of one utterance may hold, bytes: 15 s at 8,000 a second, and its header. */
export const SOUND_BYTES_MOST = 121_000;
/** For how many days sound is kept where the crew wants it; 0 is not at all. */
export const SOUND_DAYS = 30;
export const SOUND_DAYS_MOST = 365;

/**
 * The sound of an utterance, kept beside the log: a WAV file, 8 kHz, G.711 mu-law. `hash`: SHA-256 of a random salt, which lies
 * beside the sound, and the file. `until`: it is deleted then (ms, the log's clock), so that nobody needs to say in the log that it is gone.
 */
export const KeptSound = z.object({
  hash: Hash,
  bytes: z.int().check(z.minimum(1), z.maximum(SOUND_BYTES_MOST)),
  until: z.int(),
});
export type KeptSound = z.infer<typeof KeptSound>;

export const SoundDays = z.int().check(z.minimum(0), z.maximum(SOUND_DAYS_MOST));
