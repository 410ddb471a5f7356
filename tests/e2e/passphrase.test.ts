import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

const RIGHT = 'three grey herons wade';

describe.skipIf(!CHROMIUM)('a server with a passphrase', () => {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  it('asks for it when a job is opened, and not again on the same phone', async () => {
    const passphrase = { isSet: () => true, isRight: async (given: string) => given === RIGHT };
    server = await startServer({ store: new MemoryStore(), passphrase });
    browser = await launch();
    const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
    await page.goto(`${server.url}/panel#new`);
    await page.getByLabel('Site').fill('Quayside Hall 3');
    await page.getByLabel('Beam pair').fill('B4');
    expect(await page.getByLabel('Passphrase').count()).toBe(0);
    await press(page, 'Open the job');
    await page.getByText('asks for a passphrase before a site or a job is opened').waitFor();
    await page.getByLabel('Passphrase').fill('wrong');
    await press(page, 'Open the job');
    await page.getByText('This is not the passphrase.').waitFor();
    if (process.env.SHOTS)
      await page.screenshot({ path: join(process.env.SHOTS, 'passphrase.png'), fullPage: true });
    await page.getByLabel('Passphrase').fill(RIGHT);
    await press(page, 'Open the job');
    await press(page, 'Understood');
    await page.goto(`${server.url}/site/new`);
    await page.getByLabel('Site').fill('Quayside Hall 3');
    await press(page, 'Open the site');
    await page.getByText('Quayside Hall 3 is open').waitFor();
  });
});
