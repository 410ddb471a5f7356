import { setImmediate } from 'node:timers/promises';
import { ToWords } from 'to-words';
import { describe, expect, it } from 'vitest';
import { BYTE, FOUR_FIGURES, numberIn, numbersAskedIn } from './read.ts';

const EVERY = Array.from({ length: 10_000 }, (_, n) => n);
const FIGURES = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const TEENS = 'ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');

/** Some of the numbers, with every last digit: all of them would only take longer. */
const seventh = (n: number): boolean => n % 7 === 0;

/** The numbers whose words from `spoken` are not taken as exactly that number. */
const misheard = async (spoken: (n: number) => string, numbers = EVERY): Promise<string[]> => {
  const wrong: string[] = [];
  for (const n of numbers) {
    // Lets the test runner report in between.
    if (n % 1000 === 0) await setImmediate();
    const heard = numberIn(spoken(n));
    if (heard !== n) wrong.push(`${n} as "${spoken(n)}": ${JSON.stringify(heard)}`);
  }
  return wrong;
};

const below100 = (n: number): string => {
  if (n < 10) return FIGURES[n] as string;
  if (n < 20) return TEENS[n - 10] as string;
  const tens = TENS[Math.floor(n / 10) - 2] as string;
  return n % 10 === 0 ? tens : `${tens} ${FIGURES[n % 10]}`;
};
const pair = (n: number, oh: string): string => (n < 10 ? `${oh} ${FIGURES[n]}` : below100(n));

describe('every whole number from 0 to 9999', { timeout: 180_000 }, () => {
  // General-purpose reference: the npm library to-words.
  it('is heard in British words, with "and"', async () => {
    const british = new ToWords({ localeCode: 'en-GB' });
    expect(await misheard((n) => british.convert(n))).toEqual([]);
  });

  it('is heard in American words, without "and"', async () => {
    const american = new ToWords({ localeCode: 'en-US' });
    expect(await misheard((n) => american.convert(n).replaceAll(' And ', ' '))).toEqual([]);
  });

  it('is heard with "a hundred" and "a thousand" for one', async () => {
    const british = new ToWords({ localeCode: 'en-GB' });
    const beginsWithOne = EVERY.filter((n) => /^1\d\d\d?$/.test(String(n)));
    const spoken = (n: number): string => british.convert(n).replace(/^One (Hundred|Thousand)/, 'a $1');
    expect(await misheard(spoken, beginsWithOne)).toEqual([]);
  });

  it('is heard digit by digit, with zero and with oh', async () => {
    const figures = (n: number): string[] =>
      [...String(n)].map((figure) => FIGURES[Number(figure)] as string);
    expect(await misheard((n) => figures(n).join(' '))).toEqual([]);
    const withOh = (n: number): string => figures(n).join(' ').replaceAll(' zero', ' oh');
    const withNought = EVERY.filter((n) => /.0/.test(String(n)));
    expect(await misheard(withOh, withNought)).toEqual([]);
    expect(await misheard((n) => String(n))).toEqual([]);
    expect(await misheard((n) => [...String(n)].join(' '), EVERY.slice(10).filter(seventh))).toEqual([]);
  });

  it('is heard with leading zeros, as meters with four digits show it', async () => {
    const shown = (n: number): string =>
      [...String(n).padStart(4, '0')].map((figure) => FIGURES[Number(figure)]).join(' ');
    expect(await misheard(shown, EVERY.slice(0, 1000))).toEqual([]);
  });

  it('is heard in pairs up to 999: "one forty two", "seven oh five"', async () => {
    const inPairs = (n: number): string => `${FIGURES[Math.floor(n / 100)]} ${pair(n % 100, 'oh')}`;
    expect(
      await misheard(
        inPairs,
        EVERY.slice(100, 1000).filter((n) => n % 100 !== 0),
      ),
    ).toEqual([]);
  });

  it('is heard in pairs above: "nineteen oh five", "ten forty two", "twenty oh five"', async () => {
    const plain = (n: number): boolean =>
      n % 100 !== 0 && (Math.floor(n / 100) < 20 || (n % 1000 < 10 && n % 1000 > 0));
    const numbers = EVERY.slice(1000).filter(plain);
    expect(numbers.length).toBeGreaterThan(900);
    expect(await misheard((n) => `${below100(Math.floor(n / 100))} ${pair(n % 100, 'oh')}`, numbers)).toEqual(
      [],
    );
  });

  it('is heard in hundreds: "twelve hundred", "nineteen hundred and five"', async () => {
    const inHundreds = (n: number): string =>
      `${below100(Math.floor(n / 100))} hundred${n % 100 === 0 ? '' : ` and ${below100(n % 100)}`}`;
    expect(await misheard(inHundreds, EVERY.slice(1000, 2000))).toEqual([]);
  });

  it('is asked about when its pairs could be two numbers, and is one of the answers', async () => {
    const doubtful = EVERY.slice(2000).filter((n) => n % 100 >= 10 && seventh(n));
    const missing = doubtful.filter((n) => {
      const asked = numbersAskedIn(`${below100(Math.floor(n / 100))} ${below100(n % 100)}`, FOUR_FIGURES);
      return !(Array.isArray(asked) && asked.length > 1 && asked.includes(n));
    });
    expect(doubtful.length).toBeGreaterThan(1000);
    expect(missing).toEqual([]);
  });
});

describe('digits as spoken on the radio', () => {
  it.each([
    // ICAO Annex 10 Volume II, spelling of the figures in radiotelephony (from memory).
    ['ze-ro wun too tree', 123],
    ['fow-er fife six sev-en', 4567],
    ['ait nin-er', 89],
    ['fower niner day-see-mal tree', 49.3],
    ['wun hun-dred', 100],
    ['too tou-sand fife hun-dred', 2500],
    ['tree tousand', 3000],
    // ITU Radio Regulations Appendix 14, figure code words (from memory).
    ['nadazero unaone bissotwo terrathree', 123],
    ['kartefour pantafive soxisix setteseven', 4567],
    ['oktoeight novenine decimal unaone', 89.1],
  ])('%s is %d', (words, number) => {
    expect(numberIn(words)).toBe(number);
  });
});

describe('a reading', () => {
  it.each([
    ['one forty two', 142],
    ['a hundred and forty-two', 142],
    ['a hundred, forty two', 142],
    ['hundred and five', 105],
    ['hundred oh five', 105],
    ['one four two', 142],
    ['two fifty five', 255],
    ['fifty point five', 50.5],
    ['fifty decimal five', 50.5],
    ['three point two five', 3.25],
    ['three point twenty five', 3.25],
    ['three point oh five', 3.05],
    ['one forty two point five', 142.5],
    ['point five', 0.5],
    ['oh point five', 0.5],
    ['nought point seven five', 0.75],
    ['zero', 0],
    ['nil', 0],
    ['nought', 0],
    ['minus zero', 0],
    ['minus three point five', -3.5],
    ['minus twelve', -12],
    ['niner', 9],
    ['oh seven', 7],
    ['double oh seven', 7],
    ['double four', 44],
    ['double four five', 445],
    ['one double four', 144],
    ['triple one', 111],
    ['treble two', 222],
    ['fifty and a half', 50.5],
    ['a hundred and a half', 100.5],
    ['twelve hundred', 1200],
    ['ten oh five', 1005],
    ['one hundred percent', 100],
    ['142', 142],
    ['142.', 142],
    ['50.5', 50.5],
    ['50,5', 50.5],
    ['.5', 0.5],
    ['-3.5', -3.5],
    ['−3.5', -3.5],
    ['minus 3.5', -3.5],
    ['42%', 42],
    ['3.5V', 3.5],
    ['-3.5 dB', -3.5],
    ['minus six d b', -6],
    ['one twenty counts', 120],
    ['forty two per cent', 42],
    ['er, one forty two please', 142],
    ["it's one forty two", 142],
    ['okay, reading one forty two now, over', 142],
    ['the reading is one forty two', 142],
    ["we've got one forty two", 142],
    ['copy, one forty two', 142],
    ['right, one forty two', 142],
    ['back to one forty two', 142],
    ['still one forty two', 142],
    // Spellings that a recogniser writes for digits, only between digits.
    ['one for two', 142],
    ['won four too', 142],
    ['two ate', 28],
    ['thre fourty', 340],
  ])('"%s" is %d', (words, number) => {
    expect(numberIn(words, {})).toBe(number);
  });
});

describe('words that could be two numbers are asked about', () => {
  it.each([
    ['fifteen fifty', BYTE, [15, 50]],
    ['fifty fifteen', BYTE, [50, 15]],
    ['fifteen fifty', {}, [1550, 15, 50]],
    ['nineteen forty two', {}, [1942, 19, 42]],
    ['twenty one forty', {}, [2140, 21, 40, 20, 140]],
    ['forty two fifty', BYTE, [42, 50, 40, 250]],
    ['forty fifty', {}, [4050, 40, 50]],
    ['twenty fifteen', FOUR_FIGURES, [2015, 20, 15]],
    ['twenty one hundred', {}, [2100, 20, 100]],
    ['fifty oh five', BYTE, [50, 5]],
    ['2,500', FOUR_FIGURES, [2.5, 2500]],
    ['- 5', FOUR_FIGURES, [-5, 5]],
  ])('"%s" on %j', (words, context, numbers) => {
    expect(numbersAskedIn(words, context)).toEqual(numbers);
  });

  it('takes "nineteen forty two" as one number when the meter has four digits', () => {
    expect(numberIn('nineteen forty two', FOUR_FIGURES)).toBe(1942);
  });
});

describe('half a number is not a number', () => {
  it.each([
    'point',
    'minus',
    'oh',
    'oh oh',
    'and five',
    'fifty point',
    'double',
    'hundred hundred',
    'one forty forty',
    'fifty to',
    'to fifty',
    'for forty',
    'three to five',
    'five for',
    'too',
    'to',
    'one um forty two',
    'one 42',
    '20 5',
    '1.2.3',
    '1e5',
    '0x10',
    '5 over 3',
    'over fifty',
  ])('"%s" is unclear', (words) => {
    expect(numberIn(words)).toMatchObject({ kind: 'unclear' });
  });
});
