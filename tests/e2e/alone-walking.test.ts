import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { obeyOnOnePhone } from './alone-crew.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' };
const LONGEST_MS = 300_000;

/** One person, one phone: the same page turns, is read to, and accepts. */
describe.skipIf(!CHROMIUM)('one person alone walks to the meter', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-e2e-'));
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), createRng(11));
  let store: Store;
  let server: RunningServer;
  let browser: Browser;
  let phone: Page;

  beforeAll(async () => {
    store = openDataFolder(folder);
    server = await startServer({ store });
    browser = await launch();
    phone = await (await browser.newContext(PHONE)).newPage();
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const log = () => logOf(store);
  const state = () => stateOf(store);
  const shot = (name: string) =>
    process.env.SHOTS
      ? phone.screenshot({ path: join(process.env.SHOTS, `${name}.png`), fullPage: name.startsWith('page') })
      : undefined;

  it('is offered on the first page, with what its evidence is worth', async () => {
    await phone.goto(`${server.url}/`);
    await shot('page-home');
    await phone.getByText('I am alone').click();
    await phone.getByText('What its evidence is worth').first().waitFor();
    await phone.getByLabel('Ask after so many minutes of silence').fill('10');
    await phone
      .getByLabel('What was agreed: who to call, and where you are')
      .fill('Call the gate. Hall 3, east ladder.');
    await phone.getByLabel('Number to call or text').fill('01632 960 123');
    await shot('page-alone');
    await phone.getByText('Begin with one phone').click();
    await phone.getByLabel('Site').fill('Quayside Hall 3');
    await phone.getByLabel('Beam pair').fill('B2');
    await phone.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await phone.getByText('Edit the meter').click();
    await phone.getByLabel('Settles within').fill('0.4');
    await phone.getByLabel('Must stay steady for').fill('1');
    await press(phone, 'Open the job');
    await phone.getByText('Nobody holds the ladder', { exact: false }).waitFor();
    await shot('walk-cautions');
    await press(phone, 'Talk hands-free from the start: on');
    await press(phone, 'Understood');
    await press(phone, 'Upright');
    const { seats } = await state();
    expect([seats.panel?.phone, seats.emitter?.phone]).toEqual([seats.panel?.phone, seats.panel?.phone]);
  }, 90_000);

  it(
    'leads on one page to a proven alignment, and to an acceptance',
    async () => {
      await obeyOnOnePhone(
        {
          phone,
          hall,
          state,
          log,
          async read() {
            const text = hall.meterShows();
            if (/\d/.test(text)) {
              await phone.getByLabel('Type the reading, or anything you would say').fill(text);
              await press(phone, 'Send');
            } else await press(phone, text === 'saturated' ? 'Saturated' : 'No signal');
          },
          onNew: async (kind) => shot(`walk-${kind}`),
        },
        LONGEST_MS - 20_000,
      );
      const { accepted } = await state();
      expect(accepted?.override).toBeUndefined();
      expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
      await shot('walk-accepted');
    },
    LONGEST_MS,
  );

  it('says in the record that one person was alone', async () => {
    const { watch } = await phone.evaluate(() =>
      JSON.parse(localStorage.getItem('ladderline.seat.panel') ?? '{}'),
    );
    const desk = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await desk.goto(`${server.url}/watch#${watch}`);
    await desk.getByText('One person did this alone', { exact: false }).first().waitFor();
    if (process.env.SHOTS) await desk.screenshot({ path: join(process.env.SHOTS, 'record.png') });
    await desk.close();
  }, 60_000);
});
