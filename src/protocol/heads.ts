import * as z from 'zod/mini';
import { Fingerprint, PublicKey, TreeHead } from '../log/signed-head.ts';
import { Hash } from '../model/ids.ts';

/** GET /api/key: with which this server signs the heads of its logs. */
export const ServerKey = z.object({
  /** SHA-256 of `public`. */
  fingerprint: Fingerprint,
  /** SPKI DER, hexadecimal. */
  public: PublicKey,
});

/** GET /api/heads: of the tree over all heads that this server signed, as of now. */
export const HeadsTree = TreeHead;

/** GET /api/heads/consistency?from=&to=: that the tree of `from` heads is the beginning of that of `to` (RFC 6962). */
export const HeadsConsistency = z.object({
  from: z.int(),
  to: z.int(),
  path: z.array(Hash),
});
