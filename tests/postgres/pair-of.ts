import type { Head } from '../../src/model/ids.ts';
import type { PairFigures } from '../../src/record/pair-figures.ts';

/** What the figures know of a pair: nothing to remark, but for `otherwise`. */
export const pairOf = (
  pair: string,
  head: Head | undefined,
  otherwise: Partial<PairFigures> = {},
): PairFigures => ({
  ...{ pair, head, visits: head ? 1 : 0, damaged: false, drifting: false },
  ...{ ladder: undefined, lost: undefined, due: undefined },
  findings: [{ id: 'corrections', severity: 'note' }],
  ...otherwise,
});
