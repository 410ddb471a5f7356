/**
 * What stays English in every language, and why. The fewer the better: a text that a crew reads on a phone does not
 * belong here. `untranslated.test.ts` fails for each one that is not needed any more.
 */

/** Whole folders and files, by how their path begins. */
export const ENGLISH_PLACES: Readonly<Record<string, string>> = {};

/** Single texts, as `texts.ts` finds them. */
export const ENGLISH_TEXTS: Readonly<Record<string, string>> = {};
