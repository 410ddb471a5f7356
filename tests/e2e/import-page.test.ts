import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { NEUTRAL_METERS } from '../../src/model/profile.ts';
import { Desk } from '../server/desk.ts';
import { CHROMIUM, launch } from './chromium.ts';

const METER = { ...NEUTRAL_METERS[1], name: 'Own counts', bandLow: 90 };
const B2 = { id: 'B2', name: 'North aisle', zone: '7', pathLength: 62, meter: METER };

describe.skipIf(!CHROMIUM)('a table of pairs in the browser', () => {
  let server: RunningServer;
  let browser: Browser;
  let page: Page;
  let desk: Desk;

  beforeAll(async () => {
    server = await startServer({ store: new MemoryStore() });
    desk = (await Desk.open(server.url)).desk;
    expect((await desk.post('/api/site/pairs', { pairs: [B2] })).status).toBe(200);
    browser = await launch();
    page = await browser.newPage({ viewport: { width: 390, height: 844 } });
    await page.goto(`${server.url}/site/import#${desk.token}`);
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const choose = (name: string, buffer: Buffer) =>
    page.getByLabel('Choose the file').setInputFiles({ name, mimeType: 'text/csv', buffer });
  const preview = () => page.locator('.preview').textContent();

  it('of a file in Windows-1252 says so, shows its letters, and each field old → new', async () => {
    await choose(
      'pairs.csv',
      Buffer.from('id;name;zone\r\nB2;Halle S\xfcd \x96 T\xfcr;\r\nB3;Caf\xe9;4\r\n', 'latin1'),
    );
    await page.getByText('The file was read as Windows-1252').waitFor();
    await page.getByText('Halle Süd – Tür; Café').waitFor();
    expect(await preview()).toContain('North aisle → Halle Süd – Tür');
    expect(await preview()).not.toContain('7 → nothing');
    await page.getByLabel('Take away what the plan has there').check();
    await page.getByText('7 → nothing').waitFor();
    await page.getByLabel('Take away what the plan has there').uncheck();
    await page.getByRole('button', { name: 'Import 2 pairs' }).click();
    await page.waitForURL(/\/site#/);
    const { pairs } = await desk.board();
    expect(pairs.map(({ plan }) => plan)).toEqual([
      { ...B2, name: 'Halle Süd – Tür' },
      { id: 'B3', name: 'Café', zone: '4' },
    ]);
  });

  it('what it gives out as a workbook, it takes back without any change, on a device that knows no such meter', async () => {
    await page.goto(`${server.url}/site/import#${desk.token}`);
    const downloaded = page.waitForEvent('download');
    await page.getByRole('button', { name: 'The pairs as they are now (XLSX)' }).click();
    const file = await downloaded;
    await page.getByLabel('Choose the file').setInputFiles(await file.path());
    await page.getByText('2 unchanged').waitFor();
    expect(await preview()).toContain('Nothing new');
  });
});
