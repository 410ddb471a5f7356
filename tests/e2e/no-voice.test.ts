import type { Browser } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

describe.skipIf(!CHROMIUM)('a phone without a voice, at a server without one', () => {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  it('tells the person to read the screen, and works on', async () => {
    server = await startServer({ store: new MemoryStore() });
    browser = await launch();
    const panel = await browser.newPage({ viewport: { width: 390, height: 844 } });
    await panel.addInitScript('delete globalThis.speechSynthesis; delete Window.prototype.speechSynthesis;');
    const complaints: string[] = [];
    panel.on('pageerror', (error) => complaints.push(error.message));
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B4');
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    await press(panel, 'Menu');
    await press(panel, 'Try the voice');
    const menu = panel.getByRole('dialog');
    await menu.getByText('No voice can be heard on this phone. Read the screen.').waitFor();
    await panel.keyboard.press('Escape');
    await panel.locator('.news').getByText('Read the screen.').waitFor();
    expect(complaints).toEqual([]);
  });
});
