import { ENGLISH_FIGURES, type SpokenFigures } from '../../src/grammar/speak.ts';
import { inAmerican } from '../../src/languages/american.ts';
import { type Language, type Translate, translator } from '../../src/languages/translate.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import { browserStorage } from '../browser/storage.ts';

/** The languages to choose from, by their names in themselves. */
export const LANGUAGE_NAMES = {
  en: 'English (British)',
  'en-US': 'English (American)',
  es: 'Español',
  de: 'Deutsch',
  fr: 'Français',
} as const;
export type LanguageCode = keyof typeof LANGUAGE_NAMES;
export const LANGUAGE_CODES = Object.keys(LANGUAGE_NAMES) as LanguageCode[];

/** Each is fetched when it is chosen. */
const FETCH: {
  readonly [code in TypedLanguage]: () => Promise<{ LANGUAGE: Language }>;
} = {
  es: () => import('../../src/languages/es/language.ts'),
  de: () => import('../../src/languages/de/language.ts'),
  fr: () => import('../../src/languages/fr/language.ts'),
};

/** The language that this page is drawn and spoken in. */
export interface OnScreen {
  readonly code: LanguageCode;
  /** Undefined in British English, in which all is written. */
  readonly translate?: Translate;
  readonly spoken: SpokenFigures;
}

const ENGLISH: OnScreen = { code: 'en', spoken: ENGLISH_FIGURES };

let now = ENGLISH;
let isDocument = false;

export const onScreen = (): OnScreen => (isDocument && isTyped(now.code) ? ENGLISH : now);

/**
 * What others read later is in one language, English: a record that is half in another one would be hard to read for
 * everybody. `yes`: the page that is drawn from now on is such a document.
 */
export function drawsDocument(yes: boolean): void {
  isDocument = yes;
  const { code } = onScreen();
  document.documentElement.lang = code === 'en' ? 'en-GB' : code;
}

/** A text of ours as this page says it; in English while nobody has translated it. */
export const inOwnWords = (text: string): string => onScreen().translate?.(text) ?? text;

/** What words typed on this page are in; undefined for English. */
export const typedIn = (): TypedLanguage | undefined => {
  const { code } = onScreen();
  return isTyped(code) ? code : undefined;
};

/** By the table, and not by the schema: the first page needs no schema, and the library of them is larger than that page. */
const isTyped = (code: LanguageCode): code is TypedLanguage => code in FETCH;

const KEY = 'language';

/** As it was chosen on this phone; before that, as its browser is set. */
export function savedLanguage(): LanguageCode {
  const kept = browserStorage.read(KEY);
  return codeOf(kept) ?? navigator.languages?.map(codeOf).find((code) => code !== undefined) ?? 'en';
}

/** "es-MX" is Spanish; "en-AU" is written like British English. */
function codeOf(tag: unknown): LanguageCode | undefined {
  const [language] = typeof tag === 'string' ? tag.split('-') : [];
  return LANGUAGE_CODES.find((code) => code === tag) ?? LANGUAGE_CODES.find((code) => code === language);
}

export const keepLanguage = (code: LanguageCode): void => void browserStorage.write(KEY, code);

/** Dispatched when the page has another language: everything is then drawn anew. */
export const LANGUAGE_CHANGED = 'ladderline-language';

/** False: it could not be fetched, and the page stays as it is. */
export async function speakOnScreen(code: LanguageCode): Promise<boolean> {
  try {
    now = await fetched(code);
  } catch {
    return false;
  }
  drawsDocument(isDocument);
  dispatchEvent(new Event(LANGUAGE_CHANGED));
  return true;
}

async function fetched(code: LanguageCode): Promise<OnScreen> {
  if (code === 'en') return { code, spoken: ENGLISH_FIGURES };
  if (code === 'en-US') return { code, translate: inAmerican, spoken: ENGLISH_FIGURES };
  const { LANGUAGE } = await FETCH[code]();
  return { code, translate: translator(LANGUAGE), spoken: LANGUAGE.spoken };
}
