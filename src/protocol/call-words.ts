/**
 * The spelling words of the radio (ICAO Annex 10, volume II; ITU Radio Regulations, appendix 14; from memory): chosen so
 * that people of any language hear them apart over a bad line. Here without the marks that keyboards lack.
 */
export const CALL_WORDS = [
  'ALFA',
  'BRAVO',
  'CHARLIE',
  'DELTA',
  'ECHO',
  'FOXTROT',
  'GOLF',
  'HOTEL',
  'INDIA',
  'JULIETT',
  'KILO',
  'LIMA',
  'MIKE',
  'NOVEMBER',
  'OSCAR',
  'PAPA',
  'QUEBEC',
  'ROMEO',
  'SIERRA',
  'TANGO',
  'UNIFORM',
  'VICTOR',
  'WHISKEY',
  'XRAY',
  'YANKEE',
  'ZULU',
] as const;

/** "kilo 417", "K417" or "Kilo-417" as "KILO 417"; undefined where it is no such word and number. */
export function callOf(typed: string): string | undefined {
  const [, letters = '', figures = ''] = /^([a-z]+)(\d{2,3})$/i.exec(typed.replace(/[\s-]/g, '')) ?? [];
  const initial = letters.charAt(0).toUpperCase();
  const word = CALL_WORDS.find((each) => each.startsWith(initial));
  if (!word || !(letters.length === 1 || isSpelledLike(letters.toUpperCase(), word))) return undefined;
  return `${word} ${figures}`;
}

/** As people write them who learned another spelling. */
const OTHER_SPELLINGS: Partial<Record<string, (typeof CALL_WORDS)[number]>> = {
  ALPHA: 'ALFA',
  JULIET: 'JULIETT',
  WHISKY: 'WHISKEY',
};

const isSpelledLike = (letters: string, word: string): boolean =>
  letters === word || OTHER_SPELLINGS[letters] === word;
