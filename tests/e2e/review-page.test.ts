import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { digest, newToken } from '../../server/guard/secrets.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { fromJsonLines } from '../../src/log/json-lines.ts';
import { toCsv } from '../../src/record/csv-file.ts';
import { accepted, overridden, type Script } from '../record/fixture.ts';
import { openJob, Phone } from '../server/phone.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { printWhenDrawn } from './printed.ts';

const DESK = { width: 1280, height: 800 };
const PHONE = { width: 390, height: 844 };

/** A worker that cannot work out what came since, until `heals` is there. */
const WORKER_THAT_FAILS = `
  const Real = Worker;
  window.Worker = class extends Real {
    postMessage(asked) {
      if (asked.do !== 'grow' || 'heals' in window) super.postMessage(asked);
      else {
        const data = { id: asked.id, failed: 'planted' };
        setTimeout(() => this.dispatchEvent(new MessageEvent('message', { data })));
      }
    }
  };
`;

/** The built page, served by the real server from a store that holds the fixture's logs. */
describe.skipIf(!CHROMIUM)('the review page', () => {
  const store = new MemoryStore();
  let server: RunningServer;
  let browser: Browser;

  beforeAll(async () => {
    server = await startServer({ store });
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  async function open({ entries, head }: Script, viewport = DESK): Promise<Page> {
    const token = newToken();
    await store.append(head.job, entries, { issue: [{ token: digest(token), role: 'watcher' }] });
    return visit(token, viewport);
  }

  async function visit(token: string, viewport = DESK): Promise<Page> {
    const page = await browser.newPage({ viewport, acceptDownloads: true });
    await page.goto(`${server.url}/watch#${token}`);
    return page;
  }

  test('says first the status of the pair, and that the log is whole', async () => {
    const page = await open(accepted('reviewed-1'));
    await page.getByText('Accepted on evidence at').waitFor();
    await page.getByText('142 counts').waitFor();
    await page.getByRole('heading', { name: 'Log whole' }).waitFor();
    await page.close();
  });

  test('shows an override with its reason, and that the beam was touched after it', async () => {
    const page = await open(overridden('reviewed-2'), PHONE);
    await page.getByText('Accepted by override at').waitFor();
    await page.getByText('Ladder has to clear the aisle at nine').first().waitFor();
    await page.getByText('Changed since.').waitFor();
    await page.close();
  });

  test('lacks no line and no chart on paper, although it is printed while it is still being drawn', async () => {
    const { entries, head } = accepted('reviewed-at-once');
    const token = newToken();
    await store.append(head.job, entries, { issue: [{ token: digest(token), role: 'watcher' }] });
    const page = await browser.newPage({ viewport: DESK });
    const printed = await printWhenDrawn(page, '.verdict', '.log-line, .chart svg');
    await page.goto(`${server.url}/watch#${token}`);
    const { drawn, onPaper } = await printed();
    await page.locator('.chart svg').nth(2).waitFor();
    await expect.poll(() => page.locator('.log-line, .chart svg').count()).toBe(onPaper);
    expect(drawn).toBeLessThan(onPaper);
    await page.close();
  });

  test('is not calm where what came since could not be worked out, and catches up with what comes next', async () => {
    const { token, watch } = await openJob(server.url);
    const panel = await Phone.at(server.url, token);
    const page = await browser.newPage({ viewport: DESK });
    await page.addInitScript(WORKER_THAT_FAILS);
    await page.goto(`${server.url}/watch#${watch}`);
    await page.getByRole('heading', { name: 'Log whole' }).waitFor();
    const first = await panel.ack(panel.remark('first'));
    await page.getByText('planted').waitFor();
    await page.evaluate(() => Object.assign(window, { heals: true }));
    const second = await panel.ack(panel.remark('second'));
    for (const seq of [first, second]) await page.locator(`#entry-${seq}`).waitFor();
    expect(await page.getByText('planted').count()).toBe(0);
    panel.socket.close();
    await page.close();
  });

  test('has nothing to press that is lower or narrower than 44 px', async () => {
    const page = await open(accepted('reviewed-touch'), PHONE);
    await page.getByText('Accepted on evidence at').waitFor();
    const small = await page.locator('button, a, select, input').evaluateAll((all) =>
      all
        .map((it) => ({ text: it.textContent || it.className, box: it.getBoundingClientRect() }))
        .filter(({ box }) => box.height > 0 && (box.height < 44 || box.width < 44))
        .map(({ text, box }) => `${text}: ${box.width} by ${box.height}`),
    );
    expect(small).toEqual([]);
    await page.close();
  });

  test('names the first broken entry of a changed log before anything else', async () => {
    const script = accepted('reviewed-3');
    const at = script.entries.findIndex(({ fact }) => fact.type === 'reading');
    const page = await browser.newPage({ viewport: PHONE });
    const entries = script.entries.map((entry, index) =>
      index === at ? { ...entry, at: entry.at + 1 } : entry,
    );
    await page.route('**/api/record', (route) => route.fulfill({ json: { head: script.head, entries } }));
    await page.goto(`${server.url}/watch#${newToken()}`);
    const headings = page.getByRole('heading', { level: 2 });
    await headings.first().waitFor();
    expect(await headings.first().textContent()).toBe(`Log broken at entry ${at}`);
    await page.getByRole('heading', { name: /^Log broken, nothing here is certain/ }).waitFor();
    await page.close();
  });

  test('shows at once what the crew says, and stays whole', async () => {
    const { token, watch } = await openJob(server.url);
    const page = await visit(watch);
    await page.getByRole('heading', { name: /^Aligning/ }).waitFor();
    const panel = await Phone.at(server.url, token);
    const seq = await panel.ack(panel.say('note, bracket is loose'));
    await page.locator(`#entry-${seq}`).waitFor();
    await page.getByRole('heading', { name: 'Log whole' }).waitFor();
    panel.socket.close();
    await page.close();
  });

  test('saves files that hold the whole log', async () => {
    const script = accepted('reviewed-4');
    const page = await open(script);
    await page.getByText('lost its link').last().waitFor();
    const save = async (name: string): Promise<string> => {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name }).click();
      return readFile(await (await download).path(), 'utf8');
    };
    const lines = await save('Save as JSON Lines');
    const csv = await save('Save as CSV');
    // By now the server has noted that the crew's phones are not there.
    const { job } = script.head;
    const entries = await store.read(job, -1, 1000);
    const head = await store.head(job);
    expect(entries.slice(0, script.entries.length)).toEqual(script.entries);
    // With what the server signed of it.
    expect(fromJsonLines(lines)).toMatchObject({
      ok: true,
      entries,
      head,
      proof: { signed: [{ count: head.count, hash: head.hash }] },
    });
    expect(csv).toBe(toCsv(entries, head));
    await page.close();
  });

  test('leads from an instruction to the entries it is based on', async () => {
    const page = await open(accepted('reviewed-5'));
    const instruction = page.getByRole('listitem').filter({ hasText: 'The reading fell from 96 to 81' });
    await instruction.getByRole('button', { name: 'Why' }).click();
    const link = instruction.locator('.reasons').getByRole('button');
    const seq = (await link.textContent())?.slice(1);
    await link.click();
    await page.locator(`#entry-${seq}:focus`).waitFor();
    expect(await page.locator(':focus').textContent()).toContain('81');
    await page.close();
  });

  test('replays: at an earlier moment the exchange and the charts end there', async () => {
    const script = accepted('reviewed-6');
    const page = await open(script);
    const moment = page.getByRole('slider', { name: 'Moment' });
    await moment.fill('20');
    await page.getByText('Shown up to entry 19').waitFor();
    const shown = script.entries.slice(0, 20).filter(({ fact }) => fact.type === 'reading').length;
    const drawn = page.getByLabel('readings against time').getByRole('button');
    expect(await drawn.count()).toBe(shown);
    expect(await page.locator('#entry-21').count()).toBe(0);
    await page.getByRole('button', { name: 'Show all' }).click();
    await page.locator('#entry-21').waitFor();
    await page.close();
  });

  test('on a phone nothing is beyond the edge, and the charts are one tap away', async () => {
    const page = await open(accepted('reviewed-7'), PHONE);
    await page.getByRole('button', { name: 'Charts' }).click();
    await page.getByRole('heading', { name: 'Vertical adjuster' }).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.width);
    await page.close();
  });

  test('is English throughout, also on a phone that is Spanish', async () => {
    const { entries, head } = accepted('reviewed-in-spanish');
    const token = newToken();
    await store.append(head.job, entries, { issue: [{ token: digest(token), role: 'watcher' }] });
    const textIn = async (locale: string) => {
      const page = await browser.newPage({ viewport: DESK, locale });
      await page.goto(`${server.url}/watch#${token}`);
      await page.locator('.chart svg').nth(2).waitFor();
      const text = await page.locator('main').textContent();
      const lang = () => page.evaluate(() => document.documentElement.lang);
      const here = await lang();
      // Its other pages are in its own language.
      await page.goto(`${server.url}/`);
      await page.locator('.way').first().waitFor();
      const found = { text, here, home: await lang() };
      await page.close();
      return found;
    };
    const english = await textIn('en-GB');
    const spanish = await textIn('es-ES');
    expect(spanish.text).toBe(english.text);
    expect([english.here, english.home, spanish.here, spanish.home]).toEqual([
      'en-GB',
      'en-GB',
      'en-GB',
      'es',
    ]);
  });

  test('a token that opens nothing gives a clear message', async () => {
    const page = await visit(newToken());
    await page.getByRole('heading', { name: 'The log could not be read' }).waitFor();
    await page.close();
  });

  test('a job without entries says that there is nothing yet', async () => {
    const page = await browser.newPage();
    const head = { job: 'reviewed-8', count: 0, hash: '0'.repeat(64) };
    await page.route('**/api/record', (route) => route.fulfill({ json: { head, entries: [] } }));
    await page.goto(`${server.url}/watch#${newToken()}`);
    await page.getByRole('heading', { name: 'This log is still empty' }).waitFor();
    await page.close();
  });
});
