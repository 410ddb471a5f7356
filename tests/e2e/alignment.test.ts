import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { DEFAULT_MODEL_FOLDER } from '../../server/process/program.ts';
import { openTranscriber } from '../../server/speech/start.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import { speakNumber } from '../../src/grammar/speak.ts';
import { findFault } from '../../src/log/chain.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { spokenFile } from '../sounds/spoken.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press, typeReading } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };
const LONGEST_ALIGNMENT_MS = 120_000;

/** Two pages are two phones; a simulated beam pair is the hall; the panel's microphone hears a synthetic voice. */
describe.skipIf(!CHROMIUM)('two phones align one pair', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-e2e-'));
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), createRng(7));
  /** What the meter shows when the crew arrives, and the voice says. */
  const shown = hall.meterShows();
  let store: Store;
  let server: RunningServer;
  let speaking: Browser;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;

  beforeAll(async () => {
    store = openDataFolder(folder);
    server = await startServer({ store, transcriber: openTranscriber(DEFAULT_MODEL_FOLDER) });
    speaking = await launch(spokenFile(speakNumber(Number(shown))));
    browser = await launch();
    panel = await (await speaking.newContext(PHONE)).newPage();
    emitter = await (await browser.newContext(PHONE)).newPage();
  }, 60_000);

  afterAll(async () => {
    await speaking?.close();
    await browser?.close();
    await server?.close();
  });

  const log = () => logOf(store);

  const state = () => stateOf(store);

  async function until<T>(what: string, look: () => Promise<T | undefined>, ms = 10_000): Promise<T> {
    const end = Date.now() + ms;
    for (;;) {
      const found = await look();
      if (found !== undefined) return found;
      if (Date.now() > end) throw new Error(`waited ${ms} ms for ${what}`);
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }

  async function boxOf(page: Page, place: string) {
    const box = await page.locator(place).first().boundingBox();
    if (!box) throw new Error(`not shown: ${place}`);
    return box;
  }

  it('pairs: the panel opens the job, the emitter types the code', async () => {
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B2');
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await panel.getByText('Edit the meter').click();
    await panel.getByLabel('Settles within').fill('0.4');
    await panel.getByLabel('Must stay steady for').fill('1');
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    await panel.locator('.square svg').waitFor();
    for (const size of [PHONE.viewport, { width: 1280, height: 800 }]) {
      await panel.setViewportSize(size);
      const square = await boxOf(panel, '.square');
      expect(Math.abs(square.width - square.height)).toBeLessThan(1);
      expect((await boxOf(panel, '.share')).y).toBeGreaterThanOrEqual(square.y + square.height);
    }
    await panel.setViewportSize(PHONE.viewport);
    expect(await panel.locator('.quick').count()).toBe(0);
    // It would lie over the square code.
    expect(await panel.locator('.number-pad').count()).toBe(0);
    const code = await panel.locator('.invite-code').textContent();

    await emitter.goto(`${server.url}/`);
    await emitter.getByText('At the emitter').click();
    await emitter.getByLabel('Join code').fill(code ?? '');
    await press(emitter, 'Join');
    await press(emitter, 'Understood');
    await press(emitter, 'Upright');
    await panel.getByText('Emitter here').waitFor();
    await emitter.getByText('Panel here').waitFor();
  });

  it('has figures for a thumb in a glove, which type into the box and send nothing by themselves', async () => {
    const box = panel.getByLabel('Type the reading, or anything you would say');
    const pad = panel.locator('.number-pad');
    for (const key of ['1', '0', '4']) await pad.getByRole('button', { name: key, exact: true }).tap();
    expect(await box.inputValue()).toBe('104');
    // The meter counts whole numbers, so there is nothing behind a point.
    expect(await pad.getByRole('button', { name: 'point' }).isDisabled()).toBe(true);
    for (let i = 0; i < 3; i += 1) await pad.getByRole('button', { name: 'Take back the last figure' }).tap();
    expect(await box.inputValue()).toBe('');
    const low = await pad
      .locator('button')
      .evaluateAll((all) => all.filter((each) => each.getBoundingClientRect().height < 56).length);
    expect(low).toBe(0);
    expect((await log()).some(({ fact }) => fact.type === 'said')).toBe(false);
  });

  it('leads the panel with the box for a number; the words for other readings are one tap away', async () => {
    expect(await panel.getByRole('button', { name: 'Steady', exact: true }).count()).toBe(0);
    await press(panel, 'More');
    await panel.getByRole('button', { name: 'Steady', exact: true }).waitFor();
    await press(panel, 'Fewer');
  });

  it.each([
    [320, 568],
    [844, 390],
    [390, 844],
  ])('cuts no order at %i×%i, also with text of double size', async (width, height) => {
    for (const page of [panel, emitter])
      for (const size of ['', '34px']) {
        await page.setViewportSize({ width, height });
        await page.evaluate((to) => {
          document.documentElement.style.fontSize = to;
        }, size);
        const cut = await page.locator('.face').evaluate((face) => face.scrollHeight - face.clientHeight);
        expect(cut).toBeLessThanOrEqual(1);
        const stage = await boxOf(page, '.face');
        const after = await boxOf(page, '.reading');
        if (after.x < stage.x + stage.width) expect(after.y).toBeGreaterThanOrEqual(stage.y + stage.height);
      }
    for (const page of [panel, emitter]) {
      await page.setViewportSize(PHONE.viewport);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '';
      });
    }
  });

  it('hears a reading spoken into the panel, and reads it back on both phones', async () => {
    const talk = panel.getByRole('button', { name: /Hold or tap to talk/ });
    await talk.waitFor({ timeout: 60_000 });
    await talk.click();
    await panel.waitForTimeout(2_500);
    await panel.getByRole('button', { name: /Listening/ }).click();
    const { text } = (await until('words from the microphone', async () =>
      (await log()).map(({ fact }) => fact).find((fact) => fact.type === 'said' && fact.via === 'voice'),
    )) as { text: string };
    expect(text).not.toBe('');
    const after = await until('a reading or a question about it', async () => {
      const { reading, query } = await state();
      return reading ?? query;
    });
    // What was heard may be right at once, or asked; it is never another number.
    if (after.type === 'query') await typeReading(panel, shown);
    const reading = await until('the reading', async () => (await state()).reading);
    expect(reading.reading).toMatchObject({ kind: 'value', value: Number(shown) });
    await emitter.locator('.reading-value', { hasText: shown }).waitFor();
  }, 90_000);

  it(
    'is coached to a proven alignment, and accepts it',
    async () => {
      let answered = -1;
      const accepted = await until(
        'the alignment to be accepted',
        async () => {
          const { instruction, accepted } = await state();
          if (accepted) return accepted;
          if (!instruction || instruction.seq === answered) return undefined;
          const { action } = instruction.advice;
          // The person on the ladder acts on what the screen shows, once it shows it.
          if (action.kind !== 'hold')
            await emitter.getByRole('heading', { name: instruction.show }).waitFor();
          // The panel sees that the order has reached the ladder, by a full disc and by words.
          if (instruction.advice.to === 'emitter') await panel.locator('.receipt.reached').waitFor();
          answered = instruction.seq;
          if (action.kind === 'offer-accept') await press(panel, 'Accept');
          else if (action.kind === 'read') await typeReading(panel, hall.meterShows());
          else if (action.kind !== 'hold') await hall.workAt(emitter, instruction);
          return undefined;
        },
        LONGEST_ALIGNMENT_MS,
      );
      expect(accepted.override).toBeUndefined();
      expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
    },
    LONGEST_ALIGNMENT_MS + 10_000,
  );

  it('leaves a whole log, which the supervisor can watch and cannot write', async () => {
    const entries = await log();
    const [job] = await store.jobs();
    expect(findFault(entries, await store.head(job?.job as string))).toBeUndefined();
    await press(panel, 'Menu');
    const url = await panel.getByLabel('Link to watch').inputValue();
    const desk = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await desk.goto(url);
    await desk
      .getByText(/accepted/i)
      .first()
      .waitFor();
    expect(await desk.getByRole('textbox').count()).toBe(0);
  });
});
