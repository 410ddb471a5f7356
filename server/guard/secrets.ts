import { createHash, createHmac, randomBytes } from 'node:crypto';
import { customAlphabet, nanoid } from 'nanoid';
import type { JobId } from '../../src/model/ids.ts';
import type { PhoneId, PhoneMark } from '../../src/model/person.ts';
import { CODE_ALPHABET, CODE_LENGTH } from '../../src/protocol/join-code.ts';
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

/** In the log instead of the phone's id: with the job as salt, nobody can follow a phone from log to log. */
export const phoneMark = (job: JobId, phone: PhoneId): PhoneMark =>
  createHash('sha256').update(`${job} ${phone}`).digest('hex').slice(0, 8);

/** Stored instead of the secret, so that nobody can open a job with a copied database. */
export const digest = (secret: string): Digest => createHash('sha256').update(secret).digest('hex');
