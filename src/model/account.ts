import * as z from 'zod/mini';
import { Person } from './person.ts';

/** 128 random bits, base64url. It is what WebAuthn calls the user handle, and says nothing of the person. */
export const AccountId = z.string().check(z.regex(/^[A-Za-z0-9_-]{22}$/));
export type AccountId = z.infer<typeof AccountId>;

export const AccountName = Person.shape.name;

/** What an account may do. Each role may do what those before it may. */
export const AccountRole = z.enum(['technician', 'supervisor', 'administrator']);
export type AccountRole = z.infer<typeof AccountRole>;

/** What is asked of an account; joining, watching and planning are what links and codes are for. */
export type Right = 'open-job' | 'open-site' | 'sign' | 'figures' | 'invite' | 'reads';

const RIGHTS: Record<AccountRole, readonly Right[]> = {
  technician: ['open-job'],
  supervisor: ['open-job', 'open-site', 'sign', 'figures'],
  administrator: ['open-job', 'open-site', 'sign', 'figures', 'invite', 'reads'],
};

export const hasRight = (role: AccountRole, right: Right): boolean => RIGHTS[role].includes(right);

/** ES256 and RS256 (IANA COSE Algorithms): every authenticator has one of them, and so has every Node from 20 on. */
export const PASSKEY_ALGORITHMS = [-7, -257];

/** So long a person has to find their finger, or a phone in another room, ms. */
export const PASSKEY_WITHIN_MS = 5 * 60_000;
