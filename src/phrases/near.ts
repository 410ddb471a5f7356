import { type LengthUnit, METRES_PER_FOOT, type Units } from '../model/units.ts';

/** "15 cm", "5 in": something small to stay within, from metres. Never more than it is. */
export const nearText = (metres: number, { length }: Units): string =>
  `${nearFigures(metres, length)} ${length === 'ft' ? 'in' : 'cm'}`;

/** "fifteen centimetres", "five inches": the same as it is said. */
export const nearWords = (metres: number, { length }: Units): string =>
  `${numberWords(nearFigures(metres, length))} ${length === 'ft' ? 'inches' : 'centimetres'}`;

const nearFigures = (metres: number, unit: LengthUnit): number =>
  Math.floor(unit === 'ft' ? (metres / METRES_PER_FOOT) * 12 : metres * 100 + 1e-9);

const SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen'.split(' ');

/** A small whole number as it is said: what to stay within is not spelled figure by figure. */
const numberWords = (value: number): string => SMALL[value] ?? String(value);
