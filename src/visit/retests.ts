import { CHECKLISTS, type ChecklistItem } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import type { Proof } from './attempts.ts';
import type { Commission } from './commission.ts';
import { type Progress, testAnswer } from './progress.ts';

/** A test that failed, and passed later in a way that still counts. */
export interface Retest {
  readonly test: Proof | ChecklistItem;
  /** The entry that began the attempt that failed, or that answered no, and when, ms. */
  readonly failed: Seq;
  readonly at: number;
  /** The entry that began the last attempt, which passed, or that answered yes. */
  readonly passed: Seq;
}

/** Every failure that was made good by testing again, oldest first. A pass that a turn made void makes nothing good. */
export function retestsOf(commission: Commission, { all, last }: Progress): Retest[] {
  const proofs = all.flatMap(({ attempt: { proof, covered }, verdict }): Retest[] => {
    const now = last[proof];
    if (verdict.kind !== 'failed' || now?.verdict.kind !== 'passed') return [];
    return [{ test: proof, failed: covered.seq, at: covered.at, passed: now.attempt.covered.seq }];
  });
  const answers = CHECKLISTS.tests.flatMap((item) => {
    const now = testAnswer(commission, item);
    if (!now?.done) return [];
    return commission.counted.flatMap((fact): Retest[] =>
      fact.type === 'item' && fact.item === item && !fact.done
        ? [{ test: item, failed: fact.seq, at: fact.at, passed: now.seq }]
        : [],
    );
  });
  return [...proofs, ...answers].sort((a, b) => a.failed - b.failed);
}
