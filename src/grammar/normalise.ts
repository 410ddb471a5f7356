import type { SpokenFigures } from './speak.ts';

/** A word of the text, or a number typed in digits, with every value it may mean. */
export type Token =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'numeral' | 'fraction'; readonly values: readonly number[]; readonly text: string };

/** How a language is written down. */
export interface Spelling extends SpokenFigures {
  /** Spellings that always mean a word of the grammar. */
  readonly respellings: readonly (readonly [RegExp, string])[];
  /** What "%" is called. */
  readonly percent: string;
  /** Letters as the grammar has them, for people who leave out what is above a letter. Lower case comes in. */
  readonly fold?: (text: string) => string;
}

export const ENGLISH_RESPELLINGS: Spelling['respellings'] = [
  // The hyphened respellings of ICAO Annex 10 Volume II (from memory), as people type them from a card.
  [/\bze-ro\b/g, 'zero'],
  [/\bfow-er\b/g, 'four'],
  [/\bsev-en\b/g, 'seven'],
  [/\bnin-er\b/g, 'nine'],
  [/\bday[- ]see[- ]mal\b/g, 'decimal'],
  [/\bhun-dred\b/g, 'hundred'],
  [/\b(?:tou|thou)-sand\b/g, 'thousand'],
  [/\bwun\b/g, 'one'],
  [/\bait\b/g, 'eight'],
  [/\bthre\b/g, 'three'],
  [/\bfourty\b/g, 'forty'],
  [/\bninty\b/g, 'ninety'],
  [/\bo\b/g, 'oh'],
  [/\bok\b/g, 'okay'],
  [/\bper cent\b/g, 'percent'],
  [/\bdb\b/g, 'd b'],
  [/\bv\b/g, 'volts'],
  [/\bcw\b/g, 'clockwise'],
  [/\b(?:ccw|acw)\b/g, 'anticlockwise'],
  [/\banti[- ]clockwise\b/g, 'anticlockwise'],
  [/\bcounter[- ]clockwise\b/g, 'counterclockwise'],
  [/\bstandby\b/g, 'stand by'],
  [/\boverrange\b/g, 'over range'],
  [/\bcan ?not\b/g, "can't"],
  [/\b(can|won|didn|hasn|isn|haven|couldn|don)t\b/g, "$1't"],
  [
    /\b(someone|somebody|everything|gain|path|beam|cover|filter|card|alarm|fault|panel|signal|meter|reading|screw|adjuster|bracket|mount|unit|emitter)'s\b/g,
    '$1 is',
  ],
  [/\bdunno\b/g, "don't know"],
  [/([a-z])ish\b/g, '$1 ish'],
  [/\b(that|what|there)s\b/g, "$1's"],
  [/\bits\b/g, "it's"],
  [/\b(i|we)ve\b/g, "$1've"],
  [/\bim\b/g, "i'm"],
];

const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const TOKEN =
  /(?<fraction>(?:\d{1,3} )?\d{1,3}\/\d{1,3}(?![\d/]))|(?<numeral>(?:(?<![\w.,])-\s*)?(?:\d+(?:[.,]\d+)*|\.\d+))|(?<word>[^\s\d]+)/gu;

/**
 * "50,5" is fifty and a half; "2,500" may be that too, or two thousand five hundred. "- 5" may be minus
 * five, or a dash before it.
 */
const valuesOf = (numeral: string, decimal: Spelling['decimal']): number[] => {
  const [, sign = '', written = ''] = /^(-?\s*)(.*)$/.exec(numeral) ?? [];
  const figures = decimal === '.' ? written : written.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.'));
  const read = [Number(figures.replace(',', '.'))];
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(figures)) read.push(Number(figures.replaceAll(',', '')));
  const values = read.filter(Number.isFinite);
  const negative = values.map((value) => 0 - value);
  if (sign === '') return values;
  return sign === '-' ? negative : [...negative, ...values];
};

const fractionOf = (text: string): number => {
  const [, whole = '0', over, under] = /^(?:(\d+) )?(\d+)\/(\d+)$/.exec(text) ?? [];
  return Number(whole) + Number(over) / Number(under);
};

/**
 * Text as typed or transcribed, as the grammar's words: lower case, no punctuation, one spelling each.
 * Unknown words stay as they are. `unit`: the name of the unit on the job's own meter; `knows`: whether the grammar has
 * a word.
 */
export const normalise = (
  text: string,
  unit: string,
  { respellings, figures, decimal, percent, fold = (letters) => letters }: Spelling,
  knows: (word: string) => boolean,
): Token[] => {
  let plain = fold(text.normalize('NFC').toLowerCase())
    .replace(/[’‘`]/g, "'")
    .replace(/[−–]/g, '-')
    .replace(
      /(\d)?([¼½¾⅛⅜⅝⅞])/g,
      (_, whole?: string, sign?: string) => `${whole ? `${whole} ` : ''}${FRACTIONS[sign ?? ''] ?? ''}`,
    )
    .replace(/%/g, ` ${percent} `)
    .replace(/(\d)(?=[\p{L}])/gu, '$1 ');
  if (unit !== '') plain = nameUnit(plain, fold(unit.toLowerCase()), knows);
  for (const [spelling, word] of respellings) plain = plain.replace(spelling, word);
  return spellOutRuns(tokensOf(plain, decimal), figures);
};

const tokensOf = (plain: string, decimal: Spelling['decimal']): Token[] => {
  const tokens: Token[] = [];
  for (const { groups = {} } of plain.matchAll(TOKEN)) {
    const { fraction, numeral, word } = groups;
    if (fraction) tokens.push({ kind: 'fraction', values: [fractionOf(fraction)], text: fraction });
    else if (numeral) tokens.push({ kind: 'numeral', values: valuesOf(numeral, decimal), text: numeral });
    else if (word) tokens.push(...wordsOf(word));
  }
  return tokens;
};

/**
 * Replaces the meter's own unit by "units": always after digits, elsewhere only if the grammar does not have
 * the word.
 */
const nameUnit = (plain: string, unit: string, knows: (word: string) => boolean): string => {
  // "Four bars", "one bar": a unit that is a word is said of one and of many.
  const isWord = /^[a-z]{3,}$/.test(unit);
  const stem = isWord ? unit.replace(/s$/, '') : unit;
  const exact = `${stem.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')}${isWord ? 's?' : ''}(?![\\p{L}\\p{N}])`;
  const named = plain.replace(new RegExp(`(\\d\\s*)${exact}`, 'gu'), '$1 units ');
  return knows(unit) || knows(stem)
    ? named
    : named.replace(new RegExp(`(?<![\\p{L}\\p{N}])${exact}`, 'gu'), ' units ');
};

/**
 * Hyphens split words, punctuation is removed, an apostrophe stays only inside a word. Any other sign is an
 * unknown word: "<50" is not fifty.
 */
const wordsOf = (chunk: string): Token[] =>
  (chunk.match(/[\p{L}\p{M}\p{N}']+|[^\p{L}\p{M}\p{N}'\p{P}=]+|[/#%&*@\\]+/gu) ?? [])
    .map((word) => word.replace(/^'+|'+$/g, ''))
    .filter((word) => word !== '')
    .map((word) => ({ kind: 'word', word }));

/** "1 4 2", digits with spaces between, means digit by digit. */
const spellOutRuns = (tokens: Token[], figures: readonly string[]): Token[] => {
  const single = (token: Token | undefined): boolean => token?.kind === 'numeral' && /^\d$/.test(token.text);
  return tokens.map((token, i) =>
    single(token) && (single(tokens[i - 1]) || single(tokens[i + 1]))
      ? { kind: 'word', word: figures[Number((token as { text: string }).text)] as string }
      : token,
  );
};
