import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { layDown } from '../../server/demo/site-fixture.ts';
import { startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import { SiteView } from '../../src/protocol/site.ts';
import { playDemoSite } from '../../src/simulator/demo-site.ts';
import { CHROMIUM, launch } from '../e2e/chromium.ts';

/**
 * The time until the board of a large site comes, and the record of one of its pairs, from a server that has just
 * started on the SQLite file; and their pages in a Chromium, if there is one (build the client first). The time of a
 * page starts with the request for its address, in a fresh tab. Its processor time is that of the page's main thread:
 * it shows whether the page was slow or the machine was busy. The visits are those of the demo site, sealed again with
 * other names.
 */
const PAIRS = 500;
const ENTRIES = 200_000;
const SITE: JobId = 'bench-board-site';

/** Another log with the same facts at the same times. */
function logOf(job: JobId, drafts: readonly Pick<Entry, 'at' | 'actor' | 'fact'>[]): Entry[] {
  let head = emptyHead(job);
  return drafts.map(({ at, actor, fact }) => {
    // A signature is for its own log.
    const entry = seal(head, { actor, fact: fact.type === 'signed' ? { ...fact, head } : fact }, at);
    head = headAfter(entry);
    return entry;
  });
}

function largeSite() {
  const demo = playDemoSite(Date.UTC(2026, 2, 3, 8));
  const [opened] = demo.site;
  const plans = demo.site.flatMap(({ fact }) => (fact.type === 'pair-planned' ? [fact.pair] : []));
  if (!opened) throw new Error('the demo has no site');
  const { at, actor } = opened;
  const site: Pick<Entry, 'at' | 'actor' | 'fact'>[] = [{ at, actor, fact: opened.fact }];
  const ids = Array.from({ length: PAIRS }, (_, i) => `P${i + 1}`);
  for (const [i, id] of ids.entries()) {
    const plan = plans[i % plans.length];
    if (plan)
      site.push({ at, actor, fact: { type: 'pair-planned', pair: { ...plan, id, name: `Pair ${id}` } } });
  }
  const visits: { job: JobId; entries: Entry[] }[] = [];
  for (let count = 0; count < ENTRIES; ) {
    const pair = ids[visits.length % PAIRS];
    const played = demo.visits[visits.length % demo.visits.length];
    if (!pair || !played) throw new Error('the demo has no visits');
    const job = `bench-visit-${visits.length + 1}`;
    const entries = logOf(job, played.entries);
    visits.push({ job, entries });
    site.push({ at, actor, fact: { type: 'job-begun', pair, job } });
    count += entries.length;
  }
  return { site: logOf(SITE, site), visits };
}

/** A server in its own process. `cpuMs`: processor time it has used so far. */
interface Served {
  url: string;
  cpuMs(): Promise<number>;
}

async function withServer(folder: string, ask: (server: Served) => Promise<void>): Promise<void> {
  const child = fork(fileURLToPath(import.meta.url), [folder]);
  const next = async (): Promise<string> => String((await once(child, 'message'))[0]);
  try {
    const url = await next();
    await ask({
      url,
      cpuMs: () => {
        child.send('cpu');
        return next().then(Number);
      },
    });
  } finally {
    child.disconnect();
    await once(child, 'exit');
  }
}

async function serve(folder: string): Promise<void> {
  const server = await startServer({ store: openDataFolder(folder) });
  process.on('message', () => {
    const { user, system } = process.cpuUsage();
    process.send?.((user + system) / 1000);
  });
  process.once('disconnect', () => void server.close());
  process.send?.(server.url);
}

async function measure(folder: string): Promise<void> {
  const played = largeSite();
  const store = openDataFolder(folder);
  const { watch } = await layDown(store, played);
  await store.close();
  const total = played.visits.reduce((sum, { entries }) => sum + entries.length, 0);
  console.log(`${PAIRS} pairs, ${played.visits.length} visits, ${total} entries; ${cpus().length} cores.`);

  const rows: Record<string, string | number>[] = [];
  const time = async (what: string, { url, cpuMs }: Served, path: string) => {
    const cpu = await cpuMs();
    const began = performance.now();
    const response = await fetch(url + path, { headers: { authorization: `Bearer ${watch}` } });
    const body = await response.text();
    if (!response.ok) throw new Error(`${path} answered ${response.status}: ${body}`);
    const ms = Math.round(performance.now() - began);
    const used = Math.round((await cpuMs()) - cpu);
    rows.push({ what, ms, 'processor ms': used, kB: Math.round(body.length / 1000) });
  };
  const record = (i: number) => `/api/site/record?job=${played.visits[i]?.job}`;
  await withServer(folder, async (server) => {
    const began = performance.now();
    await time('board, nothing worked out yet', server, '/api/site');
    for (let unread = PAIRS; unread > 0; ) {
      await setTimeout(500);
      const response = await fetch(`${server.url}/api/site`, {
        headers: { authorization: `Bearer ${watch}` },
      });
      const { pairs } = SiteView.parse(await response.json());
      unread = pairs.filter(({ status }) => status === undefined).length;
    }
    rows.push({ what: 'the same, to its last row told', ms: Math.round(performance.now() - began) });
  });
  await withServer(folder, async (server) => {
    await time('board, process just started', server, '/api/site');
    await time('board, again', server, '/api/site');
    await time('findings', server, '/api/site/findings');
  });
  await withServer(folder, async (server) => {
    await time('record of a visit, process just started', server, record(0));
    await time('record of another', server, record(1));
  });
  if (CHROMIUM) {
    const browser = await launch();
    /** `stages`: what to wait for, one after the other: a selector and how many there must be. */
    const open = async (
      what: string,
      url: string,
      stages: [what: string, css: string, atLeast: number][],
    ) => {
      const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
      const devtools = await page.context().newCDPSession(page);
      await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
      const worked = async (): Promise<number> => {
        const { metrics } = await devtools.send('Performance.getMetrics');
        return Math.round(1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN));
      };
      const began = performance.now();
      await page.goto(url, { waitUntil: 'commit' });
      for (const [stage, css, atLeast] of stages) {
        await page.waitForFunction(([of, n]) => document.querySelectorAll(of).length >= n, [
          css,
          atLeast,
        ] as const);
        const ms = Math.round(performance.now() - began);
        rows.push({ what: `${what}, ${stage}`, ms, 'processor ms': await worked() });
      }
      await page.close();
    };
    await withServer(folder, async ({ url }) => {
      const board = `${url}/site#${watch}`;
      const pair = `${url}/site/pair#${watch}/${played.visits[0]?.job}`;
      const stages: Parameters<typeof open>[2] = [
        ['a screenful of rows', '.pair-row', 15],
        ['to its last row', '.pair-row', PAIRS],
      ];
      await open('board page', board, stages);
      await open('board page again', board, stages);
      await open("a pair's page", pair, [
        ['to its signature', '.sign-off', 1],
        ['to its last chart', '.charts svg', 3],
      ]);
    });
    await browser.close();
  }
  console.table(rows);
  console.log(
    `Load average of the machine at the end: ${loadavg()
      .map((load) => load.toFixed(1))
      .join(', ')}.`,
  );
}

const [given] = process.argv.slice(2);
if (given !== undefined) await serve(given);
else {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-bench-'));
  try {
    await measure(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
