import { createHash, type X509Certificate } from 'node:crypto';
import type { SignerInfo } from '@peculiar/asn1-cms';
import { AsnConvert, AsnProp, AsnPropTypes, OctetString } from '@peculiar/asn1-schema';
import { AlgorithmIdentifier, Certificate, SubjectKeyIdentifier } from '@peculiar/asn1-x509';

/** RFC 2634, section 5.4: the certificate named by its SHA-1. What else stands in it is not needed. */
class EssCertId {
  certHash = new OctetString();
}
AsnProp({ type: OctetString })(EssCertId.prototype, 'certHash');
AsnProp({ type: AsnPropTypes.Any, optional: true })(EssCertId.prototype, 'issuerSerial');

/** RFC 5035, which RFC 5816 lets a time stamp use: named by any hash, SHA-256 where none is named. */
class EssCertIdV2 {
  hashAlgorithm?: AlgorithmIdentifier;
  certHash = new OctetString();
}
AsnProp({ type: AlgorithmIdentifier, optional: true })(EssCertIdV2.prototype, 'hashAlgorithm');
AsnProp({ type: OctetString })(EssCertIdV2.prototype, 'certHash');
AsnProp({ type: AsnPropTypes.Any, optional: true })(EssCertIdV2.prototype, 'issuerSerial');

class SigningCertificate {
  certs: EssCertId[] = [];
}
AsnProp({ type: EssCertId, repeated: 'sequence' })(SigningCertificate.prototype, 'certs');
AsnProp({ type: AsnPropTypes.Any, optional: true })(SigningCertificate.prototype, 'policies');

class SigningCertificateV2 {
  certs: EssCertIdV2[] = [];
}
AsnProp({ type: EssCertIdV2, repeated: 'sequence' })(SigningCertificateV2.prototype, 'certs');
AsnProp({ type: AsnPropTypes.Any, optional: true })(SigningCertificateV2.prototype, 'policies');

const SIGNING_CERTIFICATE = '1.2.840.113549.1.9.16.2.12';
const SIGNING_CERTIFICATE_V2 = '1.2.840.113549.1.9.16.2.47';

const HASHES: Readonly<Record<string, string>> = {
  '1.3.14.3.2.26': 'sha1',
  '2.16.840.1.101.3.4.2.1': 'sha256',
  '2.16.840.1.101.3.4.2.2': 'sha384',
  '2.16.840.1.101.3.4.2.3': 'sha512',
};

/**
 * Which of the certificates signed, by both names that a time stamp must give it (RFC 3161, section 2.4.2): issuer and number, or the
 * id of the key, outside what is signed, and its hash inside. `nobody`: the two do not name the same one. Undefined: it is not among them.
 */
export function namedIn(
  { sid, signedAttrs = [] }: SignerInfo,
  certificates: readonly X509Certificate[],
): X509Certificate | 'nobody' | undefined {
  const hash = hashIn(signedAttrs);
  if (!hash) return 'nobody';
  const alike = certificates.filter(({ raw }) => isNamed(sid, AsnConvert.parse(raw, Certificate)));
  const named = alike.find(({ raw }) => createHash(hash.by).update(raw).digest().equals(hash.is));
  return named ?? (alike.length > 0 ? 'nobody' : undefined);
}

function isNamed(sid: SignerInfo['sid'], { tbsCertificate: of }: Certificate): boolean {
  const { issuerAndSerialNumber: by, subjectKeyIdentifier: key } = sid;
  if (by)
    return (
      isSame(by.serialNumber, of.serialNumber) &&
      isSame(AsnConvert.serialize(by.issuer), AsnConvert.serialize(of.issuer))
    );
  const own = of.extensions?.find(({ extnID }) => extnID === '2.5.29.14');
  return (
    key !== undefined &&
    own !== undefined &&
    isSame(AsnConvert.parse(own.extnValue, SubjectKeyIdentifier).buffer, key.buffer)
  );
}

/** Of the certificate that signed: the first that the attribute names. */
function hashIn(attributes: NonNullable<SignerInfo['signedAttrs']>): { by: string; is: Buffer } | undefined {
  const valueIn = (type: string) => attributes.find(({ attrType }) => attrType === type)?.attrValues[0];
  try {
    const second = valueIn(SIGNING_CERTIFICATE_V2);
    if (second) {
      const [cert] = AsnConvert.parse(second, SigningCertificateV2).certs;
      const by = HASHES[cert?.hashAlgorithm?.algorithm ?? '2.16.840.1.101.3.4.2.1'];
      return cert && by ? { by, is: Buffer.from(cert.certHash.buffer) } : undefined;
    }
    const first = valueIn(SIGNING_CERTIFICATE);
    const [cert] = first ? AsnConvert.parse(first, SigningCertificate).certs : [];
    return cert && { by: 'sha1', is: Buffer.from(cert.certHash.buffer) };
  } catch {
    return undefined;
  }
}

const isSame = (one: ArrayBuffer, other: ArrayBuffer): boolean => Buffer.from(one).equals(Buffer.from(other));
