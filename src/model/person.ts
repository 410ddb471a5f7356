import * as z from 'zod/mini';
import { hiddenIn } from './hidden.ts';

const visible = (most: number) =>
  z.string().check(
    z.trim(),
    z.minLength(1),
    z.maxLength(most),
    z.refine((text) => hiddenIn(text, false) === undefined),
  );

/** Somebody of the crew or the desk, as they typed it on their phone. `competence`: a card, a course, a grade. */
export const Person = z.object({
  name: visible(80),
  firm: z.optional(visible(80)),
  competence: z.optional(visible(120)),
});
export type Person = z.infer<typeof Person>;

/** A random id that a phone keeps for itself and sends with its name. It is never logged. */
export const PhoneId = z.string().check(z.regex(/^[A-Za-z0-9_-]{21}$/));
export type PhoneId = z.infer<typeof PhoneId>;

/**
 * A short form of a phone's id, made with the id of the job as salt: the same phone has the same mark within one
 * log, and another in every other log.
 */
export const PhoneMark = z.string().check(z.regex(/^[0-9a-f]{8}$/));
export type PhoneMark = z.infer<typeof PhoneMark>;

/** The same letters; case and spaces are forgiven, nothing else. */
export const isSameName = (one: string, other: string): boolean => bare(one) === bare(other);

/** NFC: an accent typed as a letter of its own is the same name. */
const bare = (name: string): string => name.normalize('NFC').toLowerCase().replace(/\s+/gu, '');
