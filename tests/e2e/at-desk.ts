import type { Browser, Page } from 'playwright-core';
import { layDown, type PlayedSite } from '../../server/demo/site-fixture.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { launch } from './chromium.ts';

/** A played site on its own server, and a browser with the board, at the desk. */
export interface AtDesk {
  store: MemoryStore;
  server: RunningServer;
  keys: { desk: string; watch: string };
  browser: Browser;
  desk: Page;
  leave(): Promise<void>;
}

export async function atDesk(played: PlayedSite): Promise<AtDesk> {
  const store = new MemoryStore();
  const keys = await layDown(store, played);
  const server = await startServer({ store });
  const browser = await launch();
  const desk = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await desk.goto(`${server.url}/site#${keys.desk}`);
  const leave = async () => {
    await browser.close();
    await server.close();
  };
  return { store, server, keys, browser, desk, leave };
}
