import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';
import { type Screens, screens } from './screens/states.ts';
import { open } from './screens/walk.ts';

describe.skipIf(!CHROMIUM)('a phone in the field', () => {
  let all: Screens;
  let browser: Browser;

  beforeAll(async () => {
    all = await screens();
    browser = await launch();
  }, 90_000);
  afterAll(async () => {
    await browser?.close();
    await all?.close();
  });

  const at = (name: string, dark = false): Promise<Page> => {
    const state = all.states.find((one) => one.name === name);
    if (!state) throw new Error(`no such screen: ${name}`);
    return open(browser, all.server.url, state, { dark });
  };
  const paper = (page: Page) => page.evaluate(() => getComputedStyle(document.body).backgroundColor);

  it('follows the brightness of the device, until another is chosen, and remembers that one', async () => {
    const page = await at('emitter-menu', true);
    const night = await paper(page);
    await press(page, 'In the sun');
    expect(await paper(page)).toBe('rgb(255, 255, 255)');
    await page.reload();
    await page.locator('.state.good').waitFor();
    expect(await paper(page)).toBe('rgb(255, 255, 255)');
    await press(page, 'Menu');
    await press(page, 'At night');
    await page.emulateMedia({ colorScheme: 'light' });
    expect(await paper(page)).toBe(night);
    await press(page, 'As the phone is set');
    expect(await paper(page)).not.toBe(night);
    await page.context().close();
  }, 60_000);

  it('shows the panel a small chart of where the peak is and how sure, the large one a tap away, and the readings before', async () => {
    const page = await at('panel-chart');
    expect(await page.locator('.peak-words').textContent()).toMatch(/peak: [+−]\d[.]\d\d ± \d[.]\d\d turns$/);
    expect((await page.locator('.small-chart .sure').getAttribute('d')) ?? '').not.toBe('');
    expect(await page.locator('.chart-button').textContent()).toMatch(/^Chart[.] Before: \d+/);
    expect(await page.locator('.sheet figcaption').textContent()).toMatch(/adjuster/);
    await page.context().close();
  }, 60_000);

  it('says that it is watched, while it is', async () => {
    const page = await at('emitter-turn');
    const kept = all.states.find(({ name }) => name === 'emitter-turn')?.kept ?? {};
    const seat = kept['seat.emitter'] as { watch: string };
    expect(await page.getByText(/watching/).count()).toBe(0);
    const desk = await browser.newPage();
    await desk.goto(`${all.server.url}/watch#${seat.watch}`);
    await page.getByText('1 watching').waitFor();
    await desk.close();
    await page.getByText('1 watching').waitFor({ state: 'detached' });
    await page.context().close();
  }, 60_000);
});
