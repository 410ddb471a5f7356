import { CHECKLISTS, type Checklist, type ChecklistItem } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import { PROOFS, type Proof } from './attempts.ts';
import { type Commission, isCommissioning } from './commission.ts';
import {
  afterMissing,
  beforeMissing,
  isRequired,
  isSettled,
  isTestSettled,
  progressOf,
  readingAfter,
} from './progress.ts';

/** Something that is missing before a record may be signed. */
export type Unsigned =
  | { readonly kind: 'accept' }
  | { readonly kind: 'item'; readonly list: Checklist; readonly item: ChecklistItem }
  | { readonly kind: 'proof'; readonly proof: Proof }
  | { readonly kind: 'reading' }
  | { readonly kind: 'issue'; readonly issue: Seq };

/** What is missing for signing at `now` (ms, the log's clock), in the order of the work; empty if nothing is. */
export function missingForSignoff(commission: Commission, now: number): Unsigned[] {
  const issues = commission.issues.flatMap(({ seq, closed }): Unsigned[] =>
    closed ? [] : [{ kind: 'issue', issue: seq }],
  );
  const accept: Unsigned[] = commission.search.accepted ? [] : [{ kind: 'accept' }];
  if (!isCommissioning(commission)) return [...accept, ...issues];
  const progress = progressOf(commission, now);
  const items = (list: Checklist, missing: readonly ChecklistItem[]): Unsigned[] =>
    missing.map((item) => ({ kind: 'item', list, item }));
  return [
    ...items('before', beforeMissing(commission)),
    ...accept,
    ...PROOFS.filter(
      (proof) => isRequired(proof, commission.setup) && !isSettled(commission, progress, proof),
    ).map((proof): Unsigned => ({ kind: 'proof', proof })),
    ...items(
      'tests',
      CHECKLISTS.tests.filter((item) => !isTestSettled(commission, item)),
    ),
    ...(readingAfter(commission) ? [] : [{ kind: 'reading' } as const]),
    ...issues,
    ...items('after', afterMissing(commission)),
  ];
}
