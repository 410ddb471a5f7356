import type { Spelling } from '../../grammar/normalise.ts';
import { withoutMarks } from '../fold.ts';

export const SPELLING: Spelling = {
  respellings: [
    [/\bpor ciento\b/g, 'porciento'],
    [/\bdb\b/g, 'decibelios'],
    [/\bv\b/g, 'voltios'],
    [/\bok\b/g, 'vale'],
  ],
  figures: 'cero uno dos tres cuatro cinco seis siete ocho nueve'.split(' '),
  decimal: ',',
  point: 'coma',
  minus: 'menos',
  percent: 'porciento',
  fold: withoutMarks,
};
