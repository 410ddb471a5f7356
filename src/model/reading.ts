import * as z from 'zod/mini';

/**
 * What the meter shows: a number in the units of the job's meter profile, or one of the two states without a
 * number. Never a magic number. "seen": there was light, and nobody read a number.
 */
export const Reading = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('none') }),
  z.object({ kind: z.literal('value'), value: z.number() }),
  z.object({ kind: z.literal('saturated') }),
  z.object({ kind: z.literal('seen') }),
]);
export type Reading = z.infer<typeof Reading>;

export const NO_SIGNAL: Reading = { kind: 'none' };
export const SATURATED: Reading = { kind: 'saturated' };
export const LIGHT_SEEN: Reading = { kind: 'seen' };
export const valueReading = (value: number): Reading => ({ kind: 'value', value });
