import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { openJob } from '../server/phone.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

describe.skipIf(!CHROMIUM)('a phone without a code', () => {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  it('asks the panel, whose screen shows the same word and number, and comes in after a yes', async () => {
    server = await startServer({ store: new MemoryStore() });
    const { url } = server;
    browser = await launch();
    const { job, token } = await openJob(url);
    const panel = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
    await panel.addInitScript(([key, seat]) => localStorage.setItem(key, seat), [
      'ladderline.seat.panel',
      JSON.stringify({ seat: 'panel', job, token }),
    ] as const);
    const shot = async (page: typeof panel, name: string) => {
      if (process.env.SHOTS)
        await page.screenshot({ path: join(process.env.SHOTS, `${name}.png`), fullPage: true });
    };
    await panel.goto(`${url}/panel`);
    await press(panel, 'Understood');
    const word = (await panel.locator('.invite-word strong').textContent()) ?? '';
    await shot(panel, 'invite');
    const emitter = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
    await emitter.goto(`${url}/join`);
    await emitter.getByText('No code? Ask the panel').click();
    await emitter.getByLabel('Job word').fill('nonsense');
    await press(emitter, 'Ask to come in');
    await emitter.getByText('A job word is a word of the radio').waitFor();
    await shot(emitter, 'ask');

    const asked = async () => {
      await emitter.getByLabel('Job word').fill(word);
      await press(emitter, 'Ask to come in');
      const mark = (await emitter.locator('.call-mark').textContent()) ?? '';
      await panel.locator('.ask-card .call-mark').getByText(mark, { exact: true }).waitFor();
      return mark;
    };
    await asked();
    await shot(emitter, 'asked');
    await shot(panel, 'question');
    await panel.setViewportSize({ width: 1280, height: 800 });
    await shot(panel, 'question-wide');
    await press(panel, 'No');
    await emitter.getByText('The panel said no.').waitFor();
    await panel.locator('.ask-card').waitFor({ state: 'detached' });

    const mark = await asked();
    await press(panel, 'Yes, let it in');
    await press(emitter, 'Understood');
    expect(new URL(emitter.url()).pathname).toBe('/emitter');
    await panel.getByText(`The panel let a phone in that showed ${mark}`).waitFor();
  });
});
