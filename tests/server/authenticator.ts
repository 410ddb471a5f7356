import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from 'node:crypto';
import type { z } from 'zod';
import type { MadePasskey, NewPasskey, SignIn, SignInChallenge } from '../../src/protocol/accounts.ts';

/** What a test may do otherwise than an honest browser and authenticator do. */
export interface Otherwise {
  rpId?: string;
  counter?: number;
  /** False: nobody was asked for a finger or a PIN. */
  isVerified?: boolean;
  userHandle?: string;
  /** False: one bit of the signature is another. */
  isSigned?: boolean;
}

interface Kept {
  readonly id: string;
  readonly key: KeyObject;
  readonly handle: string;
  counter: number;
}

const PRESENT = 0x01;
const VERIFIED = 0x04;
const ATTESTED = 0x40;

/**
 * An authenticator as the bytes of WebAuthn Level 2 say: authenticator data 6.1, attested credential data 6.5.1, the
 * statement "none" 8.7, the signature 6.3.3; ES256 keys by RFC 9053, 7.1.1; CBOR by RFC 8949. All from memory. It shares no
 * code with the library that the server checks it with.
 */
export class Authenticator {
  readonly kept: Kept[] = [];

  constructor(readonly origin: string) {}

  make({ challenge, rpId, user }: NewPasskey, other: Otherwise = {}): MadePasskey {
    const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    const id = randomBytes(16);
    const { x = '', y = '' } = publicKey.export({ format: 'jwk' });
    const cose = map([
      [1, 2],
      [3, -7],
      [-1, 1],
      [-2, Buffer.from(x, 'base64url')],
      [-3, Buffer.from(y, 'base64url')],
    ]);
    const length = Buffer.alloc(2);
    length.writeUInt16BE(id.length);
    const data = Buffer.concat([
      this.data(other.rpId ?? rpId, flags(other) | ATTESTED, other.counter ?? 0),
      Buffer.alloc(16),
      length,
      id,
      cose,
    ]);
    this.kept.push({
      id: id.toString('base64url'),
      key: privateKey,
      handle: user.id,
      counter: other.counter ?? 0,
    });
    const statement = map([
      ['fmt', 'none'],
      ['attStmt', new Map<string, string>()],
      ['authData', data],
    ]);
    return {
      id: id.toString('base64url'),
      clientDataJSON: this.clientData('webauthn.create', challenge).toString('base64url'),
      attestationObject: statement.toString('base64url'),
      transports: ['internal'],
    };
  }

  show(
    { challenge, rpId }: z.output<typeof SignInChallenge>,
    other: Otherwise = {},
    which = 0,
  ): z.input<typeof SignIn> {
    const kept = this.kept[which];
    if (!kept) throw new Error('the authenticator has no such passkey');
    if (kept.counter > 0) kept.counter += 1;
    const client = this.clientData('webauthn.get', challenge);
    const data = this.data(other.rpId ?? rpId, flags(other), other.counter ?? kept.counter);
    const hash = createHash('sha256').update(client).digest();
    const signature = sign('sha256', Buffer.concat([data, hash]), kept.key);
    if (other.isSigned === false) signature[signature.length - 1] = (signature.at(-1) ?? 0) ^ 1;
    return {
      id: kept.id,
      clientDataJSON: client.toString('base64url'),
      authenticatorData: data.toString('base64url'),
      signature: signature.toString('base64url'),
      userHandle: other.userHandle ?? kept.handle,
      device: 'Test device',
    };
  }

  private clientData(type: string, challenge: string): Buffer {
    return Buffer.from(JSON.stringify({ type, challenge, origin: this.origin, crossOrigin: false }));
  }

  private data(rpId: string, flag: number, counter: number): Buffer {
    const count = Buffer.alloc(4);
    count.writeUInt32BE(counter);
    return Buffer.concat([createHash('sha256').update(rpId).digest(), Buffer.from([flag]), count]);
  }
}

const flags = ({ isVerified = true }: Otherwise): number => PRESENT | (isVerified ? VERIFIED : 0);

type Item = number | string | Buffer | Map<string, string>;

const head = (major: number, value: number): Buffer =>
  value < 24
    ? Buffer.from([(major << 5) | value])
    : value < 256
      ? Buffer.from([(major << 5) | 24, value])
      : Buffer.from([(major << 5) | 25, value >> 8, value & 255]);

function item(value: Item): Buffer {
  if (typeof value === 'number') return value < 0 ? head(1, -1 - value) : head(0, value);
  if (typeof value === 'string') return Buffer.concat([head(3, value.length), Buffer.from(value)]);
  if (value instanceof Map) return head(5, 0);
  return Buffer.concat([head(2, value.length), value]);
}

const map = (pairs: readonly [Item, Item][]): Buffer =>
  Buffer.concat([head(5, pairs.length), ...pairs.flatMap((pair) => pair.map(item))]);
