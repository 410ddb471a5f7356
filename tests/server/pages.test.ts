import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { pages } from '../../server/http/pages.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-served-'));
afterAll(() => rmSync(folder, { recursive: true }));
mkdirSync(join(folder, '.vite'));
writeFileSync(join(folder, '.vite', 'manifest.json'), '{}');
writeFileSync(join(folder, 'seen.txt'), 'seen');
writeFileSync(join(folder, 'service-worker.js'), '// plain');
writeFileSync(join(folder, 'service-worker.js.br'), '// packed');

const PUBLIC = new URL('../../client/public/', import.meta.url);

describe('the files beside the pages', () => {
  it.each([
    '/.vite/manifest.json',
    '/%2evite/manifest.json',
    '/%2Evite/manifest.json',
    '//.vite/manifest.json',
    '/seen/..%2f.vite/manifest.json',
    '/%ff.vite/manifest.json',
  ])('are not what the bundler wrote for the server: %s', async (path) => {
    expect((await pages(folder).request(path)).status).toBe(404);
  });

  it('are given out otherwise', async () => {
    const answer = await pages(folder).request('/seen.txt');
    expect({ status: answer.status, text: await answer.text() }).toEqual({ status: 200, text: 'seen' });
  });

  it('hold the service worker, for the whole site, and asked for again each time', async () => {
    const answer = await pages(folder).request('/service-worker.js');
    // Service Workers (W3C): its largest scope is the folder that it lies in, so it lies at the root; from memory.
    expect(answer.status).toBe(200);
    expect(answer.headers.get('content-type')).toContain('javascript');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
    expect(await answer.text()).toBe('// plain');
  });

  it('are sent packed to a browser that takes them so', async () => {
    const headers = { 'accept-encoding': 'gzip, br' };
    const answer = await pages(folder).request('/service-worker.js', { headers });
    expect(answer.headers.get('content-encoding')).toBe('br');
    expect(answer.headers.get('content-type')).toContain('javascript');
    expect(await answer.text()).toBe('// packed');
  });

  it('hold an app manifest, of its own type and asked for again each time', async () => {
    const answer = await pages(PUBLIC.pathname).request('/app.webmanifest');
    expect(answer.status).toBe(200);
    // Web Application Manifest (W3C), section on its media type; from memory.
    expect(answer.headers.get('content-type')).toContain('application/manifest+json');
    expect(answer.headers.get('cache-control')).toBe('no-cache');
  });

  it('hold every icon that the app manifest names, in the size it says', async () => {
    const { icons } = z
      .object({ icons: z.array(z.object({ src: z.string(), sizes: z.string() })).check(z.minLength(3)) })
      .parse(JSON.parse(readFileSync(new URL('app.webmanifest', PUBLIC), 'utf8')));
    for (const { src, sizes } of icons) {
      const png = readFileSync(new URL(src.slice(1), PUBLIC));
      // PNG (ISO/IEC 15948): width and height stand at bytes 16 and 20; from memory.
      expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`).toBe(sizes);
    }
  });
});
