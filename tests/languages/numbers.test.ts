import { ToWords } from 'to-words';
import { describe, expect, it } from 'vitest';
import { speakNumber } from '../../src/grammar/speak.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import { understand } from '../../src/understand/understand.ts';
import { LANGUAGES } from './languages.ts';

/** The numbers that the words can mean, each once. */
function numbersIn(text: string, code: TypedLanguage): number[] {
  const heard = understand(text, code);
  const options =
    heard.kind === 'understood' ? [heard.intents] : heard.kind === 'ambiguous' ? heard.options : [];
  return options.flatMap(([only, ...more]) =>
    more.length === 0 && only?.kind === 'reading' && only.reading.kind === 'value'
      ? [only.reading.value]
      : [],
  );
}

const wrongOf = (numbers: readonly number[], say: (n: number) => string, code: TypedLanguage): string[] =>
  numbers.flatMap((n) => {
    const said = say(n);
    const heard = numbersIn(said, code);
    return heard.length === 1 && heard[0] === n ? [] : [`${n} as "${said}": ${JSON.stringify(heard)}`];
  });

const UP_TO_999 = Array.from({ length: 1000 }, (_, n) => n);
const TENTHS = UP_TO_999.map((n) => n / 10);

describe.each(LANGUAGES)('in $code', ({ code, language: { spoken }, toWords }) => {
  // Outside reference: the npm library to-words, whose tables are not ours.
  it.each(toWords)('every number to 999 is understood as %s writes it', (localeCode) => {
    const reference = new ToWords({ localeCode });
    const words = (n: number): string => reference.convert(n);
    expect(wrongOf(UP_TO_999, words, code)).toEqual([]);
    expect(wrongOf([1000, 1001, 1100, 1234, 2000, 4095], words, code)).toEqual([]);
  });

  it('what the voice says figure by figure is understood as the same number', () => {
    const say = (n: number) => speakNumber(n, { resolution: Number.isInteger(n) ? 1 : 0.1 }, spoken);
    expect(wrongOf([...UP_TO_999, ...TENTHS, -3.5, -40], say, code)).toEqual([]);
  });

  it('typed decimals have a comma, or a point', () => {
    const comma = (n: number) => n.toFixed(1).replace('.', ',');
    expect(wrongOf(TENTHS, comma, code)).toEqual([]);
    expect(wrongOf(TENTHS, (n) => n.toFixed(1), code)).toEqual([]);
    // Intl writes a number as the language does.
    const written = (n: number) => new Intl.NumberFormat(code, { useGrouping: false }).format(n);
    expect(wrongOf([0.05, 2.25, 104.5, 1234.5, 4.125], written, code)).toEqual([]);
  });

  it('asks whether a point stands before thousands', () => {
    expect(numbersIn('1.234', code).sort()).toEqual([1.234, 1234]);
    expect(numbersIn('1,234', code)).toEqual([1.234]);
    expect(numbersIn('1.234,5', code)).toEqual([1234.5]);
  });
});
