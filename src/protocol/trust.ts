import * as z from 'zod/mini';

/** The certificate of the server's own authority, DER (RFC 5280). */
export const AUTHORITY_PATH = '/authority.crt';

const localName = z.optional(z.string());

/**
 * GET /api/trust: how a phone comes to a page that may use its microphone. `own-authority`: it must first be told to
 * trust that authority. `trusted`: over https. `no-https`: only where something else adds https. `localName`: one by which
 * phones on its network find the server now (RFC 6762); missing where they do not.
 */
export const TrustInfo = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('own-authority'),
    /** As the phone lists it. */
    name: z.string(),
    /** SHA-256 of the certificate: pairs of hexadecimal digits, with colons. */
    fingerprint: z.string(),
    localName,
  }),
  z.object({ kind: z.literal('trusted'), localName }),
  z.object({ kind: z.literal('no-https'), localName }),
]);
export type TrustInfo = z.infer<typeof TrustInfo>;
