import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import * as z from 'zod/mini';
import { Hash, type JobId } from '../model/ids.ts';

/** Ed25519 (RFC 8032), base64url without padding. */
const Signature = z.string().check(z.regex(/^[A-Za-z0-9_-]{86}$/));

/** SHA-256 of a public key's SPKI DER, hexadecimal: what is printed, and compared by people. */
export const Fingerprint = Hash;
export type Fingerprint = z.infer<typeof Fingerprint>;

/** A public key: the hexadecimal of its SPKI DER (RFC 8410). */
export const PublicKey = z.string().check(z.regex(/^302a300506032b6570032100[0-9a-f]{64}$/));
export type PublicKey = z.infer<typeof PublicKey>;

const signed = { at: z.int(), key: PublicKey, signature: Signature };

export const fingerprintOf = (key: PublicKey): Fingerprint => bytesToHex(sha256(hexToBytes(key)));

/** How a signature is checked: passed in, because a browser does it in another way than a server. */
export type CheckSignature = (key: PublicKey, text: string, signature: string) => boolean;

/** That a log had `count` entries, the last with `hash`, at `at` (ms since 1970) by the server's clock. */
export const SignedHead = z.object({ count: z.int().check(z.positive()), hash: Hash, ...signed });
export type SignedHead = z.infer<typeof SignedHead>;

/** The head of one chain over all signed heads of a server: the tree of src/log/merkle.ts. */
export const TreeHead = z.object({ size: z.int().check(z.nonnegative()), root: Hash, ...signed });
export type TreeHead = z.infer<typeof TreeHead>;

/** A head of the tree, and what shows that a leaf stands in it: the leaf's place, and hashes from the leaf up. */
const PlacedTree = z.extend(TreeHead, { index: z.int().check(z.nonnegative()), path: z.array(Hash) });

/** What a time-stamping authority gave for a head of the tree (RFC 3161). */
export const TimeStamp = z.object({
  /** Of which of the signed heads `tree` shows the place. */
  count: z.int().check(z.positive()),
  tree: PlacedTree,
  /** That was sent with the question, hexadecimal. */
  nonce: z.string().check(z.regex(/^[0-9a-f]{32}$/)),
  /** The DER of the TimeStampToken, base64. */
  token: z.string().check(z.regex(/^[A-Za-z0-9+/]+={0,2}$/)),
});
export type TimeStamp = z.infer<typeof TimeStamp>;

/** What an export holds beside the log. */
export const HeadProof = z.object({
  /** Oldest first. */
  signed: z.array(SignedHead),
  /** Where the last of `signed` stands in the tree: its place, and what shows it (hashes from the leaf up). */
  tree: z.optional(PlacedTree),
  /** Oldest first; for each signed head the first one that covers it, as far as there is one. */
  stamps: z.optional(z.array(TimeStamp)),
});
export type HeadProof = z.infer<typeof HeadProof>;

/** The exact text that is signed, and that is a leaf of the tree. */
export const headText = (
  job: JobId,
  { count, hash, at }: Pick<SignedHead, 'count' | 'hash' | 'at'>,
): string => canonicalize({ format: 'ladderline-head', job, count, hash, at }) as string;

/** The exact text that is signed for the tree. */
export const treeText = ({ size, root, at }: Pick<TreeHead, 'size' | 'root' | 'at'>): string =>
  canonicalize({ format: 'ladderline-tree-head', size, root, at }) as string;

/** What the signatures of a server prove of a log. */
export type Signed =
  /** Nothing: it has no signed head. */
  | { readonly kind: 'none' }
  /** It is signed, but nobody has said whose key that is. */
  | { readonly kind: 'nobodys'; readonly key: Fingerprint }
  /** It is signed, but not with the key that was named. */
  | { readonly kind: 'other-key'; readonly key: Fingerprint }
  /** The first `count` entries stood so at `at`, and the first of all signatures is of `first` (ms). */
  | {
      readonly kind: 'signed';
      readonly key: Fingerprint;
      readonly count: number;
      readonly at: number;
      readonly first: number;
    };
