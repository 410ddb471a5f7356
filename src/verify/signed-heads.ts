import { hexToBytes } from '@noble/hashes/utils.js';
import type { Wrong } from '../log/fault.ts';
import { isIncluded, textLeaf } from '../log/merkle.ts';
import {
  type CheckSignature,
  type Fingerprint,
  fingerprintOf,
  type HeadProof,
  headText,
  type Signed,
  type SignedHead,
  treeText,
} from '../log/signed-head.ts';
import type { CheckStamp } from '../log/time-stamp.ts';
import type { Entry } from '../model/entry.ts';
import type { Head } from '../model/ids.ts';

/** A head of this log that was kept outside the export. */
export type KeptHead = Pick<SignedHead, 'count' | 'hash'>;

export interface Known {
  readonly check: CheckSignature;
  readonly checkStamp: CheckStamp;
  /** The key that people know as their server's. */
  readonly key?: Fingerprint;
  /** Heads of this log that were kept elsewhere. */
  readonly kept?: readonly KeptHead[];
}

/** Every signed or kept head must be one of this log, and every signature right, whoever made it. */
export function checkSigned(
  entries: readonly Entry[],
  { job }: Head,
  proof: HeadProof | undefined,
  known: Known,
): { readonly signed: Signed } | { readonly wrong: Wrong } {
  const isOfLog = ({ count, hash }: KeptHead) => entries[count - 1]?.hash === hash;
  const strange = [...(known.kept ?? []), ...(proof?.signed ?? [])].find((head) => !isOfLog(head));
  if (strange) return { wrong: { kind: 'signed-head', seq: strange.count - 1 } };
  const last = proof?.signed.at(-1);
  if (!proof || !last) return { signed: { kind: 'none' } };
  const isRight = (text: string, { key, signature }: Pick<SignedHead, 'key' | 'signature'>) =>
    known.check(key, text, signature);
  const bad = proof.signed.find((head) => !isRight(headText(job, head), head));
  if (bad) return { wrong: { kind: 'bad-signature', seq: bad.count - 1 } };
  const { tree } = proof;
  if (tree) {
    const leaf = textLeaf(headText(job, last));
    const path = tree.path.map(hexToBytes);
    if (
      !isRight(treeText(tree), tree) ||
      !isIncluded(leaf, tree.index, tree.size, path, hexToBytes(tree.root))
    )
      return { wrong: { kind: 'bad-signature', seq: last.count - 1 } };
  }
  if (known.key === undefined) return { signed: { kind: 'nobodys', key: fingerprintOf(last.key) } };
  const ours = proof.signed.filter(({ key }) => fingerprintOf(key) === known.key);
  const ending = ours.reduce<SignedHead | undefined>((a, b) => (a && a.count > b.count ? a : b), undefined);
  if (!ending) return { signed: { kind: 'other-key', key: fingerprintOf(last.key) } };
  const first = Math.min(...ours.map(({ at }) => at));
  return {
    signed: { kind: 'signed', key: fingerprintOf(ending.key), count: ending.count, at: ending.at, first },
  };
}
