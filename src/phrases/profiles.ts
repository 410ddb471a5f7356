import type { GainKind, MeterLaw } from '../model/profile.ts';

/** The fields of a meter, as a form shows them. */
export const METER_LABELS = {
  name: 'Name of this meter',
  unit: 'Unit',
  min: 'Lowest number it shows',
  max: 'Highest number it shows',
  resolution: 'Smallest step it shows',
  law: 'How it follows the light',
  dbPerUnit: 'Decibels in one unit',
  gainDbPerStep: 'Decibels in one gain step',
  lostAt: 'No usable signal at or below',
  bandLow: 'Accept from',
  bandHigh: 'Accept up to',
  saturatedAt: 'Saturated at or above',
  tolerance: 'Readings agree within',
  settle: 'Settles within',
  hold: 'Must stay steady for',
  gain: 'Gain',
} as const;

export const ADJUSTER_LABELS = {
  name: 'Name of these adjusters',
  maxStep: 'Largest single turn',
  backlash: 'Lost motion on reversal',
  degreesPerTurn: 'Degrees in a full turn',
  travel: 'Travel each way',
} as const;

export const LAW_NAMES: Record<MeterLaw, string> = {
  linear: 'linear: twice the light, twice the number',
  logarithmic: 'logarithmic, in decibels',
  unknown: 'not known',
};

export const GAIN_NAMES: Record<GainKind, string> = {
  continuous: 'turned freely',
  stepped: 'in steps',
  automatic: 'set by the detector itself',
  fixed: 'cannot be set',
};

/** A meter in one line, from a form: numbers are still text. */
export const meterText = (m: Record<'min' | 'max' | 'unit' | 'bandLow' | 'bandHigh', string>): string =>
  `Shows ${m.min} to ${m.max} ${m.unit}. Accepted from ${m.bandLow} to ${m.bandHigh}. The maker's figures come first.`;
