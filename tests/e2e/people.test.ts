import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

/** Two phones, of which one gives a name and the other goes on without. */
describe.skipIf(!CHROMIUM)('who did it', () => {
  const store = new MemoryStore();
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;

  beforeAll(async () => {
    server = await startServer({ store });
    browser = await launch();
    const viewport = { width: 390, height: 844 };
    panel = await browser.newPage({ viewport });
    emitter = await browser.newPage({ viewport });
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  it('is asked once on each phone, and nobody has to answer', async () => {
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B2');
    await panel.getByLabel('Your name').fill('A. Example');
    await panel.getByLabel('Firm').fill('Larkmoor Fire Systems');
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    const code = await panel.locator('.invite-code').textContent();

    await emitter.goto(`${server.url}/join`);
    await emitter.getByLabel('Join code').fill(code ?? '');
    await press(emitter, 'Join');
    await press(emitter, 'Understood');
    await press(emitter, 'Upright');
    await emitter.getByText('Panel here').waitFor();

    await panel.goto(`${server.url}/join`);
    await panel.getByText('You are A. Example (Larkmoor Fire Systems)').waitFor();
    await panel.goBack();
  });

  it('stands on the report, and so does that somebody was not named, until they are', async () => {
    await press(emitter, 'Menu');
    await emitter.getByText('not named').waitFor();
    await press(emitter, 'Give a name');
    await emitter.getByLabel('Your name').fill('B. Example');
    await press(emitter, 'Keep for the record');
    await press(panel, 'Menu');
    const watch = await panel.getByLabel('Link to watch').inputValue();
    const desk = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await desk.goto(watch.replace('/watch', '/report'));
    const crew = desk.getByText(
      /panel: A\. Example \(Larkmoor Fire Systems\).*emitter: not named.*emitter: B\. Example/,
    );
    await crew.waitFor();
    expect(await desk.getByText('Not named: who was at the emitter.').count()).toBe(1);
  });
});
