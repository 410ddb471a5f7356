import { describe, expect, it } from 'vitest';
import { parse } from '../../src/grammar/parse.ts';
import { translator } from '../../src/languages/translate.ts';
import { AXES } from '../../src/model/turns.ts';
import { amountWords, senseWord } from '../../src/phrases/amounts.ts';
import { WORDS } from '../../src/phrases/buttons.ts';
import { movedText } from '../../src/phrases/facts.ts';
import { understand } from '../../src/understand/understand.ts';
import { LANGUAGES } from './languages.ts';

/** Figures after a sign that are the example of a number. */
const QUOTED = /[«„]\u00a0?([^»“]+?)\u00a0?[»“]/gu;

describe.each(LANGUAGES)('in $code', ({ code, language }) => {
  const translate = translator(language);
  const said = (english: string): string => translate(english) ?? expect.fail(`not translated: ${english}`);

  it.each(Object.values(WORDS))('typing what the button "%s" is called means the same', (words) => {
    expect(understand(said(words), code)).toEqual(parse(words));
  });

  it('a turn that is read back can be typed in the same words', () => {
    for (const axis of AXES)
      for (const eighths of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, -1, -4, -8, -12]) {
        const text = said(movedText(axis, eighths));
        const meant = understand(text, code);
        const way = eighths > 0 ? 'clockwise' : 'anticlockwise';
        expect([text, meant]).toEqual([
          text,
          { kind: 'understood', intents: [{ kind: 'moved', eighths: Math.abs(eighths), axis, way }] },
        ]);
        expect(said(amountWords(eighths))).not.toBe('');
        expect(said(senseWord(eighths))).not.toBe('');
      }
  });

  it('understands everything that a sentence tells people to say', () => {
    const quoted = Object.values(language.sentences).flatMap((text) =>
      [...text.matchAll(QUOTED)].map(([, words = '']) => words),
    );
    const unknown = [...new Set(quoted)].filter(
      (words) => !words.includes('{') && understand(words, code).kind === 'unclear',
    );
    expect(quoted.length).toBeGreaterThan(20);
    expect(unknown).toEqual([]);
  });

  it('keeps each reading of a list whole', () => {
    const none = said('no signal');
    expect(said('144, no signal, 21')).toBe(`144, ${none}, 21`);
  });

  it('leaves no slot of a sentence empty', () => {
    const slots = (text: string) => [...new Set(text.match(/\{\w+\}/g))].sort();
    for (const [english, text] of Object.entries(language.sentences))
      expect([english, slots(text)]).toEqual([english, slots(english)]);
  });
});
