import { describe, expect, it } from 'vitest';
import { translator } from '../../src/languages/translate.ts';
import { LANGUAGES } from './languages.ts';
import { sources } from './sources.ts';
import { ENGLISH_PLACES, ENGLISH_TEXTS } from './still-english.ts';
import { SLOT, type Text, textsIn } from './texts.ts';

const READING_MS = 240_000;

/** Every sentence is in src/phrases, every label in a page: see DEVELOPERS.md. */
const isWanted = (file: string): boolean =>
  file.startsWith('src/phrases/') || (file.startsWith('client/') && file.endsWith('.tsx'));

/** Some texts stand beside another one, or a figure, which are not theirs: they are looked at with one. */
const beside = (text: string): string[] => {
  const whole = text.replace(new RegExp(`^${SLOT} (?=\\p{Lu})`, 'u'), '');
  return [whole, `${whole} ${SLOT}`, `${whole} ${SLOT}.`, `${SLOT} ${whole}`];
};

const placeOf = ({ file }: Text): string | undefined =>
  Object.keys(ENGLISH_PLACES).find((place) => file.startsWith(place));

describe(
  'every text of ours',
  () => {
    const { program, root } = sources();
    const texts = textsIn(program, root, isWanted);
    const isIn = LANGUAGES.map(({ code, language }) => {
      const translate = translator(language);
      return {
        code,
        knows: ({ text }: Text): boolean => beside(text).some((each) => translate(each) !== undefined),
      };
    });
    const untranslated = texts.flatMap((text) => {
      const lacking = isIn.filter(({ knows }) => !knows(text)).map(({ code }) => code);
      return lacking.length > 0 ? [{ ...text, lacking }] : [];
    });

    it('is found in the sources', () => {
      const found = texts.map(({ text }) => text);
      // One of each kind: a constant, a template, a choice inside a sentence, a label, an attribute.
      for (const one of [
        'There is nothing to take back.',
        'Did the meter show 7?',
        'Raise gain to read 7.',
        'Yes, leave this job',
        'What was said',
      ])
        expect(found).toContain(one);
    });

    it('has a line in every language, or a reason in still-english.ts', () => {
      const missing = untranslated.filter((text) => !placeOf(text) && !(text.text in ENGLISH_TEXTS));
      expect(
        missing.map(({ file, line, text, lacking }) => `${file}:${line} (${lacking.join(', ')}): ${text}`),
        [
          'These texts would be English on a phone that is set to another language.',
          `Add a line for each to src/languages/${LANGUAGES.map(({ code }) => code).join('/, ')}/ (any file there that fits);`,
          `"${SLOT}" stands for what is only known later: write {n} for a number, {x} for words of people, {any name} for a text of ours.`,
          'What no person reads: into tests/languages/still-english.ts, with the reason. See docs/languages.md.',
        ].join('\n'),
      ).toEqual([]);
    });

    it('stands in still-english.ts only as long as it is needed', () => {
      const places = new Set(untranslated.map(placeOf));
      const needed = new Set(untranslated.filter((text) => !placeOf(text)).map(({ text }) => text));
      const idle = [
        ...Object.keys(ENGLISH_PLACES).filter((place) => !places.has(place)),
        ...Object.keys(ENGLISH_TEXTS).filter((text) => !needed.has(text)),
      ];
      expect(
        idle,
        'These have a line in every language, or are gone: take them out of still-english.ts.',
      ).toEqual([]);
    });
  },
  READING_MS,
);
