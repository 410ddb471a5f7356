import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { findFault, headAfter } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { KEPT_HERE, RECORD_AT_SERVER_TITLE } from '../../src/phrases/brought.ts';
import { BEGIN_HERE, BRING } from '../../src/phrases/kept-here.ts';
import { closeThereText } from '../../src/phrases/links.ts';
import {
  AS_TEXT,
  LINE_LOST,
  NOT_A_CODE,
  OTHER_CODE,
  SCAN_ITS_CODE,
  TEXT_OF_OTHER,
  USE_TEXT,
} from '../../src/phrases/meeting.ts';
import { MEET_AGAIN, NO_SERVER_MEET } from '../../src/phrases/meeting-title.ts';
import { NO_ANSWER } from '../../src/phrases/requests.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press, typeReading } from './hall.ts';
import { logOf } from './job-log.ts';
import { cameraSeesSquareOf, squareOn } from './square-codes.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' };

/** Both phones are this machine: without these, Chromium names no address of it that it could reach itself at. */
const ON_ONE_MACHINE = [
  '--allow-loopback-in-peer-connection',
  '--disable-features=WebRtcHideLocalIpsWithMdns',
];

/** The pages were opened once; then no server answers until the job is done. */
describe.skipIf(!CHROMIUM)('two phones without a server', () => {
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), createRng(7));
  let store: MemoryStore;
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;
  let third: Page;
  let port: number;

  beforeAll(async () => {
    store = new MemoryStore();
    server = await startServer({ store });
    ({ port } = server);
    browser = await launch(undefined, ON_ONE_MACHINE);
    const open = async (context: BrowserContext): Promise<Page> => {
      const page = await context.newPage();
      await page.goto(`${server.url}/`);
      await page.evaluate(async () => void (await navigator.serviceWorker.ready));
      return page;
    };
    panel = await open(await browser.newContext(PHONE));
    emitter = await open(await browser.newContext(PHONE));
    third = await open(await browser.newContext(PHONE));
    await cameraSeesSquareOf(panel, () => emitter);
    await server.close();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const shot = async (name: string, page: Page) => {
    if (process.env.SHOTS)
      await page.screenshot({ path: join(process.env.SHOTS, `${name}.png`), fullPage: true });
  };

  /** The record, as the panel's phone keeps it. */
  const kept = () =>
    panel.evaluate(
      () =>
        new Promise<Entry[]>((resolve) => {
          const opening = indexedDB.open('ladderline-here');
          opening.onsuccess = () => {
            const request = opening.result.transaction('logs').objectStore('logs').getAll();
            request.onsuccess = () => resolve(request.result as Entry[]);
          };
        }),
    );
  const state = async () => (await kept()).reduce(fold, EMPTY);
  const remarks = (entries: readonly Entry[]) =>
    entries.flatMap(({ fact }) => (fact.type === 'remark' ? [fact.text] : []));

  async function giveText(page: Page, text: string): Promise<void> {
    const part = page.locator('details', { has: page.getByLabel(TEXT_OF_OTHER) });
    if (!(await part.evaluate((each: HTMLDetailsElement) => each.open)))
      await part.getByText(AS_TEXT).click();
    await page.getByLabel(TEXT_OF_OTHER).fill(text);
    await press(page, USE_TEXT);
  }

  it('R139: meet by codes that are shown and given in turn, and by no others', async () => {
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B2');
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await panel.getByText('Edit the meter').click();
    await panel.getByLabel('Settles within').fill('0.4');
    await panel.getByLabel('Must stay steady for').fill('1');
    await press(panel, 'Open the job');
    await panel.getByText(NO_ANSWER).waitFor();
    await shot('meet-start', panel);
    await press(panel, BEGIN_HERE);
    await press(panel, 'Understood');
    const offer = await squareOn(panel);
    await shot('meet-panel', panel);
    expect(new URL(offer).origin).toBe(new URL(server.url).origin);

    // The emitter's own way in, where nobody answers its code.
    await emitter.goto(`${server.url}/`);
    await emitter.getByText('At the emitter').click();
    await emitter.getByLabel('Join code').fill('ABC234');
    await press(emitter, 'Join');
    await emitter.getByText(NO_SERVER_MEET).click();
    await shot('meet-emitter', emitter);
    await giveText(emitter, 'ABC234');
    await emitter.getByText(NOT_A_CODE).waitFor();
    await giveText(emitter, offer);
    const answer = await squareOn(emitter);
    await shot('meet-emitter-answer', emitter);

    await giveText(panel, offer);
    await panel.getByText(OTHER_CODE.panel).waitFor();
    await giveText(panel, answer);
    await press(emitter, 'Understood');
    await press(emitter, 'Upright');
    await panel.getByText('Emitter here').waitFor();
    await emitter.getByText('Panel here').waitFor();
    await shot('meet-seat-panel', panel);
    await shot('meet-seat-emitter', emitter);
  }, 60_000);

  it('R149: while the phone at the emitter is there, no other one gets its seat', async () => {
    await press(panel, 'Menu');
    await panel.locator('.new-phone').getByRole('button', { name: 'At the emitter' }).click();
    await third.goto(await squareOn(panel));
    await giveText(panel, await squareOn(third));
    for (const page of [panel, third]) await page.getByText(closeThereText('emitter')).waitFor();
    await shot('meet-refused-third', third);
    await panel.reload();
    await panel.getByText(MEET_AGAIN).click();
    await emitter.getByText(MEET_AGAIN).click();
    await giveText(emitter, await squareOn(panel));
    await giveText(panel, await squareOn(emitter));
    await emitter.getByText('Panel here').waitFor();
  }, 60_000);

  /** The crew does what is asked, until `ends` says so. */
  async function work(ends: (answered: number) => boolean, longestMs: number): Promise<void> {
    let answered = -1;
    let orders = 0;
    for (const end = Date.now() + longestMs; ; ) {
      if (Date.now() > end) throw new Error(JSON.stringify((await kept()).slice(-6).map((e) => e.fact)));
      const { instruction, accepted } = await state();
      if (accepted || ends(orders)) return;
      if (!instruction || instruction.seq === answered || instruction.advice.action.kind === 'hold') {
        await panel.waitForTimeout(50);
        continue;
      }
      const { action } = instruction.advice;
      await emitter.getByRole('heading', { name: instruction.show }).waitFor();
      if (instruction.advice.to === 'emitter') await panel.locator('.receipt.reached').waitFor();
      answered = instruction.seq;
      orders += 1;
      if (action.kind === 'offer-accept') await press(panel, 'Accept');
      else if (action.kind === 'read') await typeReading(panel, hall.meterShows());
      else await hall.workAt(emitter, instruction);
    }
  }

  it('R142: cut in the middle, say so, keep what is said, and meet again by the camera', async () => {
    await work((orders) => orders >= 6, 40_000);
    await emitter.reload();
    await emitter.getByText(LINE_LOST).waitFor();
    await press(emitter, 'Menu');
    await emitter.getByLabel('Remark for the record').fill('The upper bolt was loose.');
    await press(emitter, 'Keep the remark');
    await emitter.getByText('1 to send').waitFor();
    await shot('meet-lost-emitter', emitter);
    await panel.getByText('Emitter away').waitFor({ timeout: 15_000 });
    await shot('meet-lost-panel', panel);

    await press(panel, MEET_AGAIN);
    await emitter.getByText(MEET_AGAIN).click();
    await giveText(emitter, await squareOn(panel));
    await squareOn(emitter);
    await press(panel, SCAN_ITS_CODE);
    await emitter.getByText('Panel here').waitFor({ timeout: 20_000 });
    await expect.poll(async () => remarks(await kept())).toContain('The upper bolt was loose.');
    await expect.poll(() => emitter.locator('.strip-pending').count()).toBe(0);
    // The same phone: it keeps its seat, and nothing is there twice.
    const entries = await kept();
    expect(remarks(entries).filter((text) => text.startsWith('The upper bolt'))).toHaveLength(1);
    expect(entries.filter(({ fact }) => fact.type === 'seated' && fact.seat === 'emitter')).toHaveLength(1);
    const links = entries.flatMap(({ fact }) =>
      fact.type === 'link' && fact.seat === 'emitter' ? [fact.online] : [],
    );
    expect(links.slice(-2)).toEqual([false, true]);
  }, 90_000);

  it('R143: align the pair, accept it, and bring a whole record to the server', async () => {
    // An order that came due meanwhile was held: whoever was cut off says first that they are ready.
    if ((await state()).held) await press(emitter, 'Ready');
    await work(() => false, 90_000);
    const { accepted } = await state();
    expect(accepted?.override).toBeUndefined();
    expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
    const before = await kept();
    expect(findFault(before, headAfter(before.at(-1) as Entry))).toBeUndefined();
    const seen = await emitter.locator('.strip').getByText('Linked').count();
    expect(seen).toBe(1);

    server = await startServer({ store, port });
    await press(panel, 'Menu');
    await press(panel, BRING);
    await panel.getByText('Linked', { exact: true }).waitFor({ timeout: 20_000 });
    await emitter.getByRole('heading', { name: RECORD_AT_SERVER_TITLE }).waitFor();
    await shot('meet-brought-emitter', emitter);
    expect(await panel.getByText(KEPT_HERE).count()).toBe(0);
    const entries = await logOf(store);
    expect(entries.slice(0, before.length)).toEqual(before);
    expect(findFault(entries, headAfter(entries.at(-1) as Entry))).toBeUndefined();
    const ids = entries.flatMap(({ ref }) => ref ?? []);
    expect(new Set(ids).size).toBe(ids.length);
  }, 120_000);
});
