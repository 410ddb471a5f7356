import type { IncomingMessage } from 'node:http';
import type { TLSSocket } from 'node:tls';
import { type Context, Hono } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { parse } from 'hono/utils/cookie';
import { type AccountId, hasRight, type Right } from '../../src/model/account.ts';
import type { Refusal } from '../../src/model/refusal.ts';
import { PASSPHRASE_NEEDED, WRONG_PASSPHRASE } from '../../src/phrases/access.ts';
import { ACCOUNT_NEEDED, lacksText } from '../../src/phrases/accounts.ts';
import { TOO_MANY_CODES } from '../../src/phrases/limits.ts';
import type { Access, AccessKind, Holder } from '../../src/protocol/accounts.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { Guesses } from '../guard/guesses.ts';
import type { Limits } from '../guard/limits.ts';
import { ABSOLUTE_MS, type Session, type SessionOf, Sessions } from '../guard/sessions.ts';
import { type Account, accountOf, EMPTY_BOOK } from '../store/account-book.ts';
import type { AccountsFile } from '../store/accounts.ts';
import type { PassphraseCheck } from '../store/passphrase.ts';
import { addressOf, type Env, read, refuse } from './http.ts';
import { answer } from './route.ts';

/** Over https the browser holds the name to what it promises: from this server, over https, for the whole site. */
const NAMES = { secure: '__Host-ladderline', plain: 'ladderline' };

/** Who is signed in, and by which session. */
export interface Visitor {
  readonly account: Account;
  readonly session: Session;
}

/** Lets in who may open sites and jobs, as the owner chose it: anybody, who knows the passphrase, or who has an account. */
export class Entrance {
  readonly sessions = new Sessions();
  private readonly guesses: Guesses;

  constructor(
    limits: Limits,
    private readonly passphrase: PassphraseCheck | undefined,
    readonly accounts: AccountsFile | undefined,
    /** Where people of the firm sign in: its name. Then an account is needed. */
    private readonly sso: string | undefined = undefined,
  ) {
    this.guesses = new Guesses(limits, performance.now());
  }

  get kind(): AccessKind {
    if (this.sso !== undefined || this.accounts?.read().required) return 'accounts';
    return this.passphrase?.isSet() ? 'passphrase' : 'open';
  }

  /** Why the caller may not do this; undefined where they may. */
  lacks(c: Context<Env>, right: Right): { reason: Refusal; text: string } | undefined {
    switch (this.kind) {
      case 'open':
        return undefined;
      case 'passphrase':
        return this.hasShownPassphrase(c) ? undefined : { reason: 'locked', text: PASSPHRASE_NEEDED };
      case 'accounts': {
        const visitor = this.visitor(c);
        if (!visitor) return { reason: 'locked', text: ACCOUNT_NEEDED };
        const isAllowed = hasRight(visitor.account.role, right);
        return isAllowed ? undefined : { reason: 'read-only', text: lacksText(right) };
      }
    }
  }

  /** The same, as an answer. */
  refusal(c: Context<Env>, right: Right): Response | undefined {
    const lack = this.lacks(c, right);
    return lack && refuse(c, lack.reason, lack.text);
  }

  /** Who is signed in; nobody where the account was withdrawn meanwhile. That the session was used counts. */
  visitor(c: Context<Env>): Visitor | undefined {
    return this.visitorOf(this.sessions.use(secretIn(c.env.incoming), performance.now()));
  }

  /** The name of who is signed in, where accounts are asked for. A page that looks again by itself keeps no session alive. */
  nameOf(request: Incoming): string | undefined {
    if (this.kind !== 'accounts') return undefined;
    return this.visitorOf(this.sessions.look(secretIn(request), performance.now()))?.account.name;
  }

  private visitorOf(session: Session | undefined): Visitor | undefined {
    if (session?.account === undefined) return undefined;
    if (session.of) return { account: ofFirm(session.account, session.of.holder), session };
    const account = accountOf(this.accounts?.read() ?? EMPTY_BOOK, session.account);
    return account && { account, session };
  }

  /** The caller is signed in from here on, with another secret than before. */
  signIn(c: Context<Env>, account: AccountId, device: string): void {
    this.begin(c, { account, device });
  }

  /** The same, for an account that is not ours. */
  signInFrom(c: Context<Env>, session: Required<SessionOf>): void {
    this.begin(c, session);
  }

  /** `work` says whether what was tried is right. Wrong ones are counted, and stop their own block of addresses first. */
  async tried(c: Context<Env>, work: () => Promise<boolean>): Promise<'right' | 'wrong' | Response> {
    if (!this.guesses.may(addressOf(c), performance.now())) {
      c.header('Retry-After', '60');
      return refuse(c, 'too-fast', TOO_MANY_CODES);
    }
    // Before the slow check, so that many at once are no way round the limit.
    this.guesses.wrong(addressOf(c), performance.now());
    if (!(await work())) return 'wrong';
    this.guesses.forgive(addressOf(c), performance.now());
    return 'right';
  }

  api(): Hono<Env> {
    const app = new Hono<Env>();
    answer(app, ROUTES.access, (c) => {
      const { kind } = this;
      const account = kind === 'accounts' ? this.visitor(c)?.account : undefined;
      const holder = account && { name: account.name, role: account.role };
      const isIn = kind === 'passphrase' ? this.hasShownPassphrase(c) : holder !== undefined;
      const { sso } = this;
      return c.json({ kind, isIn, ...(holder && { holder }), ...(sso && { sso }) } satisfies Access);
    });
    answer(app, ROUTES.enter, async (c) => {
      const { kind, passphrase } = this;
      if (kind === 'accounts') return refuse(c, 'locked', ACCOUNT_NEEDED);
      if (kind === 'open' || !passphrase) return c.json({ ok: true });
      const body = await read(c, ROUTES.enter.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const tried = await this.tried(c, () => passphrase.isRight(body.value.passphrase));
      if (tried === 'wrong') return refuse(c, 'locked', WRONG_PASSPHRASE);
      if (tried !== 'right') return tried;
      this.begin(c, { device: '' });
      return c.json({ ok: true });
    });
    answer(app, ROUTES.leave, async (c) => {
      const body = await read(c, ROUTES.leave.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      const account = body.value.everywhere ? this.visitor(c)?.account : undefined;
      if (account) this.sessions.endOf(account.id);
      for (const name of Object.values(NAMES)) {
        this.sessions.end(getCookie(c, name));
        if (getCookie(c, name) !== undefined) setCookie(c, name, '', { ...cookie(name), maxAge: 0 });
      }
      return c.json({ ok: true });
    });
    return app;
  }

  private hasShownPassphrase(c: Context<Env>): boolean {
    const session = this.sessions.use(secretIn(c.env.incoming), performance.now());
    return session !== undefined && session.account === undefined;
  }

  private begin(c: Context<Env>, of: SessionOf): void {
    const name = isSecure(c) ? NAMES.secure : NAMES.plain;
    const secret = this.sessions.begin(performance.now(), getCookie(c, name), of);
    setCookie(c, name, secret, { ...cookie(name), maxAge: ABSOLUTE_MS / 1000 });
  }
}

/** It ends with its session: nothing of it is kept. */
const ofFirm = (id: AccountId, { name, role }: Holder): Account => ({
  id,
  name,
  role,
  madeAt: 0,
  passkeys: [],
});

const cookie = (name: string) =>
  ({ httpOnly: true, sameSite: 'Strict', path: '/', secure: name === NAMES.secure }) as const;

/** What a browser asks with, also for a websocket. */
export type Incoming = Pick<IncomingMessage, 'headers' | 'socket'>;

/**
 * Whether the browser came over https, to us or to a proxy before us. A browser writes `Origin` itself, on every request
 * that changes something and for each websocket.
 */
const cameSecurely = ({ headers, socket }: Incoming): boolean =>
  (socket as TLSSocket).encrypted === true || headers.origin?.startsWith('https://') === true;

export const isSecure = (c: Context<Env>): boolean => cameSecurely(c.env.incoming);

/** Over https only the cookie counts that can have come over https. */
function secretIn(request: Incoming): string | undefined {
  const cookies = parse(request.headers.cookie ?? '');
  const secure = cookies[NAMES.secure];
  return secure === undefined && !cameSecurely(request) ? cookies[NAMES.plain] : secure;
}
