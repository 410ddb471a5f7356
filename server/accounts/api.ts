import { type Context, Hono } from 'hono';
import type { Logger } from 'pino';
import type { AccountId } from '../../src/model/account.ts';
import { NO_SUCH_ACCOUNT } from '../../src/phrases/account-holders.ts';
import {
  ACCOUNT_NEEDED,
  INVITATION_GONE,
  NO_ACCOUNTS,
  NO_SUCH_SESSION,
  PASSKEY_NOT_MADE,
  PASSKEY_REFUSED,
  PASSKEY_TROUBLE,
  PASSKEY_UNKNOWN,
  SIGN_IN_AGAIN,
} from '../../src/phrases/accounts.ts';
import { TOO_MANY_CHANGES } from '../../src/phrases/limits.ts';
import {
  type Accounts,
  type Holder,
  invitationPath,
  type NewPasskey,
  type OwnAccount,
} from '../../src/protocol/accounts.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { Buckets } from '../guard/allowance.ts';
import { Challenges } from '../guard/challenges.ts';
import { blockOf } from '../guard/guesses.ts';
import type { Limits } from '../guard/limits.ts';
import { digest, newToken } from '../guard/secrets.ts';
import { isFresh, type Session } from '../guard/sessions.ts';
import type { Entrance, Visitor } from '../http/entrance.ts';
import { addressOf, type Env, read, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import type { Clock } from '../process/clock.ts';
import {
  type Account,
  type AccountBook,
  accept,
  accountOf,
  addPasskey,
  type Changed,
  type Invitation,
  invitationOf,
  invite,
  lastUse,
  passkeyOf,
  removePasskey,
  stillGood,
  usedPasskey,
  withdraw,
  withdrawInvitation,
} from '../store/account-book.ts';
import type { AccountsFile } from '../store/accounts.ts';
import { madePasskey, provenCounter, type RelyingParty, relyingPartyOf } from './passkeys.ts';

interface AccountDeps {
  readonly entrance: Entrance;
  readonly limits: Limits;
  readonly clock: Clock;
  readonly log: Logger;
}

const INVITATION_ID_LETTERS = 12;
const invitationIdOf = (one: Invitation): string => one.digest.slice(0, INVITATION_ID_LETTERS);
const holderOf = ({ name, role }: Holder): Holder => ({ name, role });

/** Accounts: making and using passkeys, one's own account, and for administrators those of all. */
export function accountsApi({ entrance, limits, clock, log }: AccountDeps): Hono<Env> {
  const app = new Hono<Env>();
  const challenges = new Challenges();
  const changesOf = new Buckets(limits.siteWritesPerAddress);
  const { sessions } = entrance;

  answer(app, ROUTES.signInChallenge, (c) =>
    atPasskeys(c, async (_file, party) => {
      const challenge = challenges.give('sign-in', blockOf(addressOf(c)), performance.now());
      return c.json({ challenge, rpId: party.id });
    }),
  );

  answer(app, ROUTES.signIn, (c) =>
    atPasskeys(c, async (file, party) => {
      const body = await read(c, ROUTES.signIn.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const shown = body.value;
      const held = passkeyOf(file.read(), shown.id);
      const tried = await entrance.tried(c, async () => {
        if (!held) return false;
        const counter = await provenCounter(shown, held, party, isExpected('sign-in'));
        if (counter === undefined) return false;
        const now = clock.now();
        // Once more under the lock: two answers with the same counter are not both right.
        return (
          file.change((book) => {
            const stands = passkeyOf(book, shown.id)?.passkey.counter === held.passkey.counter;
            return stands
              ? usedPasskey(book, held.account.id, shown.id, counter, now)
              : { kind: 'refused', text: PASSKEY_REFUSED };
          }).kind === 'changed'
        );
      });
      if (tried === 'wrong') return refuse(c, 'locked', held ? PASSKEY_REFUSED : PASSKEY_UNKNOWN);
      if (tried !== 'right' || !held) return tried as Response;
      entrance.signIn(c, held.account.id, shown.device);
      log.info({ account: held.account.id }, 'somebody has signed in');
      return c.json({ holder: holderOf(held.account) });
    }),
  );

  answer(app, ROUTES.invited, (c) =>
    atPasskeys(c, async (file, party) => {
      const body = await read(c, ROUTES.invited.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const secret = digest(body.value.invitation);
      const invitation = invitationOf(file.read(), secret, clock.now());
      const tried = await entrance.tried(c, async () => invitation !== undefined);
      if (tried === 'wrong') return refuse(c, 'locked', INVITATION_GONE);
      if (tried !== 'right' || !invitation) return tried as Response;
      // The handle of the account that will be: the passkey keeps it, and the answer names it again.
      const user = { ...holderOf(invitation), id: newToken() };
      return c.json(newPasskey(c, party, `accept ${secret}`, user));
    }),
  );

  answer(app, ROUTES.acceptInvitation, (c) =>
    atPasskeys(c, async (file, party) => {
      const body = await read(c, ROUTES.acceptInvitation.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const { invitation, account: id, passkey, device } = body.value;
      const secret = digest(invitation);
      const now = clock.now();
      const made = await madePasskey(passkey, party, isExpected(`accept ${secret} ${id}`), now);
      if (!made) return refuse(c, 'locked', PASSKEY_NOT_MADE);
      const outcome = file.change((book) => accept(book, secret, id, made, now));
      if (outcome.kind === 'refused') return refuse(c, 'locked', outcome.text);
      const account = accountOf(outcome.book, id) as Account;
      entrance.signIn(c, id, device);
      log.info({ account: id, role: account.role }, 'an invitation was used, and an account made');
      return c.json({ holder: holderOf(account) });
    }),
  );

  answer(app, ROUTES.ownAccount, (c) =>
    asVisitor(c, async ({ account, session }) => c.json(ownAccount(account, session))),
  );

  answer(app, ROUTES.passkeyChallenge, (c) =>
    atPasskeys(c, (_file, party) =>
      asFresh(c, async ({ account }) => {
        const has = account.passkeys.filter(({ rpId }) => rpId === party.id).map(({ id }) => id);
        const user = { ...holderOf(account), id: account.id };
        return c.json(newPasskey(c, party, 'add', user, has));
      }),
    ),
  );

  answer(app, ROUTES.addPasskey, (c) =>
    atPasskeys(c, (file, party) =>
      asFresh(c, async ({ account, session }) => {
        const body = await read(c, ROUTES.addPasskey.body);
        if (body.kind === 'refused') return refuse(c, body.reason, body.text);
        const now = clock.now();
        const made = await madePasskey(body.value.passkey, party, isExpected(`add ${account.id}`), now);
        if (!made) return refuse(c, 'locked', PASSKEY_NOT_MADE);
        return change(c, file, account.id, session, (book) => addPasskey(book, account.id, made));
      }),
    ),
  );

  answer(app, ROUTES.removePasskey, (c) =>
    asVisitor(c, async ({ account, session }, file) => {
      const body = await read(c, ROUTES.removePasskey.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const { passkey } = body.value;
      return change(c, file, account.id, session, (book) => removePasskey(book, account.id, passkey));
    }),
  );

  answer(app, ROUTES.endSession, (c) =>
    asVisitor(c, async ({ account, session }) => {
      const body = await read(c, ROUTES.endSession.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      if (!sessions.endOf(account.id, body.value.session)) return refuse(c, 'bad-target', NO_SUCH_SESSION);
      return c.json(ownAccount(account, session));
    }),
  );

  answer(app, ROUTES.accounts, (c) =>
    asAdministrator(c, async ({ account }, file) => c.json(all(file.read(), account.id))),
  );

  answer(app, ROUTES.invite, (c) =>
    asFresh(
      c,
      async (_visitor, file) => {
        const body = await read(c, ROUTES.invite.body);
        if (body.kind === 'refused') return refuse(c, body.reason, body.text);
        const secret = newToken();
        const now = clock.now();
        const outcome = file.change((book) => invite(book, body.value, digest(secret), now));
        if (outcome.kind === 'refused') return refuse(c, 'not-now', outcome.text);
        const until = invitationOf(outcome.book, digest(secret), now)?.until ?? now;
        log.info({ role: body.value.role }, 'somebody was invited');
        return c.json({ path: invitationPath(secret), until }, 201);
      },
      asAdministrator,
    ),
  );

  answer(app, ROUTES.withdrawHolder, (c) =>
    asFresh(
      c,
      async ({ account: own }, file) => {
        const body = await read(c, ROUTES.withdrawHolder.body);
        if (body.kind === 'refused') return refuse(c, body.reason, body.text);
        const given = body.value;
        const outcome = file.change((book) => {
          if ('account' in given) return withdraw(book, given.account);
          const one = book.invitations.find((each) => invitationIdOf(each) === given.invitation);
          return one ? withdrawInvitation(book, one.digest) : { kind: 'refused', text: NO_SUCH_ACCOUNT };
        });
        if (outcome.kind === 'refused') return refuse(c, 'bad-target', outcome.text);
        if ('account' in given) sessions.endOf(given.account);
        log.info(given, 'an account or an invitation was withdrawn');
        return c.json(all(outcome.book, own.id));
      },
      asAdministrator,
    ),
  );

  return app;

  /** Good once, whatever comes of it. */
  function isExpected(purpose: string): (challenge: string) => boolean {
    return (challenge) => challenges.take(challenge, purpose, performance.now());
  }

  function newPasskey(
    c: Context<Env>,
    party: RelyingParty,
    purpose: string,
    user: NewPasskey['user'],
    has: string[] = [],
  ): NewPasskey {
    const challenge = challenges.give(`${purpose} ${user.id}`, blockOf(addressOf(c)), performance.now());
    return { challenge, rpId: party.id, user, has };
  }

  type Give<T> = (of: T, file: AccountsFile) => Promise<Response>;

  /** Answers where accounts are needed. */
  async function withAccounts(c: Context<Env>, give: (file: AccountsFile) => Promise<Response>) {
    const { accounts } = entrance;
    return accounts && entrance.kind === 'accounts' ? give(accounts) : refuse(c, 'not-now', NO_ACCOUNTS);
  }

  /** And where a passkey can be made and used: not under an address. */
  function atPasskeys(
    c: Context<Env>,
    give: (file: AccountsFile, party: RelyingParty) => Promise<Response>,
  ): Promise<Response> {
    return withAccounts(c, async (file) => {
      const now = performance.now();
      if (!changesOf.of(addressOf(c), now).take(now)) return refuse(c, 'too-fast', TOO_MANY_CHANGES);
      const party = relyingPartyOf(c.req.header('host'));
      return party ? give(file, party) : refuse(c, 'bad-target', PASSKEY_TROUBLE.address);
    });
  }

  /** Answers who is signed in. */
  function asVisitor(c: Context<Env>, give: Give<Visitor>): Promise<Response> {
    return withAccounts(c, async (file) => {
      const visitor = entrance.visitor(c);
      return visitor ? give(visitor, file) : refuse(c, 'locked', ACCOUNT_NEEDED);
    });
  }

  function asAdministrator(c: Context<Env>, give: Give<Visitor>): Promise<Response> {
    return asVisitor(c, async (visitor, file) => {
      const lack = entrance.lacks(c, 'invite');
      return lack ? refuse(c, lack.reason, lack.text) : give(visitor, file);
    });
  }

  /** Who has signed in lately: a phone that was left lying opens no way for others. */
  function asFresh(c: Context<Env>, give: Give<Visitor>, as = asVisitor): Promise<Response> {
    return as(c, async (visitor, file) =>
      isFresh(visitor.session, performance.now()) ? give(visitor, file) : refuse(c, 'locked', SIGN_IN_AGAIN),
    );
  }

  /** Changes one's own account, and shows it as it is then. */
  function change(
    c: Context<Env>,
    file: AccountsFile,
    id: AccountId,
    session: Session,
    to: (book: AccountBook) => Changed,
  ): Response {
    const outcome = file.change(to);
    if (outcome.kind === 'refused') return refuse(c, 'bad-target', outcome.text);
    return c.json(ownAccount(accountOf(outcome.book, id) as Account, session));
  }

  function ownAccount(account: Account, own: Session): OwnAccount {
    const now = performance.now();
    const wall = (at: number) => Math.round(clock.now() - (now - at));
    return {
      holder: holderOf(account),
      ...(own.of && { sso: true as const }),
      passkeys: account.passkeys.map(({ id, madeAt, usedAt, rpId }) => ({
        id,
        madeAt,
        rpId,
        ...(usedAt !== undefined && { usedAt }),
      })),
      sessions: sessions.of(account.id, now).map(({ id, device, begun, used }) => ({
        id,
        device,
        since: wall(begun),
        seen: wall(used),
        own: id === own.id,
      })),
    };
  }

  function all(book: AccountBook, own: AccountId): Accounts {
    const now = performance.now();
    return {
      accounts: book.accounts.map((account) => {
        const usedAt = lastUse(account);
        return {
          ...holderOf(account),
          id: account.id,
          madeAt: account.madeAt,
          ...(usedAt !== undefined && { usedAt }),
          passkeys: account.passkeys.length,
          sessions: sessions.of(account.id, now).length,
          own: account.id === own,
        };
      }),
      invitations: stillGood(book, clock.now()).map((one) => ({
        ...holderOf(one),
        id: invitationIdOf(one),
        until: one.until,
      })),
    };
  }
}
