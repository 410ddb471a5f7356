import type { Spelling } from '../../grammar/normalise.ts';
import { spelledOut } from '../fold.ts';

export const SPELLING: Spelling = {
  respellings: [
    // "Zweihundertvierundzwanzig" is one word: its hundreds and thousands are said one by one.
    [/tausend/g, ' tausend '],
    [/hundert/g, ' hundert '],
    [/(?<=(?:hundert|tausend) )und(?=\p{L})/gu, ' und '],
    [/(?<=\p{L})einhalb/gu, ' einhalb'],
    [/\bv\b/g, 'volt'],
    [/\bdb\b/g, 'dezibel'],
    [/\bok\b/g, 'okay'],
    [/\bhabs\b/g, 'habe'],
  ],
  figures: 'null eins zwei drei vier fünf sechs sieben acht neun'.split(' '),
  decimal: ',',
  point: 'komma',
  minus: 'minus',
  percent: 'prozent',
  fold: spelledOut,
};
