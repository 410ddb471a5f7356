import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { REMARK_NAME, REMARK_SEND, REMARK_TITLE, REMARK_WORDS } from '../../src/phrases/watcher-remark.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press, typeReading } from './hall.ts';
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

  it.each([
    [390, 844],
    [320, 568],
  ])(
    'at %i×%i an early "accept" leads at once to what is missing, and covers nothing',
    async (width, height) => {
      const page = await at('panel-turn');
      await page.setViewportSize({ width, height });
      await typeReading(page, 'accept');
      const missing = page.getByRole('button', { name: 'See what is missing' });
      await missing.waitFor();
      const words = page.locator('.news-said').filter({ hasText: /\S/ });
      const box = async (of: Locator) => {
        const found = await of.first().boundingBox();
        return found ?? expect.fail(`not shown: ${of}`);
      };
      const [button, said, say] = [
        await box(missing),
        await box(words),
        await box(page.locator('.panel-say')),
      ];
      // The button stands before its reason, and neither lies under what is pressed below.
      expect(button.y + button.height).toBeLessThanOrEqual(said.y);
      expect(said.y + said.height).toBeLessThanOrEqual(say.y);
      expect(button.y + button.height).toBeLessThanOrEqual(height);
      await missing.click();
      await page.getByRole('heading', { name: 'Not proven yet' }).waitFor();
      expect(await page.locator('.missing li').count()).toBeGreaterThan(0);
      await page.context().close();
    },
    60_000,
  );

  it.each(['start', 'join', 'join-ask', 'plan'])(
    'keeps the key that ends a form above the keyboard of the phone, and what is typed above the key: %s',
    async (name) => {
      const page = await at(name);
      const ends = page.locator('.foot .main');
      const box = async (of: Locator) => (await of.boundingBox()) ?? expect.fail(`not shown: ${of}`);
      const bottom = async (of: Locator) => {
        const { y, height } = await box(of);
        return y + height;
      };
      for (const [width, height, text] of [
        [390, 844, ''],
        [320, 568, '34px'],
      ] as const) {
        await page.setViewportSize({ width, height });
        await page.evaluate((size) => {
          document.documentElement.style.fontSize = size;
        }, text);
        // Where it already has the focus, nothing is moved.
        await page.locator('form :is(input, select):visible').first().focus();
        await page.locator('form :is(input, select):visible').last().focus();
        const typed = await bottom(page.locator(':focus'));
        expect(typed).toBeLessThanOrEqual((await box(page.locator('.foot'))).y);
        // A browser without a screen opens no keyboard: what it would say of one stands in its place.
        const covered = 240;
        await page.evaluate((seen) => {
          Object.defineProperty(visualViewport, 'height', { value: seen, configurable: true });
          visualViewport?.dispatchEvent(new Event('resize'));
        }, height - covered);
        expect(await bottom(ends)).toBeLessThanOrEqual(height - covered);
        await page.evaluate(() => {
          Reflect.deleteProperty(visualViewport as object, 'height');
          visualViewport?.dispatchEvent(new Event('resize'));
        });
        expect(await bottom(ends)).toBeLessThanOrEqual(height);
      }
      await page.context().close();
    },
    60_000,
  );

  it('says that it is watched, while it is, and shows what the watcher says to the crew', async () => {
    const page = await at('emitter-turn');
    const kept = all.states.find(({ name }) => name === 'emitter-turn')?.kept ?? {};
    const seat = kept['seat.emitter'] as { watch: string };
    expect(await page.getByText(/watching/).count()).toBe(0);
    const desk = await browser.newPage();
    await desk.goto(`${all.server.url}/watch#${seat.watch}`);
    await page.getByText('1 watching').waitFor();
    await desk.getByText(REMARK_TITLE).click();
    await desk.getByLabel(REMARK_NAME).fill('S. Example');
    await desk.getByLabel(REMARK_WORDS).fill('Mind the crane.');
    await press(desk, REMARK_SEND);
    const said = page.locator('.news-said', { hasText: 'Mind the crane.' });
    await said.waitFor();
    expect(await said.textContent()).toContain('S. Example');
    const named = page.getByText('S. Example watching');
    await named.waitFor();
    await desk.close();
    await named.waitFor({ state: 'detached' });
    await page.context().close();
  }, 60_000);
});
