import { X509Certificate } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createSecureContext } from 'node:tls';
import { generate } from 'selfsigned';
import { StartFailure } from '../process/start-failure.ts';

/** PEM texts. */
export interface KeyPair {
  cert: string;
  key: string;
}

const DAY_MS = 24 * 3600 * 1000;
/** Apple's systems refuse a certificate that is valid for more than 825 days. */
const VALID_DAYS = 820;
const RENEW_BEFORE_DAYS = 14;

export const CERT_FILE = 'own-certificate.pem';
export const KEY_FILE = 'own-key.pem';

/**
 * The server's own certificate, kept in the data folder. A new one is made when there is none, when it expires soon,
 * and when it does not name all of `wanted`.
 */
export async function ownCertificate(
  folder: string,
  wanted: { names: string[]; addresses: string[] },
  now: number,
): Promise<KeyPair> {
  const certFile = join(folder, CERT_FILE);
  const keyFile = join(folder, KEY_FILE);
  const kept = readPair(certFile, keyFile);
  if (kept && isStillGood(kept.cert, wanted, now)) return kept;

  const made = await generate([{ name: 'commonName', value: 'Ladderline on this network' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    // A phone's clock may be a little behind.
    notBeforeDate: new Date(now - DAY_MS),
    notAfterDate: new Date(now + VALID_DAYS * DAY_MS),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      {
        name: 'subjectAltName',
        altNames: [
          ...wanted.names.map((value) => ({ type: 2 as const, value })),
          ...wanted.addresses.map((ip) => ({ type: 7 as const, ip })),
        ],
      },
    ],
  });
  const pair = { cert: made.cert, key: made.private };
  try {
    writeFileSync(keyFile, pair.key, { mode: 0o600 });
    writeFileSync(certFile, pair.cert);
  } catch (error) {
    throw new StartFailure(`the certificate cannot be saved in ${folder}: ${(error as Error).message}`);
  }
  return pair;
}

function readPair(certFile: string, keyFile: string): KeyPair | undefined {
  try {
    return { cert: readFileSync(certFile, 'utf8'), key: readFileSync(keyFile, 'utf8') };
  } catch {
    return undefined;
  }
}

function isStillGood(pem: string, wanted: { names: string[]; addresses: string[] }, now: number): boolean {
  try {
    const cert = new X509Certificate(pem);
    return (
      Date.parse(cert.validTo) - now > RENEW_BEFORE_DAYS * DAY_MS &&
      wanted.names.every((name) => cert.checkHost(name)) &&
      wanted.addresses.every((address) => cert.checkIP(address))
    );
  } catch {
    return false;
  }
}

/** Whether a certificate is for a name, by its own rules for wildcards. */
export function namesIn({ cert }: KeyPair): (name: string) => boolean {
  const x509 = new X509Certificate(cert);
  return (name) => x509.checkHost(name, { subject: 'never' }) !== undefined;
}

/** Throws `StartFailure` when the files cannot be read or do not belong together. */
export function givenCertificate(certFile: string, keyFile: string): KeyPair {
  const read = (file: string) => {
    try {
      return readFileSync(file, 'utf8');
    } catch (error) {
      throw new StartFailure(`${file} cannot be read: ${(error as Error).message}`);
    }
  };
  const pair = { cert: read(certFile), key: read(keyFile) };
  try {
    createSecureContext(pair);
  } catch (error) {
    throw new StartFailure(
      `${certFile} and ${keyFile} do not belong together (${(error as Error).message}): give a certificate and its key as PEM files.`,
    );
  }
  return pair;
}
