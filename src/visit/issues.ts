import type { ChecklistItem } from '../model/checklists.ts';
import type { Seq } from '../model/ids.ts';
import type { Attempt } from './attempts.ts';
import { answerTo, type Commission, isCommissioning } from './commission.ts';
import { progressOf } from './progress.ts';
import type { Failure } from './verdict.ts';

/** A test that failed: a proving test and why, or a test with the answer no. `about`: its entry. */
export type Failed = { readonly about: Seq } & (
  | {
      readonly kind: 'proof';
      readonly proof: Attempt['proof'];
      readonly why: Failure;
      readonly figures: Readonly<Record<string, number>>;
    }
  | { readonly kind: 'test'; readonly item: ChecklistItem; readonly note?: string }
);

/** Every test that failed so far, also if it passed later. */
export function failures(commission: Commission, now: number): Failed[] {
  const proofs = progressOf(commission, now).all.flatMap(({ attempt, verdict }): Failed[] =>
    verdict.kind === 'failed'
      ? [
          {
            kind: 'proof',
            about: attempt.covered.seq,
            proof: attempt.proof,
            why: verdict.why,
            figures: verdict.figures,
          },
        ]
      : [],
  );
  const tests = commission.counted.flatMap((fact): Failed[] =>
    fact.type === 'item' && fact.list === 'tests' && !fact.done
      ? [
          {
            kind: 'test',
            about: fact.seq,
            item: fact.item,
            ...(fact.note !== undefined && { note: fact.note }),
          },
        ]
      : [],
  );
  return [...proofs, ...tests];
}

/** Failures without an issue in the log. */
export function unreported(commission: Commission, now: number): Failed[] {
  if (!isCommissioning(commission)) return [];
  const known = new Set(commission.issues.map(({ about }) => about));
  return failures(commission, now).filter(({ about }) => !known.has(about));
}

/** Why an open issue is settled without an answer from anybody. */
export type Settled = 'passed-since' | 'taken-back';

/** Open issues that later entries have settled. */
export function settledSince(commission: Commission, now: number): { issue: Seq; by: Settled }[] {
  const open = commission.issues.filter(({ closed }) => !closed);
  if (open.length === 0) return [];
  const progress = progressOf(commission, now);
  const failed = failures(commission, now);
  return open.flatMap(({ seq: issue, about }): { issue: Seq; by: Settled }[] => {
    const failure = failed.find((each) => each.about === about);
    if (!failure) return [{ issue, by: 'taken-back' }];
    const passed =
      failure.kind === 'proof'
        ? progress.last[failure.proof]?.verdict.kind === 'passed'
        : answerTo(commission, 'tests', failure.item)?.done === true;
    return passed ? [{ issue, by: 'passed-since' }] : [];
  });
}
