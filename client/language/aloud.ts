import { ENGLISH_FIGURES, spoken } from '../../src/grammar/speak.ts';
import { onScreen } from './languages.ts';

/** Texts of the last sayings that had to stay English; a few at most wait to be said. */
const english: string[] = [];
const REMEMBERED = 20;

/** A sentence as this phone says it: in its language, numbers figure by figure. */
export function aloud(text: string): string {
  const { translate, spoken: figures } = onScreen();
  if (!translate) return spoken(text);
  const said = translate(text);
  if (said !== undefined) return spoken(said, figures);
  const left = spoken(text, ENGLISH_FIGURES);
  english.push(left);
  english.splice(0, english.length - REMEMBERED);
  return left;
}

/** The language of such a sentence, as a tag: what no language has yet is said by an English voice. */
export const languageAloud = (said: string): string => (english.includes(said) ? 'en' : onScreen().code);
