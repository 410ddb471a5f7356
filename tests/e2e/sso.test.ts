import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Sso } from '../../server/accounts/sso.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { EMPTY_BOOK } from '../../server/store/account-book.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { Figures } from '../../src/protocol/figures.ts';
import { CLIENT, SECRET, TestProvider } from '../server/provider.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';
import { looksRight, phoneIn } from './screens/looks-right.ts';

const named = (pair: string) => ({ site: 'Harbour Warehouse, Hall 3', log: 'site-one-0001', pair });
const FIGURES: Figures = {
  ...{ sites: 41, pairs: 1_204, behind: 3, damaged: 1 },
  drifting: { pairs: 2, compared: 380, most: [{ ...named('N12'), lost: 3.24 }, named('S4')] },
  ladder: { pairs: 1_100, half: 14 * 60_000, most: 62 * 60_000 },
  findings: [
    { id: 'signal-falling', severity: 'serious', pairs: 2 },
    { id: 'settle-time', severity: 'question', pairs: 117 },
    { id: 'corrections', severity: 'note', pairs: 240 },
  ],
  due: {
    ...{ over: 12, soon: 31, later: 900, none: 261 },
    next: [{ ...named('S7'), due: Date.UTC(2026, 2, 3) }],
  },
};

/** A supervisor whose firm has a provider of OpenID Connect (`oidc-provider`, on this machine). */
describe.skipIf(!CHROMIUM)('the account of the firm', { timeout: 90_000 }, () => {
  let provider: TestProvider;
  let server: RunningServer;
  let browser: Browser;
  let phone: Page;

  beforeAll(async () => {
    provider = await TestProvider.start(() => [`${server.url}/signed-in`]);
    const roles = new Map([['leads', 'supervisor' as const]]);
    server = await startServer({
      store: new MemoryStore(),
      accounts: { read: () => EMPTY_BOOK, change: (to) => to(EMPTY_BOOK) },
      figures: { claim: async () => [], keep: async () => undefined, over: async () => FIGURES },
      sso: new Sso({
        ...{ issuer: new URL(provider.issuer), client: CLIENT, secret: SECRET, name: 'Example ID' },
        ...{ scopes: 'openid profile', claim: 'roles', roles },
      }),
    });
    browser = await launch();
    phone = await phoneIn(browser);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
    provider?.close();
  });

  async function signInThere(page: Page): Promise<void> {
    await press(page, 'Sign in with Example ID');
    await page.locator('input[name=login]').fill('s.example');
    await page.locator('input[name=password]').fill('any');
    await page.locator('button[type=submit]').click();
    // The provider asks once whether it may say who this is.
    await page.locator('button[type=submit]').click();
  }

  it('leads to the provider and back to the page that was left, signed in', async () => {
    await phone.goto(`${server.url}/account`);
    await phone.getByText('Sign in with Example ID').waitFor();
    await looksRight(phone, 'account, with the firm');
    await signInThere(phone);
    await phone.getByText('Your firm gives you this account').waitFor();
    expect(new URL(phone.url()).pathname).toBe('/account');
    await phone.getByText('S. Example').waitFor();
    await looksRight(phone, 'account of the firm');
  });

  it('a supervisor sees all sites in figures', async () => {
    await phone.getByText('All sites in figures').click();
    await phone.getByText('1204 pairs at 41 sites').waitFor();
    await phone.getByText('3.2 dB lost').waitFor();
    await looksRight(phone, 'all sites');
    expect(await phone.locator('.counts dd').allTextContents()).toEqual([
      '12',
      '31',
      '900',
      '261',
      '2',
      '117',
      '240',
    ]);
  });

  it('says so in the words of the reader where nobody is signed in, and leads on', async () => {
    const other = await phoneIn(browser, 'es');
    await other.goto(`${server.url}/signed-in?code=another&state=another`);
    await other.getByText('Sesión no iniciada').waitFor();
    expect(new URL(other.url()).search).toBe('');
    await looksRight(other, 'not signed in');
    await other.getByText('Empezar de nuevo').click();
    await other.getByText('Iniciar sesión con Example ID').waitFor();
    provider.person = { name: 'S. Example', roles: ['others'] };
    await other.getByText('Iniciar sesión con Example ID').click();
    await other.locator('input[name=login]').fill('o.example');
    await other.locator('input[name=password]').fill('any');
    await other.locator('button[type=submit]').click();
    await other.locator('button[type=submit]').click();
    await other.getByText('no le da ningún papel aquí').waitFor();
  });
});
