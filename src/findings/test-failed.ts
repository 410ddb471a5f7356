import { isCommissioning } from '../visit/commission.ts';
import { failures } from '../visit/issues.ts';
import { found, type Look } from './look.ts';

/** A proving test failed, even if it passed later: nothing shown, outside its delay, or with a wrong reading. */
export const testFailed: Look = ({ commission, until }) => {
  if (!isCommissioning(commission)) return [];
  return failures(commission, until).map((failed) =>
    failed.kind === 'proof'
      ? found('test-failed', {
          severity: 'question',
          entries: [failed.about],
          about: [failed.proof, failed.why],
          figures: failed.figures,
        })
      : found('test-failed', { severity: 'question', entries: [failed.about], about: [failed.item] }),
  );
};
