import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';
import { logOf } from './job-log.ts';
import { looksRight, phoneIn } from './screens/looks-right.ts';

/** The panel sees who has a key, takes the emitter's away and changes the link to watch. */
describe.skipIf(!CHROMIUM)('who has a key', { timeout: 120_000 }, () => {
  const store = new MemoryStore();
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;
  let watcher: Page;

  const row = (name: string) => panel.locator('.key').filter({ hasText: name });

  beforeAll(async () => {
    server = await startServer({ store });
    browser = await launch();
    [panel, emitter, watcher] = [await phoneIn(browser), await phoneIn(browser), await phoneIn(browser)];
    await panel.goto(`${server.url}/panel#new`);
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B2');
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    const code = await panel.locator('.invite-code').textContent();
    await emitter.goto(`${server.url}/join`);
    await emitter.getByLabel('Join code').fill(code ?? '');
    await emitter.getByLabel('Your name').fill('B. Example');
    await press(emitter, 'Join');
    await press(emitter, 'Understood');
    await press(emitter, 'Upright');
    await emitter.getByText('Panel here').waitFor();
    await press(panel, 'Menu');
    const link = await panel.getByLabel('Link to watch').inputValue();
    await watcher.goto(link);
    await watcher.getByText('Quayside Hall 3').first().waitFor();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  it('lists every key, whose it is, and who is connected', async () => {
    await press(panel, 'Who has a key');
    await row('Emitter phone').getByText('B. Example').waitFor();
    await row('Emitter phone').getByText('Connected now').waitFor();
    await row('Panel phone').getByText('This phone').waitFor();
    expect(await row('Panel phone').getByRole('button').count()).toBe(0);
    await row('Link to watch').getByText('Connected now').waitFor();
    await looksRight(panel, 'keys');
  });

  it('asks once more before one is taken away, and can be told to keep it', async () => {
    await row('Emitter phone').getByRole('button', { name: 'Take this key away' }).click();
    await row('Emitter phone').getByText('That phone is told, and loses its seat at once.').waitFor();
    await looksRight(panel, 'keys-sure');
    await press(panel, 'Keep it');
    await row('Emitter phone').getByRole('button', { name: 'Take this key away' }).waitFor();
    expect((await logOf(store)).some(({ fact }) => fact.type === 'key-withdrawn')).toBe(false);
  });

  it('the phone whose key is taken away sees why, and what to do; the list no longer has it', async () => {
    await row('Emitter phone').getByRole('button', { name: 'Take this key away' }).click();
    await press(panel, 'Yes, take this key away');
    await emitter.getByRole('heading', { name: 'This key was taken away' }).waitFor();
    await emitter.getByText('The key of this phone was taken away by the panel or the desk.').waitFor();
    await emitter.getByText('To come back, ask the panel or the desk for a new code.').waitFor();
    await looksRight(emitter, 'key-taken');
    await row('Emitter phone').waitFor({ state: 'detached' });
    expect((await logOf(store)).some(({ fact }) => fact.type === 'key-withdrawn')).toBe(true);
    // Loaded again, it comes no further.
    await emitter.goto(`${server.url}/emitter`);
    await emitter.getByText('was taken away').first().waitFor();
  });

  it('an old link to watch opens nothing once it is changed; the new one is shown and opens', async () => {
    const old = watcher.url();
    await row('Link to watch').getByRole('button', { name: 'Change the link' }).click();
    await press(panel, 'Yes, change this link');
    await watcher.getByText('taken away').first().waitFor();
    await looksRight(watcher, 'link-changed');
    await panel.getByRole('button', { name: 'Close' }).click();
    await press(panel, 'Menu');
    const next = await panel.getByLabel('Link to watch').inputValue();
    expect(next).not.toBe(old);
    const other = await phoneIn(browser);
    await other.goto(next);
    await other.getByText('Quayside Hall 3').first().waitFor();
  });
});
