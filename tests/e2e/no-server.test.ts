import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { findFault, headAfter } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { BRING_IN_MENU, HERE_LOST_TITLE, KEPT_HERE, LEAVES_HERE } from '../../src/phrases/brought.ts';
import { BEGIN_HERE, BRING, ON_PHONE_CONTINUE } from '../../src/phrases/kept-here.ts';
import { NO_ANSWER } from '../../src/phrases/requests.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';
import { logOf } from './job-log.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' };

/** A person alone, with pages that were kept on the phone before: no server answers until the job is done. */
describe.skipIf(!CHROMIUM)('a job without a server at hand', () => {
  let store: MemoryStore;
  let server: RunningServer;
  let browser: Browser;
  let context: BrowserContext;
  let phone: Page;
  let port: number;

  beforeEach(async () => {
    store = new MemoryStore();
    server = await startServer({ store });
    ({ port } = server);
    browser = await launch();
    context = await browser.newContext(PHONE);
    phone = await context.newPage();
    await phone.goto(`${server.url}/`);
    await phone.evaluate(async () => void (await navigator.serviceWorker.ready));
    await server.close();
    await context.setOffline(true);
  }, 60_000);
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  const serverIsBack = async () => {
    server = await startServer({ store, port });
    await context.setOffline(false);
  };
  const shot = (name: string) =>
    process.env.SHOTS
      ? phone.screenshot({ path: join(process.env.SHOTS, `${name}.png`), fullPage: true })
      : undefined;
  const strip = (at: Page) => at.locator('.strip').getByText(KEPT_HERE);

  async function begin(pair: string): Promise<void> {
    await phone.goto(`${server.url}/`);
    await phone.getByText('I am alone').click();
    await phone.getByText('Begin with one phone').click();
    await phone.getByLabel('Site').fill('Quayside Hall 3');
    await phone.getByLabel('Beam pair').fill(pair);
    await phone.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(phone, 'Open the job');
    await phone.getByText(NO_ANSWER).waitFor();
    await shot('no-server-start');
    await press(phone, BEGIN_HERE);
    await press(phone, 'Understood');
    await press(phone, 'Upright');
    await strip(phone).waitFor();
  }

  async function type(text: string): Promise<void> {
    await phone.getByLabel('Type the reading, or anything you would say').fill(text);
    await press(phone, 'Send');
  }

  /** In the menu. */
  async function remark(text: string): Promise<void> {
    await phone.getByLabel('Remark for the record').fill(text);
    await press(phone, 'Keep the remark');
  }

  const remarks = (entries: readonly Entry[]) =>
    entries.flatMap(({ fact }) => (fact.type === 'remark' ? [fact.text] : []));

  it('is kept over a reload, leads on, and is brought to the server whole', async () => {
    await begin('B4');
    await type('142');
    await phone.locator('.reading-value', { hasText: '142' }).waitFor();
    await shot('no-server-seat');
    await phone.reload();
    await strip(phone).waitFor();
    await phone.locator('.reading-value', { hasText: '142' }).waitFor();
    expect(await phone.locator('.strip-pending').count()).toBe(0);

    // No server yet: the job goes on here.
    await press(phone, 'Menu');
    await shot('no-server-menu');
    await press(phone, BRING);
    await phone.getByText(NO_ANSWER).waitFor();
    await remark('The bracket is loose.');

    await serverIsBack();
    await press(phone, 'Menu');
    await press(phone, BRING);
    await phone.getByText('Linked', { exact: true }).waitFor({ timeout: 20_000 });
    const entries = await logOf(store);
    const values = entries.flatMap(({ fact }) =>
      fact.type === 'reading' && fact.reading.kind === 'value' ? [fact.reading.value] : [],
    );
    expect(values).toEqual([142]);
    expect(remarks(entries)).toContain('The bracket is loose.');
    expect(entries.filter(({ fact }) => fact.type === 'brought')).toHaveLength(1);
    expect(findFault(entries, headAfter(entries.at(-1) as Entry))).toBeUndefined();

    // It goes on at the server, and nothing of it is on the first page any more.
    await press(phone, 'Menu');
    await remark('Tightened.');
    await expect.poll(async () => remarks(await logOf(store))).toContain('Tightened.');
    await phone.goto(`${server.url}/`);
    await phone.getByText('Two phones, one beam').waitFor();
    expect(await phone.getByText(KEPT_HERE).count()).toBe(0);
  }, 120_000);

  it('stays on the phone when it is left, beside the next one, and both can be brought from the first page', async () => {
    await begin('B4');
    await press(phone, 'Menu');
    await press(phone, 'Leave this job');
    await phone.getByText(LEAVES_HERE).waitFor();
    await press(phone, 'Yes, leave this job');
    await phone.getByText('Two phones, one beam').waitFor();
    await begin('B5');
    await press(phone, 'Menu');
    await press(phone, 'Leave this job');
    await press(phone, 'Yes, leave this job');
    await phone.locator('.known-job', { hasText: 'B5' }).waitFor();
    await shot('no-server-home');
    await phone
      .locator('.known-job', { hasText: 'B4' })
      .getByRole('button', { name: ON_PHONE_CONTINUE })
      .click();
    await strip(phone).waitFor();

    await serverIsBack();
    await phone.goto(`${server.url}/`);
    for (const pair of ['B5', 'B4'])
      await phone.locator('.known-job', { hasText: pair }).getByRole('button', { name: BRING }).click();
    // A button that is busy has another name: only when the list is gone is all of it with the server.
    await phone.getByText(KEPT_HERE).waitFor({ state: 'detached' });
    expect((await store.jobs()).length).toBe(2);
    expect(await phone.getByText(BRING_IN_MENU).count()).toBe(0);
  }, 120_000);

  it('says so when what it kept is not whole, and counts on nothing', async () => {
    await begin('B4');
    await type('142');
    await phone.locator('.reading-value', { hasText: '142' }).waitFor();
    await phone.evaluate(
      () =>
        new Promise<void>((resolve) => {
          const opening = indexedDB.open('ladderline-here');
          opening.onsuccess = () => {
            const transaction = opening.result.transaction('logs', 'readwrite');
            const logs = transaction.objectStore('logs');
            const keys = logs.getAllKeys();
            keys.onsuccess = () => logs.delete(keys.result[3] as IDBValidKey);
            transaction.oncomplete = () => resolve();
          };
        }),
    );
    await phone.reload();
    await phone.getByRole('heading', { name: HERE_LOST_TITLE }).waitFor();
    await shot('no-server-lost');
  }, 60_000);
});
