import { forgettingOf } from '../log/names.ts';
import { THE_LOG } from '../phrases/counts.ts';
import { HEADINGS, signatureHeading } from '../phrases/headings.ts';
import {
  BESIDE,
  brokenSigned,
  brokenUnsignable,
  changedSinceSigned,
  missingForSigning,
  NOT_PROVEN,
  NOT_SIGNED,
  NOTHING_MISSING,
  SIGNABLE_UNPROVEN,
  signedByText,
  signedPart,
  signerForgotten,
  stoodText,
} from '../phrases/signature.ts';
import { unsignedText } from '../phrases/signoff.ts';
import type { VisitRecord } from '../record/visit-record.ts';
import { brief } from './brief.ts';
import type { Moments } from './moments.ts';
import type { Block } from './report.ts';

/** The most characters for what is missing. */
const LONGEST = 500;

/** Who answers for the record, each in a block, or what is missing for it. */
export function signBlocks(
  { state, status, missing, isTested, fault, entries }: VisitRecord,
  moments: Moments,
): Block[] {
  const { signed, beside, changedBy, issues } = state;
  if (!signed) {
    const lacking =
      missing.length === 0
        ? isTested
          ? NOTHING_MISSING
          : SIGNABLE_UNPROVEN
        : brief(missingForSigning(missing.map((item) => unsignedText(item, issues))), LONGEST, THE_LOG);
    const lines = [NOT_SIGNED, fault ? brokenUnsignable(fault.seq) : lacking];
    return [{ kind: 'signature', title: HEADINGS.signature, lines, signature: undefined }];
  }
  return [signed, ...beside].map((one, index): Block => {
    const forgetting = forgettingOf(entries, one.seq);
    return {
      kind: 'signature',
      title: index === 0 ? HEADINGS.signature : signatureHeading(index + 1),
      lines: [
        ...(fault ? [brokenSigned(fault.seq)] : []),
        ...(index === 0 ? [] : [BESIDE]),
        ...(one.declaration === undefined ? [] : [one.declaration]),
        signedByText(one, moments.full(one.at)),
        ...(forgetting ? [signerForgotten(forgetting, moments.day(forgetting.at))] : []),
        signedPart(one.head),
        stoodText(one),
        ...(status === 'signed-not-proven' ? [NOT_PROVEN] : []),
        ...(changedBy === undefined ? [] : [changedSinceSigned(changedBy)]),
      ],
      signature: forgetting ? undefined : one.signature,
    };
  });
}
