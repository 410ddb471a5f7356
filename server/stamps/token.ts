// First: the library of certificates needs it.
import 'reflect-metadata';
import { createHash, type KeyObject, verify, X509Certificate } from 'node:crypto';
import { Attribute, ContentInfo, id_signedData, SignedData, type SignerInfo } from '@peculiar/asn1-cms';
import { AsnArray, AsnConvert, AsnType, AsnTypeTypes, OctetString } from '@peculiar/asn1-schema';
import { id_ct_tstInfo, TSTInfo, TSTInfoVersion } from '@peculiar/asn1-tsp';
import type { CheckedStamp, CheckStamp } from '../../src/log/time-stamp.ts';
import { isForStampsAlone, isValidAt, leadsTo } from './chain.ts';
import { namedIn } from './named-signer.ts';

const CONTENT_TYPE = '1.2.840.113549.1.9.3';
const MESSAGE_DIGEST = '1.2.840.113549.1.9.4';

export const SHA256 = '2.16.840.1.101.3.4.2.1';
/** RFC 5754. A token by SHA-1 or MD5 is not one that we believe. */
const DIGESTS: Readonly<Record<string, string>> = {
  [SHA256]: 'sha256',
  '2.16.840.1.101.3.4.2.2': 'sha384',
  '2.16.840.1.101.3.4.2.3': 'sha512',
};

/** What a signature is made with: the kind of the key, and the hash where the signature names one of its own. */
const SIGNATURES: Readonly<Record<string, { readonly key: 'rsa' | 'ec'; readonly hash?: string }>> = {
  // RFC 8017, with the hash of the signer's digest (RFC 3370), or its own.
  '1.2.840.113549.1.1.1': { key: 'rsa' },
  '1.2.840.113549.1.1.11': { key: 'rsa', hash: 'sha256' },
  '1.2.840.113549.1.1.12': { key: 'rsa', hash: 'sha384' },
  '1.2.840.113549.1.1.13': { key: 'rsa', hash: 'sha512' },
  // RFC 5758.
  '1.2.840.10045.4.3.2': { key: 'ec', hash: 'sha256' },
  '1.2.840.10045.4.3.3': { key: 'ec', hash: 'sha384' },
  '1.2.840.10045.4.3.4': { key: 'ec', hash: 'sha512' },
};

/** A token as it lies there: nothing in it is checked yet. */
interface Token {
  readonly info: TSTInfo;
  /** The bytes of `info`, as they were signed. */
  readonly content: Uint8Array;
  readonly signer: SignerInfo;
  readonly certificates: readonly X509Certificate[];
}

/**
 * Checks tokens (RFC 3161 with RFC 5816) for who believes the authorities whose certificates are given: one that signs itself, or that
 * of the signer. Without any, it says what is wrong with a token, and believes none. What it cannot know is whether a certificate
 * was withdrawn.
 */
export const stampsBy =
  (roots: readonly X509Certificate[] | undefined): CheckStamp =>
  (text, stamp) => {
    try {
      return checkToken(text, stamp, roots);
    } catch {
      // Deep inside it is not what it should be: the library cannot read or write it.
      return { kind: 'wrong', fault: 'form' };
    }
  };

function checkToken(
  text: string,
  { nonce, token: base64 }: Parameters<CheckStamp>[1],
  roots: readonly X509Certificate[] | undefined,
): CheckedStamp {
  const token = readToken(Buffer.from(base64, 'base64'));
  if (!token) return { kind: 'wrong', fault: 'form' };
  const { info, certificates } = token;
  const { hashAlgorithm, hashedMessage } = info.messageImprint;
  if (hashAlgorithm.algorithm !== SHA256 || !isSame(hashedMessage.buffer, digestOf('sha256', text)))
    return { kind: 'wrong', fault: 'imprint' };
  if (!info.nonce || Buffer.from(info.nonce).toString('hex') !== nonce)
    return { kind: 'wrong', fault: 'nonce' };
  const by = signedBy(token, [...certificates, ...(roots ?? [])]);
  if (!(by instanceof X509Certificate)) return by;
  return believed(info.genTime.getTime(), info, by, certificates, roots);
}

/** Whether a reader who believes `roots` may believe what `by` signed. */
function believed(
  at: number,
  { accuracy }: TSTInfo,
  by: X509Certificate,
  between: readonly X509Certificate[],
  roots: readonly X509Certificate[] | undefined,
): CheckedStamp {
  const unproven = (doubt: Extract<CheckedStamp, { kind: 'unproven' }>['doubt']): CheckedStamp => ({
    ...{ kind: 'unproven', doubt, at },
  });
  if (!roots) return unproven('nobody-named');
  if (!isForStampsAlone(by)) return unproven('purpose');
  if (!isValidAt(by, at)) return unproven('not-valid-then');
  if (!leadsTo(roots, by, between, at)) return unproven('other-authority');
  return {
    kind: 'proven',
    by: by.subject.split('\n').join(', '),
    until: Date.parse(by.validTo),
    at,
    ...(accuracy && {
      accuracy: (accuracy.seconds ?? 0) * 1000 + (accuracy.millis ?? 0) + (accuracy.micros ?? 0) / 1000,
    }),
  };
}

/** Undefined for bytes that are no TimeStampToken with one signer. Throws where they are no ASN.1 at all. */
function readToken(der: Uint8Array): Token | undefined {
  const outer = AsnConvert.parse(der, ContentInfo);
  // Nothing may hang on behind.
  if (outer.contentType !== id_signedData || AsnConvert.serialize(outer).byteLength !== der.length)
    return undefined;
  const data = AsnConvert.parse(outer.content, SignedData);
  const { eContentType, eContent } = data.encapContentInfo;
  const [signer, ...more] = data.signerInfos;
  const content = eContent?.single?.buffer;
  if (eContentType !== id_ct_tstInfo || !content || !signer || more.length > 0) return undefined;
  const info = AsnConvert.parse(content, TSTInfo);
  if (info.version !== TSTInfoVersion.v1) return undefined;
  const certificates = (data.certificates ?? []).flatMap(({ certificate }) =>
    certificate ? [new X509Certificate(Buffer.from(AsnConvert.serialize(certificate)))] : [],
  );
  return { info, content: new Uint8Array(content), signer, certificates };
}

/** Whose certificate signed a token, where the signature is right (RFC 5652, section 5.4). */
function signedBy(
  { info, content, signer }: Token,
  candidates: readonly X509Certificate[],
): X509Certificate | CheckedStamp {
  const wrong = (fault: 'signature' | 'signer'): CheckedStamp => ({ kind: 'wrong', fault });
  const { signedAttrs = [], digestAlgorithm, signatureAlgorithm, signature } = signer;
  const named = namedIn(signer, candidates);
  if (named === 'nobody') return wrong('signer');
  const unproven = (doubt: 'no-certificate' | 'algorithm'): CheckedStamp => ({
    ...{ kind: 'unproven', doubt, at: info.genTime.getTime() },
  });
  if (!named) return unproven('no-certificate');
  const digest = DIGESTS[digestAlgorithm.algorithm];
  const method = SIGNATURES[signatureAlgorithm.algorithm];
  if (!digest || !method || named.publicKey.asymmetricKeyType !== method.key) return unproven('algorithm');
  const only = (type: string): ArrayBuffer | undefined => {
    const [attribute, ...others] = signedAttrs.filter(({ attrType }) => attrType === type);
    return others.length === 0 && attribute?.attrValues.length === 1 ? attribute.attrValues[0] : undefined;
  };
  const [type, hash] = [only(CONTENT_TYPE), only(MESSAGE_DIGEST)];
  const isContent =
    type !== undefined &&
    hash !== undefined &&
    isSame(type, CONTENT_TYPE_DER) &&
    isSame(AsnConvert.parse(hash, OctetString).buffer, digestOf(digest, content));
  if (!isContent) return wrong('signature');
  return isSigned(method.hash ?? digest, setOf(signedAttrs), named.publicKey, signature.buffer)
    ? named
    : wrong('signature');
}

class Attributes extends AsnArray<Attribute> {}
AsnType({ type: AsnTypeTypes.Set, itemType: Attribute })(Attributes);

/** The DER that is signed (RFC 5652, section 5.4): the set itself, under its own tag and not that of the field, in the order of DER. */
function setOf(attributes: readonly Attribute[]): Uint8Array {
  const der = (attribute: Attribute) => Buffer.from(AsnConvert.serialize(attribute));
  const sorted = [...attributes].sort((one, other) => Buffer.compare(der(one), der(other)));
  return new Uint8Array(AsnConvert.serialize(new Attributes(sorted)));
}

/** OBJECT IDENTIFIER id-ct-TSTInfo, 1.2.840.113549.1.9.16.1.4. */
const CONTENT_TYPE_DER = Buffer.from('060b2a864886f70d0109100104', 'hex');

function isSigned(hash: string, text: Uint8Array, key: KeyObject, signature: ArrayBuffer): boolean {
  try {
    return verify(hash, text, key, Buffer.from(signature));
  } catch {
    return false;
  }
}

const digestOf = (hash: string, content: string | Uint8Array): Buffer =>
  createHash(hash).update(content).digest();

const isSame = (one: ArrayBuffer, other: Uint8Array): boolean => Buffer.from(one).equals(other);
