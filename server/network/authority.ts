// First: the library of certificates needs it.
import 'reflect-metadata';
import { createPublicKey, generateKeyPairSync, randomBytes, webcrypto } from 'node:crypto';
import { BlockList, isIP } from 'node:net';
import { hostname } from 'node:os';
import { AsnConvert } from '@peculiar/asn1-schema';
import { GeneralName, GeneralSubtree, GeneralSubtrees, NameConstraints } from '@peculiar/asn1-x509';
import {
  AuthorityKeyIdentifierExtension,
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  Extension,
  KeyUsageFlags,
  KeyUsagesExtension,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate,
  X509CertificateGenerator,
} from '@peculiar/x509';

/** PEM texts. `authority`: who signed `cert`, where phones must first be told to trust it. */
export interface KeyPair {
  cert: string;
  key: string;
  authority?: string;
}

/** What a certificate is for. */
export interface Wanted {
  names: readonly string[];
  addresses: readonly string[];
}

const DAY_MS = 24 * 3600 * 1000;
const AUTHORITY_DAYS = 10 * 365;
/** Apple's systems refuse one from an authority of one's own that is valid for more than 825 days. */
const VALID_DAYS = 397;
const SIGNING = { name: 'ECDSA', hash: 'SHA-256' };
const CURVE = { name: 'ECDSA', namedCurve: 'P-256' };
const NAME_CONSTRAINTS = '2.5.29.30';

/** RFC 1918, RFC 3927, RFC 4193, RFC 4291: addresses of a network of one's own. */
const OWN_NETWORKS = [
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '169.254.0.0/16',
  '127.0.0.0/8',
  '::1/128',
  'fc00::/7',
  'fe80::/10',
];

/** RFC 6762: what ends in it is a name of one's own network. */
const OWN_NAMES = ['localhost', 'local'];

/**
 * A certificate authority that can only speak for this server: phones that trust it trust it for addresses of
 * private networks, names in `.local`, and what is `wanted`, and for nothing else (RFC 5280, 4.2.1.10). So whoever
 * steals its key cannot pose as a bank.
 */
export async function makeAuthority(wanted: Wanted, now: number): Promise<KeyPair> {
  const { key, signingKey, publicKey } = await newKeys();
  const name = `CN=Ladderline on ${hostname().replace(/[^\w.-]/g, '')}, O=made ${new Date(now).toISOString().slice(0, 10)}`;
  const cert = await X509CertificateGenerator.create({
    ...validFor(AUTHORITY_DAYS, now),
    subject: name,
    issuer: name,
    signingKey,
    publicKey,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign, true),
      await SubjectKeyIdentifierExtension.create(publicKey),
      constraintsFor(wanted),
    ],
  });
  return { cert: cert.toString('pem'), key };
}

/** A certificate of `authority` for `wanted`. */
export async function certificateBy(authority: KeyPair, wanted: Wanted, now: number): Promise<KeyPair> {
  const issuer = new X509Certificate(authority.cert);
  const { key, publicKey } = await newKeys();
  const cert = await X509CertificateGenerator.create({
    ...validFor(VALID_DAYS, now),
    subject: 'CN=Ladderline on this network',
    issuer: issuer.subject,
    signingKey: await secretOf(authority.key),
    publicKey,
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension([
        ...wanted.names.map((value) => ({ type: 'dns' as const, value })),
        ...wanted.addresses.map((value) => ({ type: 'ip' as const, value })),
      ]),
      await AuthorityKeyIdentifierExtension.create(issuer),
      await SubjectKeyIdentifierExtension.create(publicKey),
    ],
  });
  return { cert: cert.toString('pem'), key, authority: authority.cert };
}

/** Whether `authority` may speak for all of `wanted`, and for as long as a new certificate lasts. */
export function maySign(authority: string, { names, addresses }: Wanted, now: number): boolean {
  const cert = new X509Certificate(authority);
  const bytes = cert.getExtension(NAME_CONSTRAINTS)?.value;
  const permitted = bytes ? (AsnConvert.parse(bytes, NameConstraints).permittedSubtrees ?? []) : [];
  const bases: string[] = [];
  const networks = new BlockList();
  for (const { base } of permitted) {
    if (base.dNSName !== undefined) bases.push(base.dNSName);
    const [network, prefix] = base.iPAddress?.split('/') ?? [];
    if (network !== undefined) networks.addSubnet(network, Number(prefix), familyOf(network));
  }
  return (
    cert.notAfter.getTime() - now > VALID_DAYS * DAY_MS &&
    names.every((name) => bases.some((base) => name === base || name.endsWith(`.${base}`))) &&
    addresses.every((address) => networks.check(address, familyOf(address)))
  );
}

const familyOf = (address: string) => (isIP(address) === 6 ? 'ipv6' : 'ipv4');

function constraintsFor({ names, addresses }: Wanted): Extension {
  const bases = [
    ...new Set([...OWN_NAMES, ...names]),
    ...OWN_NETWORKS,
    ...addresses.map((address) => `${address}/${isIP(address) === 6 ? 128 : 32}`),
  ].map((base) => new GeneralName(base.includes('/') ? { iPAddress: base } : { dNSName: base }));
  const permittedSubtrees = new GeneralSubtrees(bases.map((base) => new GeneralSubtree({ base })));
  return new Extension(
    NAME_CONSTRAINTS,
    true,
    AsnConvert.serialize(new NameConstraints({ permittedSubtrees })),
  );
}

/** A phone's clock may be a little behind. */
const validFor = (days: number, now: number) => ({
  serialNumber: `00${randomBytes(16).toString('hex')}`,
  notBefore: new Date(now - DAY_MS),
  notAfter: new Date(now + days * DAY_MS),
  signingAlgorithm: SIGNING,
});

async function newKeys() {
  const { privateKey } = generateKeyPairSync('ec', { namedCurve: CURVE.namedCurve });
  const key = privateKey.export({ type: 'pkcs8', format: 'pem' }).toString().trim();
  const spki = createPublicKey(privateKey).export({ type: 'spki', format: 'der' });
  return {
    key,
    signingKey: await secretOf(key),
    publicKey: await webcrypto.subtle.importKey('spki', spki, CURVE, true, ['verify']),
  };
}

function secretOf(pem: string) {
  const der = Buffer.from(pem.replace(/-----[^-]+-----|\s/g, ''), 'base64');
  return webcrypto.subtle.importKey('pkcs8', der, CURVE, false, ['sign']);
}
