import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import { INDICATOR } from '../../src/model/profile.ts';
import { answersTo } from '../../src/phrases/answers.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
import { createBeamPair, type PairSpec, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { searchOf } from '../../src/visit/search.ts';
import { obeyOnOnePhone } from './alone-crew.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' };
const LONGEST_MS = 180_000;

/** Wide light near where it points: few turns. */
const calm = calmPair(INDICATOR, { horizontal: 4, vertical: -3 });
const WIDE: PairSpec = {
  ...calm,
  lagMs: 50,
  lobes: [{ ...calm.lobes[0], halfHorizontal: 14, halfVertical: 14 }],
};

const LOOKS = answersTo({ kind: 'read', as: 'trend' }, INDICATOR);

/** One person, one phone, eyes only: no number is read. */
describe.skipIf(!CHROMIUM)('one person alone sees an indicator from the ladder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-e2e-'));
  const hall = new Hall(createBeamPair(WIDE), createRng(11));
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

  it('is offered with what its evidence is worth, and asks for no meter', async () => {
    await phone.goto(`${server.url}/alone`);
    await phone.getByText('accepted on trends, no reading', { exact: false }).first().waitFor();
    await shot('page-alone');
    await phone.getByText('Begin with an indicator').click();
    await phone.getByLabel('Site').fill('Quayside Hall 3');
    await phone.getByLabel('Beam pair').fill('B2');
    expect(await phone.getByLabel('Meter', { exact: true }).count()).toBe(0);
    const gains = await phone.getByLabel('Gain', { exact: true }).locator('option').allTextContents();
    expect(gains).toEqual(['turned freely', 'in steps', 'cannot be set']);
    await phone.getByLabel('Settles within').fill('0.1');
    await phone.getByLabel('Must stay steady for').fill('0.5');
    await shot('page-open');
    await press(phone, 'Open the job');
    await phone.getByText('Look at the indicator only when you stand still', { exact: false }).waitFor();
    await shot('look-cautions');
    await press(phone, 'Understood');
    await press(phone, 'Upright');
  }, 90_000);

  it(
    'leads on one page to a proven alignment, and to an acceptance without a reading',
    async () => {
      await obeyOnOnePhone(
        {
          phone,
          hall,
          state,
          log,
          async read() {
            const does = hall.lightDoes();
            await press(phone, LOOKS.find(({ words }) => words === does)?.label ?? does);
          },
          onNew: async (kind) => shot(`look-${kind}`),
        },
        LONGEST_MS - 20_000,
      );
      const now = await state();
      expect(now.accepted?.reading).toEqual({ kind: 'seen' });
      expect(searchOf(now)?.accepted?.backed).toBe(true);
      expect(shortfallDb(hall.pair)).toBeLessThan(0.5);
      await shot('look-accepted');
    },
    LONGEST_MS,
  );

  it('says in the record that nobody read a number', async () => {
    const { watch } = await phone.evaluate(() =>
      JSON.parse(localStorage.getItem('ladderline.seat.panel') ?? '{}'),
    );
    const desk = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await desk.goto(`${server.url}/watch#${watch}`);
    await desk.getByText('accepted on trends, no reading', { exact: false }).first().waitFor();
    await desk.getByText('whether it lies in the band is not known', { exact: false }).first().waitFor();
    if (process.env.SHOTS) await desk.screenshot({ path: join(process.env.SHOTS, 'record.png') });
    await desk.close();
  }, 60_000);
});
