import type { FactOf } from '../model/facts.ts';
import { notSignableText } from '../phrases/signoff.ts';
import { missingForSignoff } from '../visit/signoff.ts';
import { commissionOf } from '../visit/state.ts';
import type { Composer } from './composer.ts';
import type { Refused } from './input.ts';

/** Signs the record up to the head that the signer was shown; whether its hash is right is the shell's to check. */
export function sign(job: Composer, signature: Omit<FactOf<'signed'>, 'type'>): Refused {
  const commission = commissionOf(job.state);
  if (!commission) return { reason: 'not-signable', text: 'There is nothing to sign yet.' };
  if (signature.head.count !== job.state.count) {
    return {
      reason: 'not-signable',
      text: 'The record has grown while it was read. Look at what is new, then sign again.',
    };
  }
  const missing = missingForSignoff(commission, job.now);
  if (missing.length > 0) return { reason: 'not-signable', text: notSignableText(missing, job.state.issues) };
  job.put('supervisor', { type: 'signed', ...signature });
  return;
}
