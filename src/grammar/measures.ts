import { means, type Rules } from './rule.ts';

/** Units that may be named after a number. */
export const measureRules = {
  measure: [
    ...means('percent', 'percent'),
    ...means('volts', 'volt|volts'),
    ...means('counts', 'count|counts'),
    ...means('decibels', 'd b|decibel|decibels'),
    // The unit of the job's own meter, whatever its name.
    ...means('own', 'units'),
  ],
} satisfies Rules;

/** The measure for a unit as the meter's profile writes it, if the grammar has it. */
export const measureOf = (unit: string): string | undefined => {
  const written = unit.trim().toLowerCase();
  if (/^(%|percent|per cent)/.test(written)) return 'percent';
  if (/^(v|volts?)$/.test(written)) return 'volts';
  if (/^counts?$/.test(written)) return 'counts';
  return /^(db|decibels?)$/.test(written) ? 'decibels' : undefined;
};
