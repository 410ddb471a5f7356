import type { LengthUnit, LossUnit, Units } from '../model/units.ts';

/** The units that a site has chosen, for the desk. */

export const LENGTH_NAMES: Record<LengthUnit, string> = { m: 'metres', ft: 'feet' };

export const LOSS_NAMES: Record<LossUnit, string> = {
  dB: 'dB',
  percent: 'percent',
  'percent/m': 'percent per metre',
  'percent/ft': 'percent per foot',
};
export const AS_PLANNED = 'as planned';
export const UNITS_SAVED =
  'Plans stay as they are; only the figures are shown in other units. Visits that have begun keep theirs.';

/** "Units chosen: feet, percent per foot" */
export const unitsChosenText = ({ length, loss }: Units): string =>
  `Units chosen: ${LENGTH_NAMES[length]}${loss === undefined ? '' : `, ${LOSS_NAMES[loss]}`}`;
