import type { FactOf } from '../model/facts.ts';
import { isSameName } from '../model/person.ts';
import { FIRST_BY_ACCOUNT } from '../phrases/account-holders.ts';
import {
  NOT_THE_NAME,
  NOTHING_TO_SIGN,
  PRACTICE_NOT_SIGNED,
  RECORD_HAS_GROWN,
  signedAlready,
} from '../phrases/refusals.ts';
import { notSignableText } from '../phrases/signoff.ts';
import { commissionOf } from '../visit/search.ts';
import { missingForSignoff } from '../visit/signoff.ts';
import type { Composer } from './composer.ts';
import type { Refused } from './input.ts';

/** Signs the record up to the head that the signer saw; the shell checks its hash. `isBeside`: never as the first. */
export function sign(job: Composer, signature: Omit<FactOf<'signed'>, 'type'>, isBeside: boolean): Refused {
  const commission = commissionOf(job.state);
  if (!commission) return { reason: 'not-signable', text: NOTHING_TO_SIGN };
  if (job.state.setup?.practice) return { reason: 'not-signable', text: PRACTICE_NOT_SIGNED };
  if (signature.head.count !== job.state.count) return { reason: 'not-signable', text: RECORD_HAS_GROWN };
  const { name, signature: mark } = signature;
  if (mark.kind === 'typed' && !isSameName(mark.text, name))
    return { reason: 'not-signable', text: NOT_THE_NAME };
  const { signed, beside, changedBy } = job.state;
  const standing = signed && changedBy === undefined ? [signed, ...beside] : [];
  if (isBeside && standing.length === 0) return { reason: 'not-signable', text: FIRST_BY_ACCOUNT };
  if (standing.some((one) => isSameName(one.name, name))) {
    return { reason: 'not-signable', text: signedAlready(name) };
  }
  const missing = missingForSignoff(commission, job.now);
  if (missing.length > 0) return { reason: 'not-signable', text: notSignableText(missing, job.state.issues) };
  job.put('supervisor', { type: 'signed', ...signature });
  return;
}
