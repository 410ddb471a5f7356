import * as z from 'zod/mini';
import {
  type AccountId,
  AccountId as AccountIdShape,
  AccountName,
  AccountRole,
} from '../../src/model/account.ts';
import { Hash } from '../../src/model/ids.ts';
import { isSameName } from '../../src/model/person.ts';
import {
  LAST_ADMINISTRATOR,
  NO_ADMINISTRATOR,
  NO_SUCH_ACCOUNT,
  nameTakenText,
} from '../../src/phrases/account-holders.ts';
import { INVITATION_GONE, LAST_PASSKEY, NO_SUCH_PASSKEY } from '../../src/phrases/accounts.ts';
import { CredentialId, type Holder } from '../../src/protocol/accounts.ts';
import type { Digest } from './store.ts';

/** So long an invitation is good. */
export const INVITATION_MS = 24 * 3600_000;

/** A passkey as the server knows it: nothing in it is secret. Times: ms since 1970. */
export const Passkey = z.object({
  id: CredentialId,
  /** A COSE key, base64url. */
  publicKey: z.string(),
  /** As the authenticator counted last; 0 where it does not count. */
  counter: z.int().check(z.nonnegative()),
  /** The name of the server under which it was made. */
  rpId: z.string(),
  transports: z.optional(z.array(z.string())),
  madeAt: z.number(),
  usedAt: z.optional(z.number()),
});
export type Passkey = z.infer<typeof Passkey>;

const Account = z.object({
  id: AccountIdShape,
  name: AccountName,
  role: AccountRole,
  madeAt: z.number(),
  passkeys: z.array(Passkey).check(z.minLength(1)),
});
export type Account = z.infer<typeof Account>;

const Invitation = z.object({
  /** SHA-256 of the secret in the link. */
  digest: Hash,
  name: AccountName,
  role: AccountRole,
  until: z.number(),
});
export type Invitation = z.infer<typeof Invitation>;

/** Everybody who has an account or an invitation. */
export const AccountBook = z.object({
  version: z.literal(1),
  /** Whether an account is needed to open sites and jobs. */
  required: z.boolean(),
  accounts: z.array(Account),
  invitations: z.array(Invitation),
});
export type AccountBook = z.infer<typeof AccountBook>;

export const EMPTY_BOOK: AccountBook = { version: 1, required: false, accounts: [], invitations: [] };

/** The book after a change, or why it was not changed. */
export type Changed = { kind: 'changed'; book: AccountBook } | { kind: 'refused'; text: string };

const changed = (book: AccountBook): Changed => ({ kind: 'changed', book });
const refused = (text: string): Changed => ({ kind: 'refused', text });

/** `digest`: of the secret that is put into the link. */
export function invite(book: AccountBook, { name, role }: Holder, digest: Digest, now: number): Changed {
  const invitations = stillGood(book, now);
  if ([...book.accounts, ...invitations].some((one) => isSameName(one.name, name)))
    return refused(nameTakenText(name));
  const invitation = { digest, name, role, until: now + INVITATION_MS };
  return changed({ ...book, invitations: [...invitations, invitation] });
}

export const invitationOf = (book: AccountBook, digest: Digest, now: number): Invitation | undefined =>
  stillGood(book, now).find((one) => one.digest === digest);

/** Uses the invitation up. */
export function accept(
  book: AccountBook,
  digest: Digest,
  id: AccountId,
  passkey: Passkey,
  now: number,
): Changed {
  const invitation = invitationOf(book, digest, now);
  if (!invitation) return refused(INVITATION_GONE);
  if (passkeyOf(book, passkey.id)) return refused(NO_SUCH_PASSKEY);
  const { name, role } = invitation;
  const account = { id, name, role, madeAt: now, passkeys: [passkey] };
  return changed({
    ...book,
    accounts: [...book.accounts, account],
    invitations: book.invitations.filter((one) => one !== invitation),
  });
}

/** The account is gone, with its passkeys. While accounts are needed, an administrator stays. */
export function withdraw(book: AccountBook, id: AccountId): Changed {
  const accounts = book.accounts.filter((one) => one.id !== id);
  if (accounts.length === book.accounts.length) return refused(NO_SUCH_ACCOUNT);
  const hadOne = book.accounts.some(isAdministrator);
  if (book.required && hadOne && !accounts.some(isAdministrator)) return refused(LAST_ADMINISTRATOR);
  return changed({ ...book, accounts });
}

export function withdrawInvitation(book: AccountBook, digest: Digest): Changed {
  const invitations = book.invitations.filter((one) => one.digest !== digest);
  return invitations.length === book.invitations.length
    ? refused(NO_SUCH_ACCOUNT)
    : changed({ ...book, invitations });
}

/** For who has lost every device: the account is gone, and its name is invited again. The last administrator's, too. */
export function renew(book: AccountBook, id: AccountId, digest: Digest, now: number): Changed {
  const account = accountOf(book, id);
  if (!account) return refused(NO_SUCH_ACCOUNT);
  const accounts = book.accounts.filter((one) => one !== account);
  return invite({ ...book, accounts }, account, digest, now);
}

export const addPasskey = (book: AccountBook, id: AccountId, passkey: Passkey): Changed =>
  passkeyOf(book, passkey.id)
    ? refused(NO_SUCH_PASSKEY)
    : inAccount(book, id, (account) => ({ ...account, passkeys: [...account.passkeys, passkey] }));

export function removePasskey(book: AccountBook, id: AccountId, passkey: string): Changed {
  const { passkeys = [] } = accountOf(book, id) ?? {};
  const others = passkeys.filter((one) => one.id !== passkey);
  if (others.length === passkeys.length) return refused(NO_SUCH_PASSKEY);
  if (others.length === 0) return refused(LAST_PASSKEY);
  return inAccount(book, id, (account) => ({ ...account, passkeys: others }));
}

/** A passkey was used, and its authenticator has counted so far. */
export const usedPasskey = (
  book: AccountBook,
  id: AccountId,
  passkey: string,
  counter: number,
  now: number,
): Changed =>
  inAccount(book, id, (account) => ({
    ...account,
    passkeys: account.passkeys.map((one) => (one.id === passkey ? { ...one, counter, usedAt: now } : one)),
  }));

/** From now on an account is needed; not before there is somebody who can invite. */
export function requireAccounts(book: AccountBook, now: number): Changed {
  const isThere = [...book.accounts, ...stillGood(book, now)].some(isAdministrator);
  return isThere ? changed({ ...book, required: true }) : refused(NO_ADMINISTRATOR);
}

export const accountOf = (book: AccountBook, id: AccountId): Account | undefined =>
  book.accounts.find((one) => one.id === id);

/** A passkey, and whose it is. */
export function passkeyOf(book: AccountBook, id: string): { account: Account; passkey: Passkey } | undefined {
  for (const account of book.accounts) {
    const passkey = account.passkeys.find((one) => one.id === id);
    if (passkey) return { account, passkey };
  }
  return undefined;
}

export const stillGood = ({ invitations }: AccountBook, now: number): Invitation[] =>
  invitations.filter(({ until }) => now < until);

/** When one of its passkeys was last used, ms since 1970; undefined before that. */
export function lastUse({ passkeys }: Account): number | undefined {
  const used = Math.max(...passkeys.map(({ usedAt = 0 }) => usedAt));
  return used > 0 ? used : undefined;
}

const isAdministrator = ({ role }: Holder): boolean => role === 'administrator';

function inAccount(book: AccountBook, id: AccountId, to: (account: Account) => Account): Changed {
  if (!accountOf(book, id)) return refused(NO_SUCH_ACCOUNT);
  return changed({ ...book, accounts: book.accounts.map((one) => (one.id === id ? to(one) : one)) });
}
