import { createHash, randomBytes } from 'node:crypto';
import { customAlphabet, nanoid } from 'nanoid';
import { CODE_ALPHABET, CODE_LENGTH } from '../../src/protocol/access.ts';
import type { Digest } from '../store/store.ts';

const TOKEN_BYTES = 16;
const JOB_ID_LENGTH = 12;

export const newToken = (): string => randomBytes(TOKEN_BYTES).toString('base64url');
export const newCode: () => string = customAlphabet(CODE_ALPHABET, CODE_LENGTH);
export const newJobId = (): string => nanoid(JOB_ID_LENGTH);

/** Stored instead of the secret, so that nobody can open a job with a copied database. */
export const digest = (secret: string): Digest => createHash('sha256').update(secret).digest('hex');
