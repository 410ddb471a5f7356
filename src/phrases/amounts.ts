import { EIGHTHS_PER_TURN, type Eighths } from '../model/turns.ts';

const FRACTIONS = [
  '',
  'an eighth',
  'a quarter',
  'three eighths',
  'half a turn',
  'five eighths',
  'three quarters',
  'seven eighths',
];
const GLYPHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];

const split = (eighths: Eighths): [whole: number, part: number] => {
  const size = Math.abs(eighths);
  return [Math.floor(size / EIGHTHS_PER_TURN), size % EIGHTHS_PER_TURN];
};

const WHOLE = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** "a quarter", "half a turn", "one and a half turns": a turn as it is said, without its direction. */
export function amountWords(eighths: Eighths): string {
  const [whole, part] = split(eighths);
  const fraction = FRACTIONS[part] as string;
  if (whole === 0) return fraction;
  const wholeWord = WHOLE[whole] ?? String(whole);
  if (part === 0) return whole === 1 ? 'one full turn' : `${wholeWord} turns`;
  return `${wholeWord} and ${part === 4 ? 'a half' : fraction} turns`;
}

/** "¼", "1½": the same for very large type. */
export function amountGlyph(eighths: Eighths): string {
  const [whole, part] = split(eighths);
  return `${whole || ''}${GLYPHS[part]}`;
}

export const senseWord = (eighths: Eighths): 'clockwise' | 'anticlockwise' =>
  eighths > 0 ? 'clockwise' : 'anticlockwise';
