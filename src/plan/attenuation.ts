import { METRES_PER_FOOT } from '../model/units.ts';

/**
 * Loss of light, in the forms the trade uses. In percent it is `100 * (1 - P/P0)`, in decibels
 * `10 * log10(P0/P)` (EN 54-12 and ISO 7240-12, from memory). Per length, for a path of `d`: decibels a metre
 * `(10/d) * log10(P0/P)` (EN 54-7, from memory); percent a foot `100 * (1 - (P/P0)^(1/d))` with `d` in feet
 * (UL 268, from memory), and percent a metre by the same formula; optical density a metre `(1/d) * log10(P0/P)` (Beer-Lambert).
 */

/** The part of the light that is left, 0 to 1. */
const leftOfDb = (db: number): number => 10 ** (-db / 10);
const dbOfLeft = (left: number): number => -10 * Math.log10(left);

export const percentOfDb = (db: number): number => 100 * (1 - leftOfDb(db));
/** `percent` from 0 to below 100. */
export const dbOfPercent = (percent: number): number => dbOfLeft(1 - percent / 100);

/** Half the receiver's face covered leaves about half the power. */
export const HALF_COVER_DB = dbOfPercent(50);

export const LOSS_FORMS = ['dB', 'percent', 'dB/m', 'percent/m', 'percent/ft', 'OD/m'] as const;
export type LossForm = (typeof LOSS_FORMS)[number];

/** One form, with the conversion from and to decibels over the whole path of `metres`. */
const FORMS: Record<
  LossForm,
  { toDb(value: number, metres: number): number; of(db: number, metres: number): number }
> = {
  dB: { toDb: (db) => db, of: (db) => db },
  percent: { toDb: dbOfPercent, of: percentOfDb },
  'dB/m': { toDb: (perMetre, metres) => perMetre * metres, of: (db, metres) => db / metres },
  'percent/m': {
    toDb: (perMetre, metres) => dbOfPercent(perMetre) * metres,
    of: (db, metres) => percentOfDb(db / metres),
  },
  'percent/ft': {
    toDb: (perFoot, metres) => (dbOfPercent(perFoot) * metres) / METRES_PER_FOOT,
    of: (db, metres) => percentOfDb((db * METRES_PER_FOOT) / metres),
  },
  'OD/m': { toDb: (od, metres) => 10 * od * metres, of: (db, metres) => db / (10 * metres) },
};

/** The dB over the whole path of a loss in one form, and back. */
export const dbOf = (value: number, form: LossForm, metres: number): number =>
  FORMS[form].toDb(value, metres);
export const lossOf = (db: number, form: LossForm, metres: number): number => FORMS[form].of(db, metres);

/**
 * One loss in every form, over a path of `metres`. Undefined where the number is not a loss: below zero, a
 * hundred percent or more, or no path.
 */
export function lossInAllForms(
  value: number,
  form: LossForm,
  metres: number,
): Record<LossForm, number> | undefined {
  const db = FORMS[form].toDb(value, metres);
  if (!(metres > 0) || !(db >= 0) || !Number.isFinite(db)) return undefined;
  const entries = LOSS_FORMS.map((each) => [each, FORMS[each].of(db, metres)] as const);
  return Object.fromEntries(entries) as Record<LossForm, number>;
}
