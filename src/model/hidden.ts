/**
 * Characters that no one sees and that may stand in no name: control characters, marks and overrides of the writing
 * direction (Unicode 9, "Bidirectional Algorithm"), halves of a pair, and the sign of a letter that was lost.
 */
const HIDDEN = /[\p{Cc}\p{Cs}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFFFD]/u;
const ALL_HIDDEN = new RegExp(HIDDEN, 'gu');
/** In a text of several lines, line breaks and tabs may stand. */
const HIDDEN_IN_LINES = /(?![\t\n\r])[\p{Cc}\p{Cs}\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069\uFFFD]/u;

/** As a program may print a text that others wrote: what a terminal obeys is written as a code, \u{1b}, and so is the end of a line. */
export const printable = (text: string): string =>
  text.replace(ALL_HIDDEN, (sign) => `\\u{${sign.codePointAt(0)?.toString(16)}}`);

/** The first such character, as "U+202E"; undefined where there is none. */
export function hiddenIn(text: string, lines = false): string | undefined {
  const [found] = (lines ? HIDDEN_IN_LINES : HIDDEN).exec(text) ?? [];
  return found && `U+${found.codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0')}`;
}
