import { expect } from 'vitest';
import { digest, newToken } from '../../server/guard/secrets.ts';
import { invite, requireAccounts } from '../../server/store/account-book.ts';
import { type AccountsFile, accountsOf } from '../../server/store/accounts.ts';
import type { AccountRole } from '../../src/model/account.ts';
import { Access, NewPasskey, SignInChallenge } from '../../src/protocol/accounts.ts';
import { Authenticator, type Otherwise } from './authenticator.ts';
import { SETUP } from './phone.ts';

/** A browser: keeps its cookie, sends the origin of its page. */
export class Browser {
  cookie = '';
  readonly device: Authenticator;

  constructor(
    readonly url: string,
    readonly origin = url,
  ) {
    this.device = new Authenticator(origin);
  }

  async send(path: string, body?: unknown, more: Record<string, string> = {}): Promise<Response> {
    const answer = await fetch(this.url + path, {
      ...(body !== undefined && { method: 'POST', body: JSON.stringify(body) }),
      headers: { cookie: this.cookie, ...more },
    });
    for (const line of answer.headers.getSetCookie()) {
      const [pair = ''] = line.split(';');
      this.cookie = line.includes('Max-Age=0') ? '' : pair;
    }
    return answer;
  }

  async asked(path: string, body: unknown = {}): Promise<NewPasskey> {
    return NewPasskey.parse(await (await this.send(path, body)).json());
  }

  /** Makes the passkey of an invitation. */
  async accept(invitation: string, other?: Otherwise): Promise<Response> {
    const asked = await this.asked('/api/account/invited', { invitation });
    const passkey = this.device.make(asked, other);
    return this.send('/api/account/accept', { invitation, account: asked.user.id, passkey });
  }

  async challenge(): Promise<{ challenge: string; rpId: string }> {
    return SignInChallenge.parse(await (await this.send('/api/account/challenge', {})).json());
  }

  async signIn(other?: Otherwise): Promise<Response> {
    return this.send('/api/account/sign-in', this.device.show(await this.challenge(), other));
  }

  openJob = () => this.send('/api/jobs', { setup: SETUP });
  openSite = () => this.send('/api/sites', { site: 'Hollin Bridge' });
  access = async () => Access.parse(await (await this.send('/api/access')).json());
}

/** In a folder: accounts are needed, and somebody has one. */
export function neededAccounts(folder: string): AccountsFile {
  const accounts = accountsOf(folder);
  const somebody = {
    ...{ id: newToken(), name: 'Ada First', role: 'administrator' as const, madeAt: 1 },
    passkeys: [{ id: 'p'.repeat(22), publicKey: 'AA', counter: 0, rpId: 'ladder.example', madeAt: 1 }],
  };
  accounts.change((book) => requireAccounts({ ...book, accounts: [somebody] }, Date.now()));
  return accounts;
}

export const invited = (
  accounts: AccountsFile,
  name: string,
  role: AccountRole,
  now = Date.now(),
): string => {
  const secret = newToken();
  accounts.change((book) => invite(book, { name, role }, digest(secret), now));
  return secret;
};

/** Somebody with an account, signed in. */
export async function holder(
  { url, accounts }: { url: string; accounts: AccountsFile },
  name: string,
  role: AccountRole,
): Promise<Browser> {
  const browser = new Browser(url);
  expect((await browser.accept(invited(accounts, name, role))).status).toBe(200);
  return browser;
}
