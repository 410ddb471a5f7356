import { createHash, createHmac, randomBytes } from 'node:crypto';
import { customAlphabet, nanoid } from 'nanoid';
import { CODE_ALPHABET, CODE_LENGTH } from '../../src/protocol/join-code.ts';
import type { KeyId } from '../../src/protocol/keys.ts';
import type { Digest } from '../store/store.ts';

const TOKEN_BYTES = 16;
const JOB_ID_LENGTH = 12;

export const newToken = (): string => randomBytes(TOKEN_BYTES).toString('base64url');
export const newCode: () => string = customAlphabet(CODE_ALPHABET, CODE_LENGTH);
export const newJobId = (): string => nanoid(JOB_ID_LENGTH);

/** What a scanned code has beside it, and nobody can guess: 128 bits that only this server makes of it. */
export const proofOfCode = (key: Uint8Array, code: string): string =>
  createHmac('sha256', key).update(code).digest().subarray(0, TOKEN_BYTES).toString('base64url');

export const newCodeKey = (): Uint8Array => randomBytes(2 * TOKEN_BYTES);

/** Hashed with what lies beside a log, so that its hash tells nobody what it was. */
export const newSalt = (): string => randomBytes(TOKEN_BYTES).toString('hex');

/** Stored instead of the secret, so that nobody can open a job with a copied database. */
export const digest = (secret: string): Digest => createHash('sha256').update(secret).digest('hex');

/** By which people and logs name a token. */
export const keyIdOf = (token: Digest): KeyId => token.slice(0, 12);
