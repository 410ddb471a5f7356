import { request } from 'node:http';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { SCREENS } from '../../client/browser/screens.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';

/** What a first visit may fetch before the page can be used, without the speech model. Bytes on the wire, packed. */
const MOST_BYTES = 60_000;

let server: RunningServer;
beforeAll(async () => {
  server = await startServer({ store: new MemoryStore() });
});
afterAll(() => server.close());

/** The body as it is sent to a browser of today, and its length. */
function fetched(path: string): Promise<{ text: string; bytes: number }> {
  return new Promise((resolve, reject) => {
    const headers = { 'accept-encoding': 'gzip, deflate, br' };
    request(`${server.url}${path}`, { headers }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () => {
        const body = Buffer.concat(parts);
        resolve({ text: body.toString('utf8'), bytes: body.length });
      });
    })
      .on('error', reject)
      .end();
  });
}

/** The page itself, and every file that its head asks for. */
async function firstLoad(path: string): Promise<number> {
  const page = await fetched(path);
  const named = [...page.text.matchAll(/(?:href|src)="(\/[^"]+)"/g)].map(([, file = '']) => file);
  const files = new Set(named.filter((file) => /[.](?:js|css)$/.test(file)));
  expect(files.size).toBeGreaterThan(1);
  const sizes = await Promise.all([...files].map(async (file) => (await fetched(file)).bytes));
  return sizes.reduce((sum, bytes) => sum + bytes, page.bytes);
}

// A person who comes to the app meets one of these two: the start page, or the join page of a scanned code.
it.each(['home', 'join'] as const)('the first load of the %s page is small', async (name) => {
  expect(await firstLoad(SCREENS[name].path)).toBeLessThan(MOST_BYTES);
});

it('counts what it should: a seat is larger than the start page', async () => {
  const [home, panel] = await Promise.all([firstLoad(SCREENS.home.path), firstLoad(SCREENS.panel.path)]);
  expect(panel).toBeGreaterThan(home);
});
