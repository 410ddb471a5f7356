import * as z from 'zod/mini';

/** How far a reading may lower what is believed of a voice, in log odds; it never raises it (docs/speech.md says why). Ours, no source. */
export const LEAST_SHIFT = -2;

/**
 * What ten digits, read once, say of a voice: by how much the belief in its words is lowered, in log odds; 0: it is heard as well as is believed. The page that heard them
 * has it as long as it is open, and sends it with each talk. Nobody stores it.
 */
export const Voice = z.object({
  shift: z.number().check(z.minimum(LEAST_SHIFT), z.maximum(0)),
});
export type Voice = z.infer<typeof Voice>;
