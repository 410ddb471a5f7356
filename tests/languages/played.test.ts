import { describe, expect, it } from 'vitest';
import { translator } from '../../src/languages/translate.ts';
import type { Fact } from '../../src/model/facts.ts';
import { exchange } from '../../src/record/exchange.ts';
import { demo } from '../server/played-site.ts';
import { LANGUAGES } from './languages.ts';

/** What both phones show and say of a fact. What people said stays in their words. */
function wordsOf(fact: Fact): string[] {
  switch (fact.type) {
    case 'instruction':
      return [fact.say, fact.show, fact.why];
    case 'query':
    case 'readback':
    case 'notice':
      return [fact.text];
    default:
      return [];
  }
}

/** The texts as they are put together while a crew works; `untranslated.test.ts` reads their parts in the sources. */
describe.each(LANGUAGES)('in $code', ({ language }) => {
  const translate = translator(language);
  const lacking = (texts: readonly string[]) => [
    ...new Set(texts.filter((text) => translate(text) === undefined)),
  ];

  it('says all that was asked, answered and told in the visits of a played site', () => {
    const texts = demo.visits.flatMap(({ entries }) => entries.flatMap(({ fact }) => wordsOf(fact)));
    expect(texts.length).toBeGreaterThan(1000);
    expect(lacking(texts)).toEqual([]);
  });

  it('shows the whole exchange of each visit', () => {
    const texts = demo.visits.flatMap(({ entries }) => {
      const opened = entries.map(({ fact }) => fact).find((fact) => fact.type === 'opened');
      return exchange(entries, opened?.setup.meter).flatMap(({ fact, text }) =>
        fact.type === 'said' || fact.type === 'remark' ? [] : [text],
      );
    });
    expect(texts.length).toBeGreaterThan(1000);
    expect(lacking(texts)).toEqual([]);
  });
});
