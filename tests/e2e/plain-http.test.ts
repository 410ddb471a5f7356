import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { ownCertificate } from '../../server/network/certificate.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press, typeReading } from './hall.ts';
import { faultsAt, open, resize, violations } from './screens/walk.ts';

/** Chromium gives a page under it no microphone over plain HTTP, as it would not on a LAN. */
const NAME = 'ladder.example';
const ELSEWHERE = `--host-resolver-rules=MAP ${NAME} 127.0.0.1`;
const DEVICE = { viewport: { width: 390, height: 844 } };
const IPHONE =
  'Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.0 Mobile/15E148 Safari/604.1';

describe.skipIf(!CHROMIUM)('a phone that does not trust the server', () => {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-plain-'));
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  async function start() {
    const wanted = { names: ['localhost', NAME], addresses: ['127.0.0.1'] };
    const { pair } = await ownCertificate(folder, wanted, Date.now());
    server = await startServer({ store: new MemoryStore(), tls: pair, names: [NAME] });
    return { pair, port: server.port, plain: `http://${NAME}:${server.port}` };
  }

  const shot = (page: Page, name: string) =>
    process.env.SHOTS
      ? page.screenshot({ path: join(process.env.SHOTS, `${name}.png`), fullPage: true })
      : undefined;

  it('does all but speak over plain http, says why, and leads to the way out', async () => {
    const { pair, port, plain } = await start();
    browser = await launch(undefined, [ELSEWHERE]);
    const context = await browser.newContext({ ...DEVICE, userAgent: IPHONE, ignoreHTTPSErrors: true });
    const page = await context.newPage();
    await page.goto(`${plain}/`);
    await page.getByText('At the panel').click();
    await page.getByLabel('Site').fill('Quayside Hall 3');
    await page.getByLabel('Beam pair').fill('B4');
    await page.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(page, 'Open the job');
    await press(page, 'Understood');
    await typeReading(page, '142');
    await page.getByText('142').first().waitFor();
    await page.getByText('The microphone is off: this page came over plain http.').waitFor();
    await shot(page, 'seat-plain');
    await page.getByRole('link', { name: 'turn it on' }).click();
    await page.getByText(new X509Certificate(pair.authority ?? '').fingerprint256).waitFor();
    await page.getByText('Without this second step nothing changes.').waitFor();
    await shot(page, 'trust-iphone');
    const file = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Get the certificate' }).click();
    expect((await file).suggestedFilename()).toMatch(/^ladderline\.(crt|cer)$/);
    // The warning was only tapped away.
    await page.getByRole('link', { name: 'Check it over https' }).click();
    await page.getByText('This device does not trust the server yet.').waitFor();
    expect(page.url()).toBe(`https://${NAME}:${port}/trust`);
  });

  it('joins although a newer version was installed while it typed: it is told so, and keeps what it typed', async () => {
    const { plain } = await start();
    browser = await launch(undefined, [ELSEWHERE]);
    const page = await browser.newPage(DEVICE);
    await page.goto(`${plain}/join#XYZ234`);
    await page.getByRole('button', { name: 'Join' }).waitFor();
    // Built files have their hash in their name: a newer version has others, and the server no longer these.
    await page.route('**/assets/**', (route) => route.fulfill({ status: 404 }));
    await page.getByLabel('Join code').fill('ABC 234');
    await page.getByLabel('Your name').fill('B. Example');
    await press(page, 'Join');
    await page.getByText('The server has a newer version of this page.').waitFor();
    await shot(page, 'join-newer');
    await page.unroute('**/assets/**');
    await press(page, 'Load the page again');
    await page.getByText('You are B. Example').waitFor();
    expect(await page.getByLabel('Join code').inputValue()).toBe('ABC 234');
    await press(page, 'Join');
    await page.getByText('This code is not known').waitFor();
    // And where the server is away, that is said.
    await page.reload();
    await page.route('**/{assets,api}/**', (route) => route.abort());
    await page.getByLabel('Join code').fill('ABC 235');
    await press(page, 'Join');
    await page.getByText('The server does not answer.').waitFor();
  });

  it('is told so once it trusts the server', async () => {
    const { pair, port } = await start();
    const key = new X509Certificate(pair.cert).publicKey.export({ type: 'spki', format: 'der' });
    const pin = Buffer.from(await crypto.subtle.digest('SHA-256', new Uint8Array(key))).toString('base64');
    // Chromium has no list of authorities that a test could add to; this makes it take our key as trusted.
    browser = await launch(undefined, [ELSEWHERE, `--ignore-certificate-errors-spki-list=${pin}`]);
    const page = await browser.newPage(DEVICE);
    await page.goto(`https://${NAME}:${port}/trust`);
    await page.getByText('Done: this device trusts the server.').waitFor();
    expect(await page.evaluate('isSecureContext')).toBe(true);
    await shot(page, 'trust-done');
  });

  it('sees the steps whole on every size, for each kind of device', async () => {
    const { plain } = await start();
    browser = await launch(undefined, [ELSEWHERE]);
    const state = { name: 'trust', path: '/trust', ready: '.trust-number' };
    const page = await open(browser, plain, state);
    await page.locator('.square svg').waitFor();
    for (const kind of ['iPhone or iPad', 'Android']) await page.getByText(kind, { exact: true }).click();
    const found: unknown[] = [];
    for (const size of [
      { width: 320, height: 568, text: 2 },
      { width: 390, height: 844, text: 1 },
      { width: 1280, height: 800, text: 1 },
    ]) {
      found.push(...(await faultsAt(page, state, size)));
      await shot(page, `trust-${size.width}`);
    }
    await resize(page, { width: 390, height: 844, text: 1 });
    found.push(...(await violations(page)));
    expect(found).toEqual([]);
  });
});
