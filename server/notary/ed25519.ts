import {
  createPrivateKey,
  createPublicKey,
  generateKeyPairSync,
  hkdfSync,
  type KeyObject,
  sign as signWith,
  verify as verifyWith,
} from 'node:crypto';
import { join } from 'node:path';
import {
  type CheckSignature,
  type Fingerprint,
  fingerprintOf,
  type PublicKey,
} from '../../src/log/signed-head.ts';
import { readKeyFile, writeKeyFile } from '../store/key-file.ts';
import { StoreFailure } from '../store/store.ts';

export const SIGNING_KEY_FILE = 'signing.key';

/** The key with which a server vouches for its logs (Ed25519, RFC 8032). */
export class SigningKey {
  readonly public: PublicKey;
  readonly fingerprint: Fingerprint;

  constructor(private readonly secret: KeyObject) {
    this.public = createPublicKey(secret).export({ type: 'spki', format: 'der' }).toString('hex');
    this.fingerprint = fingerprintOf(this.public);
  }

  static make(): SigningKey {
    return new SigningKey(generateKeyPairSync('ed25519').privateKey);
  }

  /** The key of a data folder, made at the first start. Throws `StoreFailure` when it cannot be read. */
  static ofFolder(folder: string): SigningKey {
    const file = join(folder, SIGNING_KEY_FILE);
    const text = readKeyFile(file);
    if (text !== undefined) return new SigningKey(secretIn(text, file));
    const made = SigningKey.make();
    writeKeyFile(file, made.secret.export({ type: 'pkcs8', format: 'pem' }).toString());
    return made;
  }

  /** A key for something else that must be the same after a restart (HKDF, RFC 5869): 32 bytes. */
  derived(purpose: string): Uint8Array {
    const secret = this.secret.export({ type: 'pkcs8', format: 'der' });
    return new Uint8Array(hkdfSync('sha256', secret, '', `ladderline ${purpose}`, 32));
  }

  /** Base64url. */
  sign(text: string): string {
    return signWith(null, Buffer.from(text, 'utf8'), this.secret).toString('base64url');
  }
}

/** A key that others may have noted down must not be replaced without a word. */
function secretIn(text: string, file: string): KeyObject {
  try {
    const key = createPrivateKey(text);
    if (key.asymmetricKeyType === 'ed25519') return key;
  } catch {
    // Said below.
  }
  throw new StoreFailure(
    `${file} is no Ed25519 key: put back the file from a backup, or move it away, and a new key is made that people must be told of.`,
  );
}

export const checkSignature: CheckSignature = (key, text, signature) => {
  try {
    const spki = createPublicKey({ key: Buffer.from(key, 'hex'), type: 'spki', format: 'der' });
    return verifyWith(null, Buffer.from(text, 'utf8'), spki, Buffer.from(signature, 'base64url'));
  } catch {
    // Not a point of the curve.
    return false;
  }
};
