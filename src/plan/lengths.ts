import { type LengthUnit, METRES_PER_FOOT } from '../model/units.ts';

export const lengthIn = (metres: number, unit: LengthUnit): number =>
  unit === 'ft' ? metres / METRES_PER_FOOT : metres;

/** To the nanometre, so that 30 feet are 9.144 m and not a binary fraction beside it. */
export const metresOf = (value: number, unit: LengthUnit): number =>
  unit === 'ft' ? Number((value * METRES_PER_FOOT).toFixed(9)) : value;

/** The number with the fewest figures that `metresOf` takes back to the same metres. */
export function exactLengthIn(metres: number, unit: LengthUnit): number {
  const value = lengthIn(metres, unit);
  for (let places = 0; places <= 9; places += 1) {
    const rounded = Number(value.toFixed(places));
    if (metresOf(rounded, unit) === metres) return rounded;
  }
  return value;
}

/** A comma before three figures could mean thousands and is not guessed at. */
const NUMBER = String.raw`[+−-]?(?:\d+(?:\.\d*|,\d{1,2})?|[.,]\d+)`;
const ALONE = new RegExp(
  `^(${NUMBER})\\s*(?:(m|metres?|meters?)|(ft\\.?|feet|foot|['’′])|(cm)|(in\\.?|inch|inches|["”″]))?$`,
  'i',
);
const FEET_AND_INCHES = new RegExp(
  `^(\\d+)\\s*(?:ft\\.?|feet|foot|['’′])\\s*(${NUMBER})\\s*(?:in\\.?|inch|inches|["”″])?$`,
  'i',
);

/**
 * A length as people write it, in metres: a number in `unit`, or with a unit of its own ("30 ft", "9.1 m", "12 ft 6 in").
 * Undefined where it is no length.
 */
export function readLength(text: string, unit: LengthUnit): number | undefined {
  const trimmed = text.trim();
  const [, feet, inches] = FEET_AND_INCHES.exec(trimmed) ?? [];
  if (feet !== undefined && inches !== undefined) {
    return metresOf(numberOf(feet) + numberOf(inches) / 12, 'ft');
  }
  const [whole, digits = '', inMetres, inFeet, inCentimetres, inInches] = ALONE.exec(trimmed) ?? [];
  if (whole === undefined) return undefined;
  const value = numberOf(digits);
  if (inCentimetres !== undefined) return Number((value / 100).toFixed(9));
  if (inInches !== undefined) return metresOf(value / 12, 'ft');
  return metresOf(value, inMetres !== undefined ? 'm' : inFeet !== undefined ? 'ft' : unit);
}

const numberOf = (text: string): number => Number(text.replace(',', '.').replace('−', '-'));
