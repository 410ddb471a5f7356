import { isCommissioning } from '../visit/commission.ts';
import { notPassed, progressOf } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** A test that did not pass for the present alignment: not made, or failed and answered for in writing. */
export const unproven: Look = ({ commission, accepted, until }) => {
  if (!accepted || !isCommissioning(commission)) return [];
  const about = notPassed(commission, progressOf(commission, until));
  if (about.length === 0) return [];
  return [found('unproven', { severity: 'serious', entries: [accepted.seq], about })];
};
