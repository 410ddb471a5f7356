import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import lighthouse from 'lighthouse';
import { chromium } from 'playwright-core';
import { CHROMIUM } from '../e2e/chromium.ts';
import { firstScreens } from '../e2e/first-screens.ts';

/**
 * Lighthouse on the built pages, with its own phone: a small screen, a slow line (1.6 Mbit/s, 150 ms) and a processor four
 * times slower than this one, all three simulated. Each page is opened by a browser that has nothing of it yet. `-- 3`: how
 * often each page is looked at; the run in the middle counts. Build the client first (`npm run build`).
 */
if (!CHROMIUM) throw new Error('no Chromium was found');
const executablePath = CHROMIUM;
const RUNS = Number(process.argv[2] ?? 3);
const CATEGORIES = ['performance', 'accessibility', 'best-practices'] as const;
const TIMES = { fcp: 'first-contentful-paint', lcp: 'largest-contentful-paint', tbt: 'total-blocking-time' };

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const held = createServer().listen(0, '127.0.0.1', () => {
      const { port } = held.address() as { port: number };
      held.close(() => resolve(port));
    });
  });

const { server, screens } = await firstScreens();

/** What is kept is put in beforehand, from a file that is no page, so that nothing of the pages is fetched yet. */
async function look({ path, kept }: (typeof screens)[number]) {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-lighthouse-'));
  const port = await freePort();
  const context = await chromium.launchPersistentContext(folder, {
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', `--remote-debugging-port=${port}`],
  });
  try {
    const page = await context.newPage();
    await page.goto(`${server.url}/LICENSE.txt`);
    await page.evaluate((entries) => {
      for (const [key, value] of Object.entries(entries))
        localStorage.setItem(`ladderline.${key}`, JSON.stringify(value));
    }, kept);
    await page.close();
    const result = await lighthouse(`${server.url}${path}`, {
      port,
      logLevel: 'error',
      disableStorageReset: true,
      onlyCategories: [...CATEGORIES],
    });
    if (!result) throw new Error(`Lighthouse gave nothing for ${path}`);
    const { categories, audits, lighthouseVersion } = result.lhr;
    return {
      version: lighthouseVersion,
      scores: CATEGORIES.map((name) => Math.round((categories[name]?.score ?? 0) * 100)),
      times: Object.values(TIMES).map((name) => audits[name]?.numericValue ?? Number.NaN),
      failed: Object.values(audits)
        .filter(({ score, scoreDisplayMode }) => scoreDisplayMode === 'binary' && score !== null && score < 1)
        .map(({ id }) => id),
    };
  } finally {
    await context.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

console.log(`load average before: ${loadavg().map((load) => load.toFixed(1))}; ${RUNS} runs of each page`);
console.log('| page | performance | lowest | accessibility | best practices | FCP s | LCP s | TBT ms |');
console.log('| --- | --- | --- | --- | --- | --- | --- | --- |');
const failed = new Map<string, string[]>();
let version = '';
for (const screen of screens) {
  const looks = [];
  for (let run = 0; run < RUNS; run++) looks.push(await look(screen));
  looks.sort((one, other) => (one.scores[0] ?? 0) - (other.scores[0] ?? 0));
  const middle = looks[Math.floor(looks.length / 2)];
  if (!middle) continue;
  const [performance, accessibility, practices] = middle.scores;
  const [fcp = 0, lcp = 0, tbt = 0] = middle.times;
  const row = [screen.name, performance, looks[0]?.scores[0], accessibility, practices];
  console.log(
    `| ${[...row, (fcp / 1000).toFixed(1), (lcp / 1000).toFixed(1), tbt.toFixed(0)].join(' | ')} |`,
  );
  if (middle.failed.length > 0) failed.set(screen.name, middle.failed);
  ({ version } = middle);
}
for (const [name, audits] of failed) console.log(`${name}: not passed: ${audits.join(', ')}`);
console.log(`Lighthouse ${version}; load average after: ${loadavg().map((load) => load.toFixed(1))}`);
await server.close();
process.exit(0);
