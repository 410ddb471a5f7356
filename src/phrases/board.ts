import type { PairStatus } from '../model/pair-status.ts';
import type { JobState } from '../visit/state.ts';

const NEXT: Record<PairStatus, string> = {
  'not-started': 'Begin the first visit',
  aligning: 'The crew goes on aligning',
  aligned: 'The crew goes on to the tests',
  proven: 'Put it back in service and sign',
  signed: 'Nothing: it is signed',
  'needs-attention': 'Look at the record',
};

/** What is next for a pair: what its crew was told last, where that still holds and anything was left to do. */
export const nextText = (status: PairStatus, instruction?: JobState['instruction']): string =>
  instruction && instruction.advice.action.kind !== 'finished' ? instruction.show : NEXT[status];

/** Of a pair whose log nobody has read yet under these rules. */
export const BEING_READ = 'Its record is being read';

export const brokenNextText = (seq: number): string =>
  `Its record fails its check at entry ${seq}: begin a new visit`;
