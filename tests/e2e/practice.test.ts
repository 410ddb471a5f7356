import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { Axis } from '../../src/model/turns.ts';
import { amountGlyph } from '../../src/phrases/amounts.ts';
import {
  ALL_LEARNT,
  AT_SEAT,
  START_AT,
  START_TWO_PHONES,
  TROUBLES,
  turnLabel,
} from '../../src/phrases/practice.ts';
import { END_PRACTICE, PRACTICE_BAND } from '../../src/phrases/practice-band.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press, typeReading } from './hall.ts';

const DOUBLE_TAP_MS = 400;
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true };

const number = async (panel: Page): Promise<number> =>
  Number(await panel.locator('.drawn-number').textContent());

/** What a person does who sees the order on the screen: turns the drawn screw by it. Reads only the page. */
async function turnAsOrdered(emitter: Page): Promise<void> {
  const order = await emitter.locator('.emitter-stage .show').textContent();
  const words = (order ?? '').toLowerCase().split(/\s+/);
  const axis = (words.includes('horizontal') ? 'horizontal' : 'vertical') satisfies Axis;
  const sense = words.includes('anticlockwise') ? -1 : 1;
  const size = Array.from({ length: 12 }, (_, i) => i + 1).find((n) => words.includes(amountGlyph(n)));
  if (!size) throw new Error(`no turn is named in: ${order}`);
  const taps = [...Array(Math.floor(size / 4)).fill(4), ...Array(size % 4).fill(1)];
  for (const tap of taps) await press(emitter, turnLabel(axis, sense * tap));
  const done = `${axis}: ${amountGlyph(size)} ${sense < 0 ? 'anticlockwise' : 'clockwise'}`;
  await emitter.getByText(new RegExp(`^${done}$`, 'i')).waitFor();
}

/** 180 words a minute: a tired reader whose second language this is. Our estimate. */
const READS_MS_A_WORD = 333;

/** Waits for a lesson, and reads it. */
async function lesson(page: Page, n: number, msAWord: number): Promise<void> {
  const line = page.locator('.lesson').getByText(new RegExp(`^${n} of \\d:`));
  await line.waitFor();
  const words = (await line.textContent())?.split(' ').length ?? 0;
  await page.waitForTimeout(words * msAWord);
}

/** A newcomer at the panel, who does what the line at the top says. */
async function learnPanel(page: Page, msAWord: number): Promise<void> {
  await press(page, AT_SEAT.panel);
  await press(page, 'Understood');
  await lesson(page, 1, msAWord);
  await page.waitForFunction(() => Number(document.querySelector('.drawn-number')?.textContent) > 2);
  await typeReading(page, `${await number(page)}`);
  await lesson(page, 2, msAWord);
  await lesson(page, 3, msAWord);
  await page.getByText('Read the meter').first().waitFor();
  await typeReading(page, `${await number(page)}`);
  await lesson(page, 4, msAWord);
  const shown = await number(page);
  await press(page, 'Correct');
  const sheet = page.locator('dialog[open]');
  await sheet.locator('input').fill(`${shown}`);
  await sheet.locator('button[type="submit"]').click();
  await lesson(page, 5, msAWord);
  await press(page, 'Wait');
  // A tap that comes too soon after another counts as the second tap of a glove.
  await page.waitForTimeout(DOUBLE_TAP_MS);
  await page.locator('.panel-answers').getByRole('button', { name: 'Go on' }).click();
  await page.getByText(ALL_LEARNT).waitFor();
}

async function learnEmitter(page: Page, msAWord: number): Promise<void> {
  await press(page, AT_SEAT.emitter);
  await press(page, 'Understood');
  await lesson(page, 1, msAWord);
  await press(page, 'Aim at the receiver');
  await press(page, 'Aimed');
  await lesson(page, 2, msAWord);
  await page.getByRole('button', { name: 'Done', exact: true }).waitFor();
  await turnAsOrdered(page);
  await lesson(page, 3, msAWord);
  await press(page, 'Done');
  await lesson(page, 5, msAWord);
  await press(page, 'Say again');
  await lesson(page, 6, msAWord);
  await press(page, 'Wait');
  // A tap that comes too soon after another counts as the second tap of a glove.
  await page.waitForTimeout(DOUBLE_TAP_MS);
  await press(page, 'Go on');
  await page.getByText(ALL_LEARNT).waitFor();
}

describe.skipIf(!CHROMIUM)('practice', () => {
  let store: MemoryStore;
  let server: RunningServer;
  let browser: Browser;
  let context: BrowserContext;
  let phone: Page;

  beforeEach(async () => {
    store = new MemoryStore();
    server = await startServer({ store });
    browser = await launch();
    context = await browser.newContext(PHONE);
    phone = await context.newPage();
  }, 60_000);
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  it.each([
    ['panel', learnPanel],
    ['emitter', learnEmitter],
  ] as const)(
    'a newcomer learns the %s by doing, and leaves nothing on phone or server',
    async (seat, learn) => {
      await phone.goto(server.url);
      await phone.getByText('Practise', { exact: true }).click();
      const from = Date.now();
      await learn(phone, READS_MS_A_WORD);
      console.log(
        `the five steps at the ${seat}: ${((Date.now() - from) / 1000).toFixed(1)} s, reading included`,
      );
      expect(await phone.locator('.practice-band').textContent()).toBe(PRACTICE_BAND);
      await press(phone, END_PRACTICE);
      await phone.getByRole('heading', { name: 'Ended before it was accepted' }).waitFor();
      expect(await store.jobs()).toEqual([]);
      const kept = await phone.evaluate(() => Object.keys(localStorage).filter((key) => !/kept$/.test(key)));
      expect(kept).toEqual([]);
      await phone.goto(server.url);
      await phone.locator('.way').first().waitFor();
      expect(await phone.locator('.resume').count()).toBe(0);
    },
    120_000,
  );

  it('a whole job with too much light is played at the panel, and graded beside a simulated crew', async () => {
    await phone.clock.install();
    await phone.goto(`${server.url}/practice`);
    await press(phone, TROUBLES.flooded.name);
    await press(phone, START_AT.panel);
    await press(phone, 'Understood');
    const accept = phone.getByRole('button', { name: 'Accept', exact: true });
    let flooded = 0;
    for (let i = 0; i < 300 && !(await accept.isVisible()); i++) {
      await phone.clock.fastForward(2_000);
      if (!(await phone.locator('.panel-now .band-read').isVisible())) continue;
      const shown = await number(phone);
      if (shown >= 99) flooded += 1;
      if (shown >= 99) await press(phone, 'Saturated');
      else await typeReading(phone, `${shown}`);
    }
    expect(flooded).toBeGreaterThan(0);
    await accept.click();
    await phone.getByRole('heading', { name: 'Well done' }).waitFor();
    await phone.getByText(`${TROUBLES.flooded.name}: mastered.`).waitFor();
    for (let i = 0; i < 400 && (await phone.getByText('…', { exact: true }).count()) > 0; i++)
      await phone.clock.runFor(50);
    const cells = await phone.locator('.runs tbody tr').first().locator('td').allInnerTexts();
    expect(cells.map(Number).every((turns) => turns >= 6)).toBe(true);
    await press(phone, 'The same again');
    await phone.getByRole('button', { name: 'Understood' }).waitFor();
  }, 180_000);

  it('works in a dead spot, once the pages are kept', async () => {
    await phone.goto(server.url);
    await phone.evaluate(async () => void (await navigator.serviceWorker.ready));
    await server.close();
    await context.setOffline(true);
    await phone.goto(`${server.url}/practice`);
    await learnPanel(phone, 0);
    server = await startServer({ store });
  }, 120_000);

  it('on two phones the drawn meter follows the drawn screws of the other', async () => {
    await phone.goto(`${server.url}/practice`);
    await press(phone, TROUBLES.vibration.name);
    await press(phone, TROUBLES.vibration.name);
    await press(phone, START_TWO_PHONES);
    await press(phone, 'Understood');
    const code = await phone.locator('.invite-code').textContent();
    const other = await (await browser.newContext(PHONE)).newPage();
    await other.goto(`${server.url}/join`);
    await other.getByLabel('Join code').fill(code ?? '');
    await other.locator('button[type="submit"]').click();
    await press(other, 'Understood');
    for (const page of [phone, other])
      expect(await page.locator('.practice-band').textContent()).toBe(PRACTICE_BAND);
    await phone.getByText('Read the meter').first().waitFor();
    const before = await number(phone);
    await typeReading(phone, `${before}`);
    await press(other, 'Aim at the receiver');
    await press(other, 'Aimed');
    await other.getByRole('heading', { name: 'Hold: settling' }).waitFor();
    await phone.getByRole('heading', { name: 'Read the meter' }).waitFor();
    const aimed = await number(phone);
    await typeReading(phone, `${aimed}`);
    await other.getByRole('button', { name: 'Done', exact: true }).waitFor({ timeout: 20_000 });
    await turnAsOrdered(other);
    await phone.waitForFunction(
      (was) => Math.abs(Number(document.querySelector('.drawn-number')?.textContent) - was) > 3,
      aimed,
    );
    await press(other, 'Menu');
    await press(other, END_PRACTICE);
    await other.getByRole('heading', { name: 'Ended before it was accepted' }).waitFor();
  }, 120_000);
});
