import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { Challenges, MOST_OF_PLACE } from '../../server/guard/challenges.ts';
import { digest, newToken } from '../../server/guard/secrets.ts';
import {
  type AccountBook,
  accept,
  addPasskey,
  type Changed,
  EMPTY_BOOK,
  INVITATION_MS,
  invitationOf,
  invite,
  type Passkey,
  removePasskey,
  renew,
  requireAccounts,
  usedPasskey,
  withdraw,
  withdrawInvitation,
} from '../../server/store/account-book.ts';
import { ACCOUNTS_FILE, accountsOf } from '../../server/store/accounts.ts';
import { type AccountRole, hasRight, PASSKEY_WITHIN_MS, type Right } from '../../src/model/account.ts';

const NOW = 1_795_600_000_000;
const passkey = (id: string): Passkey => ({
  id,
  publicKey: 'AA',
  counter: 0,
  rpId: 'localhost',
  madeAt: NOW,
});
const bookOf = (outcome: Changed): AccountBook => {
  if (outcome.kind === 'refused') throw new Error(outcome.text);
  return outcome.book;
};
const whyNot = (outcome: Changed): string | undefined =>
  outcome.kind === 'refused' ? outcome.text : undefined;

/** A book with somebody in it. */
function withAccount(book: AccountBook, name: string, role: AccountRole, id: string): AccountBook {
  const secret = digest(newToken());
  return bookOf(
    accept(bookOf(invite(book, { name, role }, secret, NOW)), secret, id, passkey(`key-of-${id}`), NOW),
  );
}

const ANA = 'A'.repeat(22);
const BEN = 'B'.repeat(22);

describe('a role', () => {
  it.each<[AccountRole, Right[]]>([
    ['technician', ['open-job']],
    ['supervisor', ['open-job', 'open-site', 'sign']],
    ['administrator', ['open-job', 'open-site', 'sign', 'invite']],
  ])('of a %s has these rights and no other: %j', (role, rights) => {
    const all: Right[] = ['open-job', 'open-site', 'sign', 'invite'];
    expect(all.filter((right) => hasRight(role, right))).toEqual(rights);
  });
});

describe('an invitation', () => {
  const secret = digest('the secret of a link');
  const book = bookOf(invite(EMPTY_BOOK, { name: 'Ana Example', role: 'technician' }, secret, NOW));

  it.each([
    ['in its last millisecond', NOW + INVITATION_MS - 1, true],
    ['after a day', NOW + INVITATION_MS, false],
  ])('%s is good: %j', (_, at, good) => {
    expect(INVITATION_MS).toBe(24 * 60 * 60 * 1000);
    expect(invitationOf(book, secret, at) !== undefined).toBe(good);
    expect(accept(book, secret, ANA, passkey('k1'), at).kind).toBe(good ? 'changed' : 'refused');
  });

  it('works once, with the role and name that were given', () => {
    const after = bookOf(accept(book, secret, ANA, passkey('k1'), NOW));
    expect(after.accounts).toMatchObject([{ id: ANA, name: 'Ana Example', role: 'technician' }]);
    expect(after.invitations).toEqual([]);
    expect(whyNot(accept(after, secret, BEN, passkey('k2'), NOW))).toContain('no longer good');
  });

  it('is for a name that nobody else has here, however it is written; one that is over counts no more', () => {
    const again = { name: 'ana  EXAMPLE', role: 'supervisor' } as const;
    expect(whyNot(invite(book, again, digest('other'), NOW + INVITATION_MS - 1))).toContain('has an account');
    expect(invite(book, again, digest('other'), NOW + INVITATION_MS).kind).toBe('changed');
    const after = bookOf(accept(book, secret, ANA, passkey('k1'), NOW));
    expect(whyNot(invite(after, again, digest('other'), NOW))).toContain('Withdraw it first');
  });

  it('can be withdrawn, and then makes nothing', () => {
    const after = bookOf(withdrawInvitation(book, secret));
    expect(whyNot(accept(after, secret, ANA, passkey('k1'), NOW))).toContain('no longer good');
    expect(whyNot(withdrawInvitation(after, secret))).toContain('no such');
  });
});

describe('the last administrator', () => {
  const one = withAccount(EMPTY_BOOK, 'Ana Example', 'administrator', ANA);
  const needed = bookOf(requireAccounts(one, NOW));

  it('cannot be withdrawn while accounts are needed, whoever else there is', () => {
    const others = withAccount(needed, 'Ben Example', 'supervisor', BEN);
    expect(whyNot(withdraw(others, ANA))).toContain('last administrator');
    expect(withdraw(withAccount(needed, 'Ben Example', 'administrator', BEN), ANA).kind).toBe('changed');
    expect(withdraw(one, ANA).kind).toBe('changed');
  });

  it('who is only invited is no other one yet', () => {
    const invited = bookOf(invite(needed, { name: 'Ben', role: 'administrator' }, digest('b'), NOW));
    expect(whyNot(withdraw(invited, ANA))).toContain('last administrator');
  });

  it('who lost every device is invited again in one step, and the old passkey is gone', () => {
    const after = bookOf(renew(needed, ANA, digest('new'), NOW));
    expect(after.accounts).toEqual([]);
    expect(after.invitations).toMatchObject([{ name: 'Ana Example', role: 'administrator' }]);
    expect(after.required).toBe(true);
  });

  it('must be there, or be invited, before accounts are needed', () => {
    const supervisor = withAccount(EMPTY_BOOK, 'Ben Example', 'supervisor', BEN);
    expect(whyNot(requireAccounts(supervisor, NOW))).toContain('no administrator');
    const invited = bookOf(invite(supervisor, { name: 'Ana', role: 'administrator' }, digest('a'), NOW));
    expect(requireAccounts(invited, NOW + INVITATION_MS - 1).kind).toBe('changed');
    expect(whyNot(requireAccounts(invited, NOW + INVITATION_MS))).toContain('no administrator');
  });
});

describe('a passkey', () => {
  const book = withAccount(EMPTY_BOOK, 'Ana Example', 'technician', ANA);

  it('is removed, but not the last one', () => {
    const two = bookOf(addPasskey(book, ANA, passkey('second')));
    expect(bookOf(removePasskey(two, ANA, `key-of-${ANA}`)).accounts[0]?.passkeys).toMatchObject([
      { id: 'second' },
    ]);
    expect(whyNot(removePasskey(book, ANA, `key-of-${ANA}`))).toContain('only passkey');
    expect(whyNot(removePasskey(two, ANA, 'third'))).toContain('no such passkey');
  });

  it('is of one account alone', () => {
    const both = withAccount(book, 'Ben Example', 'technician', BEN);
    expect(addPasskey(both, BEN, passkey(`key-of-${ANA}`)).kind).toBe('refused');
    expect(removePasskey(both, BEN, `key-of-${ANA}`).kind).toBe('refused');
  });

  it('keeps what its authenticator counted', () => {
    const used = bookOf(usedPasskey(book, ANA, `key-of-${ANA}`, 7, NOW + 5));
    expect(used.accounts[0]?.passkeys).toMatchObject([{ counter: 7, usedAt: NOW + 5 }]);
  });
});

describe('the file of the accounts', () => {
  const root = mkdtempSync(join(tmpdir(), 'ladderline-accounts-'));
  afterAll(() => rmSync(root, { recursive: true }));
  const file = join(root, ACCOUNTS_FILE);

  it('is for its owner alone, holds no secret of an invitation, and holds at once for others', () => {
    const secret = newToken();
    accountsOf(root).change((book) =>
      invite(book, { name: 'Ana Example', role: 'administrator' }, digest(secret), NOW),
    );
    expect(statSync(file).mode & 0o777).toBe(0o600);
    expect(readFileSync(file, 'utf8')).not.toContain(secret);
    // 128 bits, base64url.
    expect(secret).toMatch(/^[\w-]{22}$/);
    expect(invitationOf(accountsOf(root).read(), digest(secret), NOW)).toMatchObject({ name: 'Ana Example' });
    expect(existsSync(`${file}.lock`)).toBe(false);
  });

  it('stays as it was where a change is refused', () => {
    const before = readFileSync(file, 'utf8');
    expect(accountsOf(root).change((book) => withdraw(book, BEN)).kind).toBe('refused');
    expect(readFileSync(file, 'utf8')).toBe(before);
  });

  it('is changed by one program at a time; one that was killed stops nobody for long', () => {
    writeFileSync(`${file}.lock`, '');
    expect(() => accountsOf(root).change((book) => requireAccounts(book, NOW))).toThrow('try again');
    const long = Date.now() / 1000 - 11;
    utimesSync(`${file}.lock`, long, long);
    expect(accountsOf(root).change((book) => requireAccounts(book, NOW)).kind).toBe('changed');
  }, 20_000);

  it.each(['scribble', '{}', '{"version":2,"required":false,"accounts":[],"invitations":[]}'])(
    'damaged, it lets nobody in: %s',
    (text) => {
      writeFileSync(file, text);
      expect(() => accountsOf(root).read()).toThrow('damaged');
    },
  );
});

describe('a challenge', () => {
  it.each([
    ['just before five minutes are over', PASSKEY_WITHIN_MS - 1, true],
    ['after five minutes', PASSKEY_WITHIN_MS, false],
  ])('%s is good: %j', (_, later, good) => {
    expect(PASSKEY_WITHIN_MS).toBe(300_000);
    const challenges = new Challenges();
    const challenge = challenges.give('sign-in', 'here', 7);
    expect(challenges.take(challenge, 'sign-in', 7 + later)).toBe(good);
  });

  it('is good once, and only for what it was given for', () => {
    const challenges = new Challenges();
    const challenge = challenges.give('sign-in', 'here', 0);
    // WebAuthn Level 2, 13.4.3: at least 16 bytes; from memory.
    expect(Buffer.from(challenge, 'base64url').length).toBe(32);
    expect(challenges.take(challenge, 'sign-in', 1)).toBe(true);
    expect(challenges.take(challenge, 'sign-in', 2)).toBe(false);
    const other = challenges.give('add A', 'here', 0);
    expect(challenges.take(other, 'add B', 1)).toBe(false);
    expect(challenges.take(other, 'add A', 1)).toBe(false);
    expect(challenges.take('never given', 'sign-in', 1)).toBe(false);
  });

  it('is pushed out by its own block of addresses, never by another', () => {
    const challenges = new Challenges();
    const mine = challenges.give('sign-in', 'mine', 0);
    const first = challenges.give('sign-in', 'theirs', 0);
    for (let i = 1; i < MOST_OF_PLACE; i++) challenges.give('sign-in', 'theirs', 0);
    const next = challenges.give('sign-in', 'theirs', 0);
    expect([first, next, mine].map((each) => challenges.take(each, 'sign-in', 1))).toEqual([
      false,
      true,
      true,
    ]);
  });
});
