import * as z from 'zod/mini';

/** The certificate of the server's own authority, DER (RFC 5280). */
export const AUTHORITY_PATH = '/authority.crt';

/**
 * GET /api/trust: how a phone comes to a page that may use its microphone. `own-authority`: it must first be told to
 * trust that authority. `trusted`: over https. `no-https`: only where something else adds https.
 */
export const TrustInfo = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('own-authority'),
    /** As the phone lists it. */
    name: z.string(),
    /** SHA-256 of the certificate: pairs of hexadecimal digits, with colons. */
    fingerprint: z.string(),
  }),
  z.object({ kind: z.literal('trusted') }),
  z.object({ kind: z.literal('no-https') }),
]);
export type TrustInfo = z.infer<typeof TrustInfo>;
