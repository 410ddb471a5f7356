import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import { PROVEN_NAME } from './account-holders.ts';
import { findingName, siteFindingName } from './findings.ts';
import { personText } from './people.ts';

/** Who answers for the record, on paper. */
export const NOT_SIGNED = 'Not signed.';
/** Of a log whose chain does not verify, from this entry on. */
export const brokenUnsignable = (seq: Seq): string =>
  `CANNOT BE SIGNED: the log fails its check at entry #${seq}, so nobody can say what was signed. Keep it as it is, and begin a new visit.`;
export const brokenSigned = (seq: Seq): string =>
  `PROVES NOTHING: the log fails its check at entry #${seq}, so this signature may stand under other entries than its signer read.`;
export const NOTHING_MISSING = 'Nothing is missing for signing.';
/** Also for an alignment alone, which has no tests. */
export const SIGNABLE_UNPROVEN =
  'It can be signed, but it is not proven: not every test was made and passed.';
export const missingForSigning = (missing: readonly string[]): string =>
  `Missing for signing: ${missing.join('; ')}.`;
export const signedByText = (signed: Placed<'signed'>, when: string): string =>
  `${personText(signed)}, ${signed.role}, ${when}, entry #${signed.seq}.`;
/** The signature stands, by its hash; who gave it is told no more. */
export const signerForgotten = ({ seq, why }: Placed<'names-forgotten'>, day: string): string =>
  `The name, and the signature as it was given, were deleted on ${day}, entry #${seq}: ${why}`;
/** What the signer was shown. Older signatures do not say what the site had. */
export function stoodText(signed: Placed<'signed'>): string {
  return signed.account ? `${PROVEN_NAME} ${shownText(signed)}` : shownText(signed);
}

function shownText({ findings, ofSite }: Placed<'signed'>): string {
  const stood = [...findings.map(findingName), ...(ofSite?.findings ?? []).map(siteFindingName)];
  const site = ofSite ? '' : ' The findings of the site were not kept with it.';
  if (stood.length > 0) return `Findings shown when it was signed: ${stood.join(', ')}.${site}`;
  return ofSite
    ? 'When it was signed there were no findings, of this record or of the site.'
    : `When it was signed this record alone had no findings.${site}`;
}
export const NOT_PROVEN = 'SIGNED, NOT PROVEN: not every test passed. See the findings.';
export const BESIDE = 'Stands beside the first signature.';
export const signedPart = ({ count, hash }: { count: number; hash: string }): string =>
  `Signed: the first ${count} entries, head hash ${hash}.`;
export const changedSinceSigned = (seq: Seq): string =>
  `CHANGED SINCE SIGNING: this signature does not cover entry #${seq} and what follows.`;
/** A signature drawn by hand, for who cannot see it. */
export const SIGNATURE_ALT = 'Signature, drawn by hand';
