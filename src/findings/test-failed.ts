import type { Seq } from '../model/ids.ts';
import { isCommissioning } from '../visit/commission.ts';
import { failures } from '../visit/issues.ts';
import { progressOf } from '../visit/progress.ts';
import { retestsOf } from '../visit/retests.ts';
import { found, type Look } from './look.ts';

/**
 * A proving test failed, even if it passed later: nothing shown, outside its delay, or with a wrong reading. Where it
 * passed later, the figure `passed` is the entry of that.
 */
export const testFailed: Look = ({ commission, until }) => {
  if (!isCommissioning(commission)) return [];
  const retests = retestsOf(commission, progressOf(commission, until));
  return failures(commission, until).map((failed) => {
    const passed = retests.find((retest) => retest.failed === failed.about)?.passed;
    return found('test-failed', {
      severity: 'question',
      entries: [failed.about, ...later(passed)],
      about: failed.kind === 'proof' ? [failed.proof, failed.why] : [failed.item],
      figures: {
        ...(failed.kind === 'proof' && failed.figures),
        ...(passed !== undefined && { passed }),
      },
    });
  });
};

const later = (passed: Seq | undefined): Seq[] => (passed === undefined ? [] : [passed]);
