import { CHECKLISTS } from '../model/checklists.ts';
import { PROOFS } from '../visit/attempts.ts';
import { isCommissioning } from '../visit/commission.ts';
import { isRequired, progressOf, testAnswer } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** A test that did not pass for the present alignment: not made, or failed and answered for in writing. */
export const unproven: Look = ({ commission, accepted, until }) => {
  if (!accepted || !isCommissioning(commission)) return [];
  const { last } = progressOf(commission, until);
  const about = [
    ...PROOFS.filter(
      (proof) =>
        (isRequired(proof, commission.setup) || last[proof]) && last[proof]?.verdict.kind !== 'passed',
    ),
    ...CHECKLISTS.tests.filter((item) => testAnswer(commission, item)?.done !== true),
  ];
  if (about.length === 0) return [];
  return [found('unproven', { severity: 'serious', entries: [accepted.seq], about })];
};
