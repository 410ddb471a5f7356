import type { PairStatus } from '../model/pair-status.ts';
import type { JobState } from '../visit/state.ts';

const NEXT: Record<PairStatus, string> = {
  'not-started': 'Begin the first visit',
  aligning: 'Finish the alignment',
  isolated: 'Finish the work, then restore the outputs',
  aligned: 'Make the tests',
  proven: 'Put it back in service and sign',
  signed: 'Nothing. It is signed',
  'signed-not-proven': 'Make the tests that did not pass',
  'needs-attention': 'Read the record',
};

/** What is next for a pair: the last instruction, if it is still valid and not yet done. */
export const nextText = (status: PairStatus, instruction?: JobState['instruction']): string =>
  instruction && instruction.advice.action.kind !== 'finished' ? instruction.show : NEXT[status];

/** For a pair whose plan was changed since its latest visit. */
export const PLAN_CHANGED = 'Plan changed: prove it anew';
export const planChangedNext = (signed: boolean): string =>
  signed
    ? 'The plan was changed after it was signed. Begin a new visit and prove it anew'
    : 'The plan was changed after the visit began. Put it back in service, then begin a new visit';

/** For a pair whose log was not yet read under these rules. */
export const BEING_READ = 'Its record is being read';
