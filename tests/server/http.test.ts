import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join as joinPath } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SCREENS } from '../../client/browser/screens.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { findFault } from '../../src/log/chain.ts';
import { fromJsonLines } from '../../src/log/json-lines.ts';
import { HttpRefusal, JobRecord } from '../../src/protocol/jobs.ts';
import { serve } from './house.ts';
import { bothIn, get, openJob, post, SETUP } from './phone.ts';

const refusal = async (response: Response) => ({
  status: response.status,
  ...HttpRefusal.parse(await response.json()),
});

describe('the HTTP interface', () => {
  it('R32: a job needs a valid setup to open; the refusal says what is wrong with it', async () => {
    const { url } = await serve();
    const bad = { ...SETUP, meter: { ...SETUP.meter, bandLow: 90, bandHigh: 40 } };
    const answer = await refusal(await post(url, '/api/jobs', { setup: bad }));
    expect(answer).toMatchObject({ status: 400, reason: 'bad-message' });
    expect(answer.text).toContain('setup.meter.bandHigh');
    for (const body of ['not json', '[]', '{}', '{"setup":{}}']) {
      expect((await refusal(await post(url, '/api/jobs', body))).status).toBe(400);
    }
  });

  it.each([
    [{ setup: { ...SETUP, colour: 'red' } }, 'setup.colour: there is no such field.'],
    [{ setup: SETUP, devices: '' }, 'devices: there is no such field.'],
    [{ setup: { ...SETUP, pair: 'B\u202e2' } }, 'setup.pair: it holds a character that nobody sees (U+202E)'],
    [
      { setup: { ...SETUP, plan: { id: 'B2', name: 'B2', rangeMin: 9, rangeMax: 8 } } },
      'setup.plan.rangeMax: rangeMin must not be above rangeMax.',
    ],
  ])('R32: a job opened with %j is refused by name', async (body, text) => {
    const { url } = await serve();
    const answer = await refusal(await post(url, '/api/jobs', body));
    expect(answer).toMatchObject({ status: 400, reason: 'bad-message', text: expect.stringContaining(text) });
  });

  it('R32: over the socket too, a remark with a character that nobody sees is refused by name', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    expect(await panel.refusal(panel.remark('hold\u202e'))).toMatchObject({
      reason: 'bad-message',
      text: expect.stringContaining('text: it holds a character that nobody sees (U+202E)'),
    });
  });

  it('R114: a record comes packed to a caller that takes it so, and is the same unpacked', async () => {
    const { url } = await serve();
    const { watch } = await openJob(url);
    // Asked without the client that unpacks by itself.
    const ask = (accept?: string) =>
      new Promise<{ encoding: string | undefined; body: Buffer }>((resolve, reject) => {
        const headers = { authorization: `Bearer ${watch}`, ...(accept && { 'accept-encoding': accept }) };
        request(`${url}/api/record`, { headers }, async (answer) =>
          resolve({
            encoding: answer.headers['content-encoding'],
            body: Buffer.concat(await answer.toArray()),
          }),
        )
          .on('error', reject)
          .end();
      });
    const plain = await ask();
    expect(plain.encoding).toBeUndefined();
    const packed = await ask('gzip, br');
    expect(packed.encoding).toBe('gzip');
    // Node's own zlib is the judge.
    expect(gunzipSync(packed.body).toString()).toBe(plain.body.toString());
    expect(packed.body.length).toBeLessThan(plain.body.length);
    expect(JobRecord.parse(JSON.parse(plain.body.toString())).entries.length).toBeGreaterThan(0);
  });

  it('R32: a body over the limit is refused', async () => {
    const { url } = await serve();
    const answer = await refusal(await post(url, '/api/jobs', { setup: SETUP, device: 'x'.repeat(20_000) }));
    expect(answer).toMatchObject({ status: 413, reason: 'too-long' });
  });

  it('R32: one address cannot open jobs without end', async () => {
    const { url } = await serve({ limits: { opensPerAddress: { burst: 2, perSecond: 0 } } });
    await openJob(url);
    await openJob(url);
    expect(await refusal(await post(url, '/api/jobs', { setup: SETUP }))).toMatchObject({
      status: 429,
      reason: 'too-fast',
    });
  });

  it('R33: every role gets the whole log with its head as the record; others get nothing', async () => {
    const { url } = await serve();
    const { job, panel, emitterToken } = await bothIn(url);
    await panel.ack(panel.say('forty two'));
    for (const token of [job.token, emitterToken, job.watch]) {
      const { head, entries } = JobRecord.parse(await (await get(url, '/api/record', token)).json());
      expect(head.count).toBe(entries.length);
      expect(findFault(entries, head)).toBeUndefined();
    }
    for (const path of ['/api/record', '/api/export.jsonl', '/api/export.csv']) {
      for (const token of [undefined, 'A'.repeat(22), 'short']) {
        expect(await refusal(await get(url, path, token))).toMatchObject({
          status: 401,
          reason: 'bad-token',
        });
      }
      expect((await get(url, `${path}?token=${job.watch}`)).status).toBe(401);
    }
  });

  it('exports the log as CSV, and as JSON Lines that read back whole', async () => {
    const { url } = await serve();
    const { job, panel } = await bothIn(url);
    await panel.ack(panel.remark('a note, with "quotes" and\na line break'));
    const lines = await get(url, '/api/export.jsonl', job.watch);
    expect(lines.headers.get('content-disposition')).toBe(
      `attachment; filename="ladderline-${job.job}.jsonl"`,
    );
    expect(fromJsonLines(await lines.text())).toMatchObject({ ok: true, head: { job: job.job } });
    const csv = await get(url, '/api/export.csv', job.watch);
    expect(csv.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(await csv.text()).toContain('a note, with ""quotes""');
  });

  it('is never cached, and unknown addresses are refused as JSON', async () => {
    const { url } = await serve();
    const health = await get(url, '/api/health');
    expect(await health.json()).toMatchObject({
      ok: true,
      store: 'memory',
      speech: { name: 'off', ready: false },
    });
    expect(health.headers.get('cache-control')).toBe('no-store');
    const unknown = await get(url, '/api/unknown');
    expect(unknown.headers.get('cache-control')).toBe('no-store');
    expect(await refusal(unknown)).toMatchObject({ status: 404, reason: 'bad-message' });
  });

  it('R29: says so when the log cannot be read or written', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const down = async () => {
      throw new StoreFailure('the disk is gone');
    };
    store.append = down;
    store.health = down;
    for (const response of [await post(url, '/api/jobs', { setup: SETUP }), await get(url, '/api/health')]) {
      expect(await refusal(response)).toMatchObject({ status: 503, reason: 'store-failed' });
    }
  });
});

describe('the pages', () => {
  const clientFolder = mkdtempSync(joinPath(tmpdir(), 'ladderline-pages-'));
  beforeAll(() => {
    writeFileSync(joinPath(clientFolder, 'index.html'), '<!doctype html><title>Ladderline</title>');
    mkdirSync(joinPath(clientFolder, 'assets'));
    writeFileSync(joinPath(clientFolder, 'assets', 'main-abc123.js'), 'export {};');
    writeFileSync(joinPath(clientFolder, 'icon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>');
  });
  afterAll(() => rmSync(clientFolder, { recursive: true }));

  it('all addresses of the client give the same page, which browsers ask for each time', async () => {
    const { url } = await serve({ clientFolder });
    for (const path of [...Object.values(SCREENS).map((screen) => screen.path), '/index.html']) {
      const page = await get(url, path);
      expect(page.status).toBe(200);
      expect(page.headers.get('content-type')).toMatch(/^text\/html/);
      expect(page.headers.get('cache-control')).toBe('no-cache');
      expect(await page.text()).toContain('Ladderline');
    }
  });

  it('files with a hash in their name are cached for ever', async () => {
    const { url } = await serve({ clientFolder });
    const script = await get(url, '/assets/main-abc123.js');
    expect(script.headers.get('content-type')).toMatch(/javascript/);
    expect(script.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
    expect((await get(url, '/icon.svg')).headers.get('cache-control')).toBe('no-cache');
  });

  it('run only their own code, may use the microphone, and send no referrer', async () => {
    const { url, port } = await serve({ clientFolder });
    const { headers } = await get(url, '/panel');
    const policy = headers.get('content-security-policy');
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain(`ws://localhost:${port}`);
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe-(inline|eval)'(?<!wasm-unsafe-eval')/);
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
    expect(headers.get('permissions-policy')).toContain('microphone=(self)');
  });

  it('an address without a page gets a plain, friendly one, and no file outside the folder is served', async () => {
    const { url } = await serve({ clientFolder });
    for (const path of [
      '/nowhere',
      '/assets/none.js',
      '/..%2f..%2fetc/passwd',
      '/assets/..%5c..%5cindex.html',
    ]) {
      const page = await get(url, path);
      expect(page.status).toBe(404);
      expect(await page.text()).toContain('There is nothing here');
    }
  });

  it('an address without a page gets our own page where a person asks, which is no file and no hidden one', async () => {
    const { url } = await serve({ clientFolder });
    const asked = (path: string) => fetch(`${url}${path}`, { headers: { Accept: 'text/html,*/*;q=0.8' } });
    for (const path of ['/nowhere', '/site/nowhere/else']) {
      const page = await asked(path);
      expect(page.status).toBe(404);
      expect(await page.text()).toBe(await (await asked('/index.html')).text());
    }
    for (const path of ['/assets/none.js', '/.vite/manifest.json'])
      expect(await (await asked(path)).text()).toContain('There is nothing here');
  });

  it('say so when they are not built yet', async () => {
    const { url } = await serve({ clientFolder: joinPath(clientFolder, 'none') });
    const page = await get(url, '/');
    expect(page.status).toBe(503);
    expect(await page.text()).toContain('npm run build');
  });
});
