import { hasNoNumbers } from '../model/alone.ts';
import { found, type Look } from './look.ts';

/**
 * One person did the work of two: nobody else saw what they did, and what the meter showed. Where nobody read a number at all,
 * somebody still has to.
 */
export const alone: Look = ({ entries, commission: { setup } }) => {
  if (!setup.alone) return [];
  return [
    found('alone', {
      severity: hasNoNumbers(setup.alone) ? 'question' : 'note',
      entries: entries.slice(0, 1).map(({ seq }) => seq),
      about: [setup.alone],
    }),
  ];
};
