import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SCREENS } from '../../client/browser/screens.ts';
import { CLIENT_FOLDER } from '../../server/process/program.ts';
import type { RunningServer } from '../../server/start.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { type FirstScreen, firstScreens } from './first-screens.ts';

/**
 * What a first visit may fetch before the page is of use, without the speech model: pages, scripts, styles and answers of
 * the server, as they come packed over the wire, bytes.
 */
const MOST_BYTES: Readonly<Record<string, number>> = {
  home: 60_000,
  join: 60_000,
  ask: 60_000,
  panel: 60_000,
  emitter: 60_000,
  // Opened again by a phone that has lost what it had: the whole screen of the seat at once.
  'panel, cautions read': 121_000,
  'emitter, cautions read': 121_000,
  // With the record itself.
  watch: 200_000,
  record: 200_000,
};

describe.skipIf(!CHROMIUM)('the first load', () => {
  let server: RunningServer;
  let screens: readonly FirstScreen[];
  let browser: Browser;

  beforeAll(async () => {
    ({ server, screens } = await firstScreens());
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  /** Bytes of all that the page had begun to fetch when what is `useful` came, and each of its files. */
  async function load({ path, kept, useful }: FirstScreen): Promise<{ first: number; files: string[] }> {
    // The worker fetches every page for later, beside this one.
    const context = await browser.newContext({ serviceWorkers: 'block' });
    await context.addInitScript(
      ([entries, selector]) => {
        for (const [key, value] of Object.entries(entries))
          localStorage.setItem(`ladderline.${key}`, JSON.stringify(value));
        // Told as soon as it is in the page: what is fetched after that is fetched for later.
        new MutationObserver((_, observer) => {
          if (!document.querySelector(selector)) return;
          observer.disconnect();
          (globalThis as { usefulAt?: number }).usefulAt = performance.now();
        }).observe(document, { childList: true, subtree: true, attributes: true });
      },
      [kept, useful] as const,
    );
    const page = await context.newPage();
    await page.goto(`${server.url}${path}`);
    await page.waitForFunction(() => 'usefulAt' in globalThis);
    // A file that is still under way has no size yet.
    await page.waitForLoadState('networkidle');
    const fetched = await page.evaluate(() => {
      const { usefulAt } = globalThis as unknown as { usefulAt: number };
      return performance
        .getEntries()
        .filter((entry) => entry instanceof PerformanceResourceTiming)
        .filter(({ startTime }) => startTime <= usefulAt)
        .map(({ name, encodedBodySize }) => [name, encodedBodySize] as const);
    });
    await context.close();
    // What the head asks for ahead is named again when it is used, and comes once.
    const sizes = [...new Map(fetched)];
    return {
      first: sizes.reduce((sum, [, bytes]) => sum + bytes, 0),
      files: sizes.map(([name, bytes]) => `${bytes} ${new URL(name).pathname}`),
    };
  }

  it.each(Object.entries(SCREENS))(
    'of the page of %s asks in its head for its code',
    async (_, { path, file }) => {
      const pages = readFileSync(join(CLIENT_FOLDER, '.vite', 'pages.json'), 'utf8');
      const own: unknown = JSON.parse(pages)[file];
      expect(own).toMatch(/^assets[/].*[.]js$/);
      const head = await (await fetch(`${server.url}${path}`)).text();
      expect(head).toContain(`<link rel="modulepreload" href="/${own}">`);
    },
  );

  it.each(Object.entries(MOST_BYTES))('of the %s page takes at most %d bytes', async (name, most) => {
    const screen = screens.find((one) => one.name === name);
    if (!screen) throw new Error(`no such screen: ${name}`);
    const { first, files } = await load(screen);
    // The page itself, and something that draws it.
    expect(files.length).toBeGreaterThan(2);
    console.log(`${name}: ${first} bytes in ${files.length} files`);
    expect(first, files.join('\n')).toBeLessThan(most);
  });
});
