import type { Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { failureText, SETTLED } from '../phrases/proving.ts';
import { issueClosed } from '../phrases/readbacks.ts';
import { NO_OPEN_ISSUE } from '../phrases/refusals.ts';
import { settledSince, unreported } from '../visit/issues.ts';
import { commissionOf } from '../visit/search.ts';
import type { Composer } from './composer.ts';
import type { Refused } from './input.ts';

/** Opens an issue for every test that failed, and closes those that a later test has settled. */
export function reviewIssues(job: Composer): void {
  const commission = commissionOf(job.state);
  if (!commission) return;
  for (const failure of unreported(commission, job.now)) {
    const text = failureText(failure, commission.setup);
    job.put('engine', { type: 'issue-opened', about: failure.about, text });
    job.notice('issue-opened', text);
  }
  const after = commissionOf(job.state) ?? commission;
  for (const { issue, by } of settledSince(after, job.now)) {
    job.put('engine', { type: 'issue-closed', issue, how: SETTLED[by] });
  }
}

/** Somebody answers in writing for a test that failed. */
export function closeIssue(
  job: Composer,
  { by, issue, how }: { by: Seat | 'supervisor'; issue: Seq; how: string },
): Refused {
  const open = job.state.issues.find(({ seq, closed }) => seq === issue && !closed);
  if (!open) return { reason: 'bad-target', text: NO_OPEN_ISSUE };
  const seq = job.put(by, { type: 'issue-closed', issue, how });
  job.readback(seq, issueClosed(how));
  return;
}
