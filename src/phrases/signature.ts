import type { Seq } from '../model/ids.ts';

/** Who answers for the record, on paper. */
export const NOT_SIGNED = 'Not signed.';
export const NOTHING_MISSING = 'Nothing is missing for signing.';
/** Also for an alignment alone, which has no tests. */
export const SIGNABLE_UNPROVEN =
  'It can be signed, but it is not proven: not every test was made and passed.';
export const missingForSigning = (missing: readonly string[]): string =>
  `Missing for signing: ${missing.join('; ')}.`;
export const signedByText = (name: string, role: string, when: string, seq: Seq): string =>
  `${name}, ${role}, ${when}, entry #${seq}.`;
export const signedPart = ({ count, hash }: { count: number; hash: string }): string =>
  `Signed: the first ${count} entries, head hash ${hash}.`;
export const changedSinceSigned = (seq: Seq): string =>
  `CHANGED SINCE SIGNING: this signature does not cover entry #${seq} and what follows.`;
/** A signature drawn by hand, for who cannot see it. */
export const SIGNATURE_ALT = 'Signature, drawn by hand';
