import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

describe.skipIf(!CHROMIUM)('another phone takes over at the emitter', () => {
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;

  beforeAll(async () => {
    server = await startServer({ store: new MemoryStore() });
    browser = await launch();
    panel = await (await browser.newContext(PHONE)).newPage();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  async function join(): Promise<Page> {
    const code = (await panel.locator('.invite-code').textContent()) ?? '';
    const phone = await (await browser.newContext(PHONE)).newPage();
    await phone.goto(`${server.url}/join`);
    await phone.getByLabel('Join code').fill(code);
    await press(phone, 'Join');
    await phone.getByRole('button', { name: 'Understood' }).waitFor();
    return phone;
  }

  const askForCode = async () => {
    await press(panel, 'Menu');
    await panel.locator('.new-phone').getByRole('button', { name: 'At the emitter' }).click();
  };

  it('only when the first has gone, with a code that is not offered any more once it is used', async () => {
    await panel.goto(`${server.url}/panel#new`);
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B2');
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    const first = await join();
    await panel.getByText('Emitter here').waitFor();
    await askForCode();
    const sheet = panel.getByRole('dialog');
    await sheet.getByText('The emitter phone of this job is connected. Close it there first.').waitFor();
    await sheet.getByRole('button', { name: 'Close', exact: true }).click();

    await first.context().close();
    await panel.getByText('Emitter away').first().waitFor();
    await askForCode();
    await panel.getByText('For one phone, once.').waitFor();
    await join();
    await panel.getByRole('heading', { name: 'The emitter phone has joined' }).waitFor();
    expect(await panel.locator('.invite-code').count()).toBe(0);
    expect(await panel.getByText(/Valid for/).count()).toBe(0);
  }, 60_000);
});
