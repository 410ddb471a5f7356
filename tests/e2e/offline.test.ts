import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CLIENT_FOLDER } from '../../server/process/program.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { Entry } from '../../src/model/entry.ts';
import { NEW_VERSION_WAITS, PAGES_KEPT, PAGES_NOT_KEPT } from '../../src/phrases/offline.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press, typeReading } from './hall.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };
const LOAD_WITHIN_MS = 60_000;

/** Asks the page again and again, also over its reloads. */
async function until(page: Page, ms: number, holds: () => Promise<boolean>): Promise<void> {
  for (const end = Date.now() + ms; Date.now() < end; ) {
    if (await page.evaluate(holds).catch(() => false)) return;
    await page.waitForTimeout(200);
  }
  throw new Error(`not within ${ms} ms: ${holds}`);
}

describe.skipIf(!CHROMIUM)('a phone in a dead spot', () => {
  let store: MemoryStore;
  let server: RunningServer;
  let browser: Browser;
  let phone: BrowserContext;
  let panel: Page;

  beforeEach(async () => {
    store = new MemoryStore();
    server = await startServer({ store });
    browser = await launch();
    phone = await browser.newContext(PHONE);
    panel = await phone.newPage();
  }, 60_000);
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  async function openJob(at: Page): Promise<void> {
    await at.getByText('At the panel').click();
    await at.getByLabel('Site').fill('Quayside Hall 3');
    await at.getByLabel('Beam pair').fill('B3');
    await at.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(at, 'Open the job');
    await press(at, 'Understood');
    await at.locator('.invite-code').waitFor();
  }

  const pagesKept = (at: Page) => at.evaluate(async () => void (await navigator.serviceWorker.ready));

  async function entries(): Promise<Entry[]> {
    const [job] = await store.jobs();
    return store.read(job?.job as string, -1, 1_000);
  }

  /** No network, and no server either: one of the two alone could be answered by the other. */
  async function loseLink(): Promise<number> {
    const { port } = server;
    await server.close();
    await phone.setOffline(true);
    return port;
  }

  async function linkIsBack(port: number): Promise<void> {
    server = await startServer({ store, port });
    await phone.setOffline(false);
  }

  it('shows the job after a reload, keeps what is said, and sends it once when the link is back', async () => {
    await panel.goto(`${server.url}/`);
    await openJob(panel);
    await pagesKept(panel);
    const before = (await entries()).length;
    const port = await loseLink();
    await panel.reload();
    await panel.getByRole('heading', { name: 'Hold. Do not turn' }).waitFor();
    await panel.getByText(/^No link since \d/).waitFor();
    expect(await panel.title()).toContain('B3');
    expect(await panel.locator('.passage-line').count()).toBeGreaterThan(0);

    await typeReading(panel, '142');
    await panel.getByText(/^1 thing that you said or pressed is kept here/).waitFor();
    await panel.reload();
    await panel.getByText(/^1 thing that you said or pressed is kept here/).waitFor();
    expect(await entries()).toHaveLength(before);

    await linkIsBack(port);
    await panel.getByText('Linked', { exact: true }).waitFor({ timeout: 20_000 });
    await panel.locator('.reading-value', { hasText: '142' }).waitFor();
    await panel.reload();
    await panel.getByText('Linked', { exact: true }).waitFor();
    const facts = (await entries()).map(({ fact }) => fact);
    expect(facts.filter((fact) => fact.type === 'said' && fact.text === '142')).toHaveLength(1);
    expect(facts.filter((fact) => fact.type === 'reading')).toHaveLength(1);
    expect(await panel.locator('.strip-pending').count()).toBe(0);
  }, 90_000);

  it('keeps nothing of the log of a job that was left, and names it among the past ones only', async () => {
    await panel.goto(`${server.url}/`);
    await openJob(panel);
    await pagesKept(panel);
    await press(panel, 'Menu');
    await panel.getByText(PAGES_KEPT).waitFor();
    await press(panel, 'Leave this job');
    await press(panel, 'Yes, leave this job');
    await panel.getByText('Two phones, one beam').waitFor();
    await loseLink();
    await panel.reload();
    await panel.getByText('Two phones, one beam').waitFor();
    expect(await panel.getByText('Quayside').count()).toBe(1);
    expect(await panel.locator('.known-job').getByText('Quayside').count()).toBe(1);
    await until(
      panel,
      5_000,
      () =>
        new Promise((resolve) => {
          const opening = indexedDB.open('ladderline');
          opening.onsuccess = () => {
            const counting = opening.result.transaction('entries').objectStore('entries').count();
            counting.onsuccess = () => resolve(counting.result === 0);
          };
        }),
    );
  }, 60_000);

  it('hears by itself, with a model that it fetched while there was a link', async () => {
    await panel.goto(`${server.url}/`);
    await openJob(panel);
    await until(panel, LOAD_WITHIN_MS, async () => {
      for (const name of await caches.keys())
        if (await (await caches.open(name)).match('/whole')) return true;
      return false;
    });
    await loseLink();
    await panel.reload();
    await press(panel, 'Menu');
    await panel.getByText('The speech model is on this phone.').waitFor();
    await press(panel, 'Speech on this phone is off. Turn it on');
    await panel.getByText('Speech on this phone is on').waitFor({ timeout: LOAD_WITHIN_MS });
  }, 180_000);

  it('never takes an old answer of the server for a new one', async () => {
    await panel.goto(`${server.url}/`);
    await pagesKept(panel);
    await panel.reload();
    expect(await panel.evaluate(async () => (await fetch('/api/health')).ok)).toBe(true);
    await loseLink();
    const asked = panel.evaluate(() =>
      fetch('/api/health').then(
        () => 'answered',
        () => 'failed',
      ),
    );
    expect(await asked).toBe('failed');
  });
});

describe.skipIf(!CHROMIUM)('a newer version of the pages', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-newer-'));
  let server: RunningServer;
  let browser: Browser;

  beforeEach(async () => {
    cpSync(CLIENT_FOLDER, folder, { recursive: true });
    server = await startServer({ store: new MemoryStore(), clientFolder: folder });
    browser = await launch();
  }, 60_000);
  afterEach(async () => {
    await browser?.close();
    await server?.close();
    rmSync(folder, { recursive: true });
  });

  it('waits while a job is open on this phone, says so, and is taken at the start page after it', async () => {
    const phone = await browser.newContext(PHONE);
    const page = await phone.newPage();
    await page.goto(`${server.url}/`);
    await page.evaluate(async () => void (await navigator.serviceWorker.ready));
    await page.getByText('At the panel').click();
    await page.getByLabel('Site').fill('Quayside Hall 3');
    await page.getByLabel('Beam pair').fill('B3');
    await press(page, 'Open the job');
    await press(page, 'Understood');

    for (const packed of ['', '.gz', '.br'])
      rmSync(join(folder, `service-worker.js${packed}`), { force: true });
    cpSync(join(CLIENT_FOLDER, 'service-worker.js'), join(folder, 'service-worker.js'));
    appendFileSync(join(folder, 'service-worker.js'), '\n// newer');
    await page.reload();
    await press(page, 'Menu');
    await page.getByText(NEW_VERSION_WAITS).waitFor();

    const other = await phone.newPage();
    await other.goto(`${server.url}/`);
    await other.getByText(NEW_VERSION_WAITS).waitFor();
    await page.close();
    await other.reload();
    await other.getByText('Two phones, one beam').waitFor();
    await until(other, 30_000, async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return Boolean(registration?.active && !registration.waiting);
    });
    await other.getByText(NEW_VERSION_WAITS).waitFor({ state: 'detached' });
  }, 60_000);
});

describe.skipIf(!CHROMIUM)('over plain http in a local network', () => {
  it('the page says, where there is no link, that it would not open again', async () => {
    // A browser trusts a plain page from this device only: any other name is a page from the network.
    const browser = await launch(undefined, ['--host-resolver-rules=MAP hall.test 127.0.0.1']);
    const store = new MemoryStore();
    const server = await startServer({ store, names: ['hall.test'] });
    const page = await browser.newPage(PHONE);
    await page.goto(`http://hall.test:${server.port}/`);
    await page.getByText('At the panel').click();
    await page.getByLabel('Site').fill('Quayside Hall 3');
    await page.getByLabel('Beam pair').fill('B3');
    await press(page, 'Open the job');
    await press(page, 'Understood');
    await page.getByText('Linked', { exact: true }).waitFor();
    await server.close();
    await page.getByText(PAGES_NOT_KEPT).waitFor();
    await browser.close();
  }, 60_000);
});
