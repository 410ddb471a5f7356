import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { digest, newToken } from '../../server/guard/secrets.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { invite, requireAccounts } from '../../server/store/account-book.ts';
import { type AccountsFile, accountsOf } from '../../server/store/accounts.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { unsigned, visitTo } from '../server/played-site.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';
import { looksRight, phoneIn } from './screens/looks-right.ts';
import { addAuthenticator, type VirtualAuthenticator } from './virtual-authenticator.ts';

/** An administrator at a desk, and a supervisor's phone, with the authenticators that Chromium brings for tests. */
describe.skipIf(!CHROMIUM)('accounts with passkeys', { timeout: 120_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-accounts-'));
  const store = new MemoryStore();
  const accounts: AccountsFile = accountsOf(folder);
  const first = newToken();
  const { job } = visitTo('N2');
  let keys: { desk: string };
  let server: RunningServer;
  let browser: Browser;
  let ada: Page;
  let sue: Page;
  let phone: VirtualAuthenticator;
  let link = '';

  const lastSigned = async () =>
    (await store.read(job, -1, 10_000)).findLast(({ fact }) => fact.type === 'signed')?.fact;

  const pageOf = (locale?: string): Promise<Page> => phoneIn(browser, locale);

  beforeAll(async () => {
    keys = await layDown(store, unsigned('N2'));
    const now = Date.now();
    const name = 'Ada First';
    accounts.change((book) => invite(book, { name, role: 'administrator' }, digest(first), now));
    accounts.change((book) => requireAccounts(book, now));
    server = await startServer({ store, accounts });
    browser = await launch();
    ada = await pageOf();
    sue = await pageOf();
    await addAuthenticator(ada);
    phone = await addAuthenticator(sue);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
    rmSync(folder, { recursive: true });
  });

  it('the invited administrator makes a passkey, and is signed in', async () => {
    await ada.goto(`${server.url}/invited#${first}`);
    await ada.getByText('Ada First').waitFor();
    await looksRight(ada, 'invited');
    await press(ada, 'Make the passkey');
    await ada.getByText('Who has an account').waitFor();
    await ada.getByText('Administrator: may open sites and jobs').waitFor();
    // The link is used up, for whoever finds it.
    const other = await pageOf();
    await other.goto(`${server.url}/invited#${first}`);
    await other.getByText('This invitation is no longer good.').waitFor();
    await looksRight(other, 'invitation-used');
    await other.context().close();
  });

  it('invites a supervisor in the page, who makes one on a phone', async () => {
    await ada.getByLabel('Name').fill('Sue Supervisor');
    await ada.getByLabel('Role').selectOption('supervisor');
    await press(ada, 'Make an invitation');
    link = await ada.getByLabel('Link of the invitation').inputValue();
    expect(link).toMatch(/\/invited#[\w-]{22}$/);
    await looksRight(ada, 'administrator');
    await sue.goto(link);
    await sue.getByText('Sue Supervisor').waitFor();
    await press(sue, 'Make the passkey');
    await sue.getByText('Supervisor: may open sites and jobs, and sign records').waitFor();
    expect(await phone.count()).toBe(1);
    await looksRight(sue, 'account');
  });

  it('signs out and in again, without a name, and nobody comes in without a finger', async () => {
    await press(sue, 'Sign out');
    await sue.getByText('Who opens sites and jobs here, or signs, has an account.').waitFor();
    await looksRight(sue, 'signed-out');
    await phone.verifies(false);
    await press(sue, 'Sign in with a passkey');
    await sue.getByText('No passkey was given.').waitFor();
    await phone.verifies(true);
    await press(sue, 'Sign in with a passkey');
    await sue.getByText('Supervisor: may open sites and jobs, and sign records').waitFor();
    await press(sue, 'Sign out');
    await sue.getByText('Who opens sites and jobs here, or signs, has an account.').waitFor();
  });

  it('is asked to sign in when a site is opened, and opens it', async () => {
    await sue.goto(`${server.url}/site/new`);
    await sue.getByLabel('Site').fill('Quayside Hall 3');
    await press(sue, 'Open the site');
    await sue.getByText('asks for an account before a site or a job is opened').waitFor();
    await looksRight(sue, 'open-site-locked');
    await press(sue, 'Sign in with a passkey');
    await sue.getByText('Signed in as').waitFor();
    await press(sue, 'Open the site');
    await sue.getByText('Quayside Hall 3 is open').waitFor();
  });

  it('signs with the name of the account, which the record says', async () => {
    await sue.goto(`${server.url}/site/pair#${keys.desk}/${job}`);
    await sue.getByText('You sign as').waitFor();
    expect(await sue.getByLabel('Name').count()).toBe(0);
    await sue.getByLabel('Role').fill('Commissioning engineer');
    await press(sue, 'Type');
    await sue.getByLabel('Signature, typed').fill('Sue Supervisor');
    await press(sue, 'Sign the record');
    await sue.getByText('The name is that of an account of this server, shown with a passkey.').waitFor();
    expect(await lastSigned()).toMatchObject({ type: 'signed', name: 'Sue Supervisor', account: true });
  });

  it('a client without an account signs beside', async () => {
    await press(sue, 'Add a second signature');
    await press(sue, 'Without one');
    await sue.getByLabel('Name').fill('W. Witness');
    await sue.getByLabel('Role').fill('Client');
    await press(sue, 'Type');
    await sue.getByLabel('Signature, typed').fill('W. Witness');
    await press(sue, 'Sign the record');
    await sue.getByText('Stands beside the first signature.').waitFor();
    const fact = await lastSigned();
    expect(fact).toMatchObject({ name: 'W. Witness' });
    expect(fact).not.toHaveProperty('account');
  });

  it('the administrator sees who read what, of all records and of one', async () => {
    await ada.goto(`${server.url}/account`);
    await ada.getByRole('link', { name: 'Who read what' }).click();
    const line = ada
      .locator('.read-lines > li', { hasText: 'Sue Supervisor' })
      .filter({ hasText: 'North aisle 2' });
    await line.first().waitFor();
    await looksRight(ada, 'who-read');
    await line.first().getByText('Only this record').click();
    await ada.getByText('Show all records').waitFor();
    expect(new URL(ada.url()).hash).toBe(`#${job}`);
    await ada.getByText('Loading').waitFor({ state: 'detached' });
    expect(await ada.getByText('Only this record').count()).toBe(0);
    const texts = await ada.locator('.read-lines > li').allTextContents();
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(text).toContain('North aisle 2');
    await looksRight(ada, 'who-read-one');
    // Nobody else: the page says why, and lets them sign in.
    const other = await pageOf('de-DE');
    await other.goto(`${server.url}/who-read`);
    await other.getByText('Mit einem Passkey anmelden').waitFor();
    await looksRight(other, 'who-read-locked-de');
    await other.context().close();
    await ada.goto(`${server.url}/account`);
  });

  it('is withdrawn by the administrator: signed out at once, and the passkey opens nothing', async () => {
    await ada.reload();
    await ada.getByRole('button', { name: 'Withdraw this account' }).click();
    await press(ada, 'Yes, withdraw the account of Sue Supervisor');
    await ada.getByText('Sue Supervisor', { exact: true }).waitFor({ state: 'detached' });
    await sue.goto(`${server.url}/account`);
    await press(sue, 'Sign in with a passkey');
    await sue.getByText('This passkey opens nothing here. Its account was withdrawn').waitFor();
    await looksRight(sue, 'withdrawn');
  });

  it('under an address of digits the page says what to do', async () => {
    const page = await pageOf();
    await page.goto(`${server.url.replace('localhost', '127.0.0.1')}/account`);
    await page.getByText('A passkey belongs to a name, and you opened this page under an address').waitFor();
    expect(await page.getByRole('button', { name: 'Sign in with a passkey' }).count()).toBe(0);
    await looksRight(page, 'address');
    await page.context().close();
  });

  it('speaks the language of the phone', async () => {
    const page = await pageOf('de-DE');
    await page.goto(`${server.url}/account`);
    await page.getByText('Mit einem Passkey anmelden').waitFor();
    await looksRight(page, 'signed-out-de');
    await page.context().close();
  });
});
