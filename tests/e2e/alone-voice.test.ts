import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import { createBeamPair, readMeter, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { drawBox, openWithTwoPhones } from './alone-crew.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';
import { microphoneHears, speak } from './microphone.ts';
import { cameraSees } from './rendered-meter.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };
const PLACES = 3;
const LONGEST_MS = 580_000;
/** Not heard, or asked about: it is said again. */
const AGAIN_MS = 15_000;

/** From the first order on only a synthetic voice answers on the ladder, and only a camera reads the meter. */
describe.skipIf(!CHROMIUM)('one person alone, without a touch after the start', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-e2e-'));
  const rng = createRng(5);
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), rng);
  const displayed = () => {
    const { min, max } = DEMO_PAIR.meter;
    const shown = readMeter(hall.pair, Date.now(), rng);
    return String(shown.kind === 'value' ? shown.value : shown.kind === 'none' ? min : max);
  };
  let store: Store;
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;

  beforeAll(async () => {
    store = openDataFolder(folder);
    server = await startServer({ store });
    browser = await launch();
    panel = await (await browser.newContext(PHONE)).newPage();
    emitter = await (await browser.newContext(PHONE)).newPage();
    await cameraSees(panel, PLACES, displayed);
    await microphoneHears(emitter);
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const log = () => logOf(store);
  const state = () => stateOf(store);
  const say = (words: string) => speak(emitter, words);

  it(
    'is led from the opening to a proven and accepted pair',
    async () => {
      await openWithTwoPhones(panel, emitter, server.url);
      await emitter.getByText('Talk hands-free from the start: on').waitFor();
      await press(emitter, 'Understood');
      await press(emitter, 'Upright');
      await panel.locator('.watch-box').waitFor();
      await drawBox(panel, PLACES);
      await panel.getByRole('button', { name: /Yes, the meter shows/ }).click({ timeout: 60_000 });
      await emitter.getByText('Hands-free: just speak').waitFor({ timeout: 60_000 });
      const started = (await log()).length;

      let done = -1;
      let saidAt = 0;
      for (const end = Date.now() + LONGEST_MS - 100_000; ; await emitter.waitForTimeout(100)) {
        if (Date.now() > end)
          throw new Error(
            (await log())
              .slice(-12)
              .map(({ fact }) => JSON.stringify(fact).slice(0, 200))
              .join('\n'),
          );
        const { instruction, accepted, answeredBy } = await state();
        if (accepted) break;
        if (!instruction || answeredBy !== undefined) continue;
        const { action } = instruction.advice;
        if (action.kind === 'read' || action.kind === 'hold') continue;
        const isNew = instruction.seq !== done;
        if (!isNew && Date.now() - saidAt < AGAIN_MS) continue;
        if (isNew && action.kind !== 'offer-accept') hall.work(instruction);
        done = instruction.seq;
        // The signal before the order must be over: the phone does not listen to itself.
        await emitter.waitForTimeout(1_500);
        await say(action.kind === 'offer-accept' ? 'accept' : 'done');
        saidAt = Date.now();
      }
      expect((await state()).accepted?.override).toBeUndefined();
      expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
      for (const { fact } of (await log()).slice(started))
        if (fact.type === 'said') expect(fact.camera ? 'camera' : fact.via).toMatch(/^(camera|voice)$/);
    },
    LONGEST_MS,
  );
});
