import * as z from 'zod/mini';

/** A word and a number that two screens show, so that people see whether they speak of the same phone: "TANGO 42". */
export const Mark = z.string().check(z.regex(/^[A-Z]{4,8} \d{2}$/));

/** What the panel says to a phone that asks to come in. */
export const AdmissionAnswer = z.enum(['yes', 'no']);
export type AdmissionAnswer = z.infer<typeof AdmissionAnswer>;
