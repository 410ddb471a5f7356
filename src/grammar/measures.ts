import { means, type Rules } from './rule.ts';

/** Units that may be named after a number. */
export const measureRules = {
  measure: [
    ...means('percent', 'percent'),
    ...means('volts', 'volt|volts'),
    ...means('counts', 'count|counts'),
    ...means('decibels', 'd b|decibel|decibels'),
    ...means('bars', 'bar|bars'),
    ...means('steps', 'step|steps'),
    ...means('segments', 'segment|segments'),
    ...means('divisions', 'division|divisions'),
    // The unit of the job's own meter, whatever its name.
    ...means('own', 'units'),
  ],
} satisfies Rules;

/** The measure for a unit as the meter's profile writes it, if the grammar has it. */
export const measureOf = (unit: string): string | undefined => {
  const written = unit.trim().toLowerCase();
  if (/^(%|percent|per cent)/.test(written)) return 'percent';
  if (/^(v|volts?)$/.test(written)) return 'volts';
  if (/^(db|decibels?)$/.test(written)) return 'decibels';
  return /^(count|bar|step|segment|division)s?$/.test(written) ? `${written.replace(/s$/, '')}s` : undefined;
};
