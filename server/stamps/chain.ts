// First: the library of certificates needs it.
import 'reflect-metadata';
import type { X509Certificate } from 'node:crypto';
import {
  BasicConstraintsExtension,
  ExtendedKeyUsageExtension,
  KeyUsageFlags,
  KeyUsagesExtension,
  X509Certificate as Parsed,
} from '@peculiar/x509';

/** Certificates of a chain, with that of the signer; common practice, no source. */
const LONGEST = 6;

/** RFC 3161, section 2.3. */
const TIME_STAMPING = '1.3.6.1.5.5.7.3.8';
const EXTENDED_KEY_USAGE = '2.5.29.37';
/** What we look at ourselves, and certificatePolicies, of which we ask nothing. Any other critical one is refused (RFC 5280, 4.2). */
const UNDERSTOOD: ReadonlySet<string> = new Set(['2.5.29.15', '2.5.29.19', EXTENDED_KEY_USAGE, '2.5.29.32']);

/** `at`: ms since 1970. Both ends belong to it (RFC 5280, 4.1.2.5). */
export const isValidAt = (certificate: X509Certificate, at: number): boolean =>
  at >= Date.parse(certificate.validFrom) && at <= Date.parse(certificate.validTo);

/** Time stamps are all that its key may sign, and it says so as critical (RFC 3161, section 2.3). */
export function isForStampsAlone(certificate: X509Certificate): boolean {
  const parsed = new Parsed(certificate.raw);
  const [usage, ...more] = parsed.getExtensions(EXTENDED_KEY_USAGE);
  const key = parsed.getExtension(KeyUsagesExtension);
  const maySign =
    !key || (key.usages & (KeyUsageFlags.digitalSignature | KeyUsageFlags.nonRepudiation)) !== 0;
  return (
    usage instanceof ExtendedKeyUsageExtension &&
    more.length === 0 &&
    usage.critical &&
    usage.usages.length === 1 &&
    usage.usages[0] === TIME_STAMPING &&
    maySign &&
    isUnderstood(parsed)
  );
}

/**
 * Whether a certificate is one of `roots`, or is signed by one of them, through others of `between` if need be, all of them
 * valid at `at` (ms since 1970): the path of RFC 5280, section 6, without revocation, names and policies.
 */
export function leadsTo(
  roots: readonly X509Certificate[],
  certificate: X509Certificate,
  between: readonly X509Certificate[],
  at: number,
  below = 0,
): boolean {
  if (!isValidAt(certificate, at)) return false;
  if (roots.some(({ raw }) => raw.equals(certificate.raw))) return true;
  if (below + 1 >= LONGEST) return false;
  return [...roots, ...between].some(
    (issuer) =>
      certificate.checkIssued(issuer) &&
      mayIssue(issuer, below) &&
      certificate.verify(issuer.publicKey) &&
      leadsTo(roots, issuer, between, at, below + 1),
  );
}

/** `below`: how many authorities stand between it and the signer. */
function mayIssue(issuer: X509Certificate, below: number): boolean {
  const parsed = new Parsed(issuer.raw);
  const basic = parsed.getExtension(BasicConstraintsExtension);
  const key = parsed.getExtension(KeyUsagesExtension);
  return (
    basic?.ca === true &&
    below <= (basic.pathLength ?? Number.POSITIVE_INFINITY) &&
    (!key || (key.usages & KeyUsageFlags.keyCertSign) !== 0) &&
    isUnderstood(parsed)
  );
}

const isUnderstood = ({ extensions }: Parsed): boolean =>
  extensions.every(({ critical, type }) => !critical || UNDERSTOOD.has(type));
