import * as z from 'zod/mini';

/** The languages that words can be typed in beside English. Words of a log without one are English. */
export const TypedLanguage = z.enum(['es', 'de', 'fr']);
export type TypedLanguage = z.infer<typeof TypedLanguage>;
