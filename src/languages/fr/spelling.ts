import type { Spelling } from '../../grammar/normalise.ts';
import { withoutMarks } from '../fold.ts';

export const SPELLING: Spelling = {
  respellings: [
    [/\bs'il (?:vous|te) plait\b/g, 'svp'],
    // "J'ai", "l'horizontale", "qu'affiche": two words.
    [/\b([cdjlmnst]|qu|jusqu|quelqu)'/g, '$1 '],
    [/\bpour cent\b/g, 'pourcent'],
    [/\bdb\b/g, 'decibels'],
    [/\bv\b/g, 'volts'],
    [/\bok\b/g, 'okay'],
  ],
  figures: 'zero un deux trois quatre cinq six sept huit neuf'.split(' '),
  decimal: ',',
  point: 'virgule',
  minus: 'moins',
  percent: 'pourcent',
  fold: withoutMarks,
};
