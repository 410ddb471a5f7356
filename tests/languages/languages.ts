import { LANGUAGE as de } from '../../src/languages/de/language.ts';
import { LANGUAGE as es } from '../../src/languages/es/language.ts';
import { LANGUAGE as fr } from '../../src/languages/fr/language.ts';
import type { Language } from '../../src/languages/translate.ts';
import type { TypedLanguage } from '../../src/model/language.ts';

/** The languages beside English, as a test goes through them; `towords`: their tag in the npm library to-words. */
export const LANGUAGES: readonly { code: TypedLanguage; language: Language; toWords: readonly string[] }[] = [
  { code: 'es', language: es, toWords: ['es-ES', 'es-MX'] },
  { code: 'de', language: de, toWords: ['de-DE'] },
  { code: 'fr', language: fr, toWords: ['fr-FR', 'fr-BE', 'fr-CH'] },
];
