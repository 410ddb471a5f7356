import { THE_LOG } from '../phrases/counts.ts';
import { HEADINGS } from '../phrases/headings.ts';
import {
  changedSinceSigned,
  missingForSigning,
  NOT_SIGNED,
  NOTHING_MISSING,
  SIGNABLE_UNPROVEN,
  signedByText,
  signedPart,
} from '../phrases/signature.ts';
import { unsignedText } from '../phrases/signoff.ts';
import type { VisitRecord } from '../record/visit-record.ts';
import { brief } from './brief.ts';
import type { Moments } from './moments.ts';
import type { Block } from './report.ts';

/** The most characters for what is missing. */
const LONGEST = 500;

/** Who answers for the record, or what is missing for it. */
export function signBlock({ state, missing, isTested }: VisitRecord, moments: Moments): Block {
  const { signed, changedBy, issues } = state;
  const block = (lines: readonly string[]): Block => ({
    kind: 'signature',
    title: HEADINGS.signature,
    lines,
    signature: signed?.signature,
  });
  if (!signed) {
    return block([
      NOT_SIGNED,
      missing.length === 0
        ? isTested
          ? NOTHING_MISSING
          : SIGNABLE_UNPROVEN
        : brief(missingForSigning(missing.map((item) => unsignedText(item, issues))), LONGEST, THE_LOG),
    ]);
  }
  const { name, role, at, seq, head } = signed;
  return block([
    signedByText(name, role, moments.full(at), seq),
    signedPart(head),
    ...(changedBy === undefined ? [] : [changedSinceSigned(changedBy)]),
  ]);
}
