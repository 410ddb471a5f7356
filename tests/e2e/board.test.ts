import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { Desk } from '../server/desk.ts';
import { CHROMIUM, launch } from './chromium.ts';

const PAIRS = 130;

describe.skipIf(!CHROMIUM)('the board of a large site', () => {
  let server: RunningServer;
  let browser: Browser;
  let board: Page;

  beforeAll(async () => {
    server = await startServer({ store: new MemoryStore() });
    const { desk, watch } = await Desk.open(server.url);
    const pairs = Array.from({ length: PAIRS }, (_, i) => ({ id: `P${i + 1}`, name: `Aisle ${i + 1}` }));
    expect((await desk.post('/api/site/pairs', { pairs })).status).toBe(200);
    browser = await launch();
    board = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await board.goto(`${server.url}/site#${watch}`);
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const rows = (many: number) =>
    board.waitForFunction((n) => document.querySelectorAll('.pair-row').length === n, many);

  it('is drawn to its last row, without scrolling', async () => {
    await rows(PAIRS);
    await board.getByRole('link', { name: /^P130/ }).waitFor();
  });

  it('finds a pair below the first screen, and then shows all again', async () => {
    const search = board.getByLabel('Search pairs');
    await search.fill('aisle 117');
    await rows(1);
    await search.fill('');
    await rows(PAIRS);
  });
});
