import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { digest, newToken } from '../../server/guard/secrets.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { checked } from '../../src/log/chain.ts';
import { jobReport } from '../../src/report/build.ts';
import { accepted } from '../record/fixture.ts';
import { demo, demoReport } from '../report/demo.ts';
import { bare, partTexts, pdfText, sizesIn } from '../report/pdf-text.ts';
import { wordsOf } from '../report/words.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { printWhenDrawn } from './printed.ts';

const ZONE = 'Europe/Paris';

/** The built page, served by the real server. */
describe.skipIf(!CHROMIUM)('the printable report', { timeout: 120_000 }, () => {
  const store = new MemoryStore();
  let server: RunningServer;
  let browser: Browser;
  let site: { desk: string; watch: string };

  beforeAll(async () => {
    site = await layDown(store, demo);
    server = await startServer({ store });
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  async function open(address: string): Promise<Page> {
    const page = await browser.newPage({ timezoneId: ZONE, acceptDownloads: true });
    await page.goto(`${server.url}${address}`);
    await page.getByRole('article').first().waitFor();
    return page;
  }

  const textsOf = async (page: Page): Promise<string[]> => {
    const texts = await page
      .getByRole('article')
      .evaluateAll((all) => all.map((each) => each.textContent ?? ''));
    return texts.map(bare);
  };

  test('of a site shows every word of the model, on a cover and in a part for each pair', async () => {
    const page = await open(`/report#${site.watch}`);
    const shown = await textsOf(page);
    const model = demoReport(ZONE).parts();
    expect(shown).toHaveLength(model.length);
    for (const [index, each] of model.entries()) {
      // The time when it was made is not known before.
      for (const words of wordsOf(each).filter((text) => !text.startsWith('6 March'))) {
        expect(shown[index]).toContain(bare(words));
      }
    }
    await page.close();
  });

  test('prints each part on sheets of its own, with their numbers, and nothing under 8 points', async () => {
    const page = await open(`/report#${site.watch}`);
    const file = await page.pdf({ preferCSSPageSize: true });
    const printed = await pdfText(file);
    const titles = demoReport(ZONE)
      .parts()
      .map(({ title }) => bare(title));
    // The number is in the margin, and may come first.
    const begun = titles.map((title) =>
      printed.findIndex((text) => text.replace(/^Page\d+of\d+/, '').startsWith(title)),
    );
    expect(begun).toEqual([...new Set(begun)].toSorted((a, b) => a - b));
    expect(begun[0]).toBe(0);
    expect(printed.map((text, at) => text.includes(`Page${at + 1}of${printed.length}`))).not.toContain(false);
    expect(Math.min(...(await sizesIn(file)))).toBeGreaterThanOrEqual(8 - 0.01);
    await page.close();
  });

  test('lacks no block on paper, although it is printed while it is still being drawn', async () => {
    const page = await browser.newPage({ timezoneId: ZONE });
    const printed = await printWhenDrawn(page, 'article', 'article > *');
    await page.goto(`${server.url}/report#${site.watch}`);
    const { drawn, onPaper } = await printed();
    const whole = demoReport(ZONE)
      .parts()
      .reduce((sum, { blocks }) => sum + blocks.length, 0);
    expect(onPaper).toBeGreaterThan(whole);
    await expect.poll(() => page.locator('article > *').count()).toBe(onPaper);
    expect(drawn).toBeLessThan(onPaper);
    await page.close();
  });

  test('of one pair has the same words when it is saved as a PDF', async () => {
    const [visit] = demo.visits;
    const page = await open(`/report#${site.desk}/${visit?.job}`);
    const shown = await textsOf(page);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'PDF' }).click();
    const chunks: Buffer[] = [];
    for await (const chunk of await (await download).createReadStream()) chunks.push(chunk as Buffer);
    const saved = await partTexts(Buffer.concat(chunks));
    expect(saved).toHaveLength(shown.length);
    const model = demoReport(ZONE).parts()[1];
    for (const words of model ? wordsOf(model).slice(0, -1) : []) {
      expect(saved[1]).toContain(bare(words));
      expect(shown[1]).toContain(bare(words));
    }
    await page.close();
  });

  test('of a single job is one part, with a link from its record', async () => {
    const { entries, head } = accepted('reported-1');
    const token = newToken();
    await store.append(head.job, entries, { issue: [{ token: digest(token), role: 'watcher' }] });
    const page = await browser.newPage({ timezoneId: ZONE });
    await page.goto(`${server.url}/watch#${token}`);
    await page.getByRole('link', { name: 'Report' }).click();
    await page.getByRole('article').waitFor();
    const [shown, ...more] = await textsOf(page);
    expect(more).toEqual([]);
    const stored = await store.read(head.job, -1, 1000);
    const { fingerprint: key } = (await (await fetch(`${server.url}/api/key`)).json()) as {
      fingerprint: string;
    };
    const log = checked({ entries: stored, head: await store.head(head.job) });
    const [model] = jobReport({ ...log, key }, ZONE);
    for (const words of model ? wordsOf(model) : []) expect(shown).toContain(bare(words));
    await page.close();
  });

  test('says so when a link opens nothing', async () => {
    const page = await browser.newPage();
    await page.goto(`${server.url}/report#${newToken()}`);
    await page.getByRole('heading', { name: 'The report could not be read' }).waitFor();
    await page.close();
  });
});
