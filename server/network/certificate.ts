import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { createSecureContext } from 'node:tls';
import { StartFailure } from '../process/start-failure.ts';
import { certificateBy, type KeyPair, makeAuthority, maySign, type Wanted } from './authority.ts';

const DAY_MS = 24 * 3600 * 1000;
const RENEW_BEFORE_DAYS = 30;

/** Certificate and key in one file each, so that they never belong to two. */
export const AUTHORITY_FILE = 'own-authority.pem';
export const CERT_FILE = 'own-certificate.pem';

export interface OwnCertificate {
  pair: KeyPair;
  /** Phones that trusted the one before have to be told again. */
  isNewAuthority: boolean;
}

/**
 * The server's own certificate and the authority that signed it, kept in the data folder. A new certificate is made when
 * there is none, when it expires soon, and when it does not name all of `wanted`; a new authority only where the old one
 * may not sign that.
 */
export async function ownCertificate(folder: string, wanted: Wanted, now: number): Promise<OwnCertificate> {
  const authorityFile = join(folder, AUTHORITY_FILE);
  const certFile = join(folder, CERT_FILE);
  const isFirst = !existsSync(authorityFile);
  const old = readPair(authorityFile);
  const kept = old && maySign(old.cert, wanted, now) ? old : undefined;
  const authority = kept ?? (await makeAuthority(wanted, now));
  if (!kept) writePair(authorityFile, authority);
  const pair = readPair(certFile);
  if (pair && isStillGood(pair.cert, authority.cert, wanted, now))
    return { pair: { ...pair, authority: authority.cert }, isNewAuthority: false };
  const made = await certificateBy(authority, wanted, now);
  writePair(certFile, made);
  return { pair: made, isNewAuthority: !kept && !isFirst };
}

/** Undefined when the file is missing, or holds anything else. */
function readPair(file: string): KeyPair | undefined {
  try {
    const text = readFileSync(file, 'utf8');
    const block = (label: string) =>
      new RegExp(`-----BEGIN ${label}-----[^-]+-----END ${label}-----`).exec(text)?.[0] ?? '';
    const pair = { cert: block('CERTIFICATE'), key: block('PRIVATE KEY') };
    createSecureContext(pair);
    return pair.cert && pair.key ? pair : undefined;
  } catch {
    return undefined;
  }
}

function writePair(file: string, { cert, key }: KeyPair): void {
  try {
    writeFileSync(`${file}.new`, `${cert.trim()}\n${key.trim()}\n`, { mode: 0o600, flush: true });
    renameSync(`${file}.new`, file);
  } catch (error) {
    throw new StartFailure(`the certificate cannot be saved as ${file}: ${(error as Error).message}`);
  }
}

function isStillGood(pem: string, authority: string, wanted: Wanted, now: number): boolean {
  const cert = new X509Certificate(pem);
  return (
    cert.verify(new X509Certificate(authority).publicKey) &&
    Date.parse(cert.validTo) - now > RENEW_BEFORE_DAYS * DAY_MS &&
    wanted.names.every((name) => cert.checkHost(name)) &&
    wanted.addresses.every((address) => cert.checkIP(address))
  );
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

const LOOK_EVERY_MS = 60_000;

/**
 * Looks again now and then, and hands on a certificate that is another than before: the own one before it expires and
 * when the machine gets another address; given files when somebody put newer ones in their place. Call what is returned
 * to end it. `failed` hears why one could not be had; the old one then stays.
 */
export function keepRenewed(
  first: KeyPair,
  load: () => Promise<KeyPair>,
  onNew: (pair: KeyPair) => void,
  failed: (error: Error) => void,
  everyMs = LOOK_EVERY_MS,
): () => void {
  let now = first;
  const look = async () => {
    const pair = await load();
    if (pair.cert === now.cert && pair.key === now.key) return;
    now = pair;
    onNew(pair);
  };
  const timer = setInterval(() => look().catch(failed), everyMs).unref();
  return () => clearInterval(timer);
}
