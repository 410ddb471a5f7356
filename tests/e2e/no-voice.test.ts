import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

/** At the panel, the cautions read. */
async function openJob(panel: Page, server: RunningServer): Promise<void> {
  await panel.goto(`${server.url}/`);
  await panel.getByText('At the panel').click();
  await panel.getByLabel('Site').fill('Quayside Hall 3');
  await panel.getByLabel('Beam pair').fill('B4');
  await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
  await press(panel, 'Open the job');
  await press(panel, 'Understood');
}

describe.skipIf(!CHROMIUM)('a phone that lacks something', () => {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  it('without a voice, at a server without one, tells the person to read the screen, and works on', async () => {
    server = await startServer({ store: new MemoryStore() });
    browser = await launch();
    const panel = await browser.newPage({ viewport: { width: 390, height: 844 } });
    await panel.addInitScript('delete globalThis.speechSynthesis; delete Window.prototype.speechSynthesis;');
    const complaints: string[] = [];
    panel.on('pageerror', (error) => complaints.push(error.message));
    await openJob(panel, server);
    await press(panel, 'Menu');
    await press(panel, 'Try the voice');
    const menu = panel.getByRole('dialog');
    await menu.getByText('No voice can be heard on this phone. Read the screen.').waitFor();
    await panel.keyboard.press('Escape');
    await panel.locator('.news').getByText('Read the screen.').waitFor();
    expect(complaints).toEqual([]);
  });

  it('says that the screen will go dark while the phone refuses to keep it on', async () => {
    server = await startServer({ store: new MemoryStore() });
    browser = await launch();
    const panel = await browser.newPage({ viewport: { width: 390, height: 844 } });
    await panel.addInitScript(`
      const lock = { released: false, release: async () => undefined };
      const request = async () => {
        if (!globalThis.charged) throw new DOMException('', 'NotAllowedError');
        return lock;
      };
      Object.defineProperty(navigator, 'wakeLock', { value: { request } });
    `);
    await openJob(panel, server);
    const dark = panel.locator('.news').getByText('The phone lets its screen go dark', { exact: false });
    await dark.waitFor();
    if (process.env.SHOTS) await panel.screenshot({ path: join(process.env.SHOTS, 'screen-sleeps.png') });
    await panel.evaluate('globalThis.charged = true');
    await press(panel, 'Menu');
    await dark.waitFor({ state: 'detached' });
  });
});
