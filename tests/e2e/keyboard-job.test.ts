import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall } from './hall.ts';
import { stateOf } from './job-log.ts';

const LONGEST_ALIGNMENT_MS = 150_000;
/** Nobody presses a key more often to get from one control to the next that is needed, forward or back. */
const MOST_TABS = 20;

/** What has the focus: its accessible name, and whether an outline of at least two pixels shows it. */
async function focused(page: Page): Promise<{ name: string; seen: boolean }> {
  return page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    if (!at || at === document.body) return { name: '', seen: true };
    const { outlineStyle, outlineWidth } = getComputedStyle(at);
    const name = at.getAttribute('aria-label') ?? at.labels?.[0]?.textContent ?? at.textContent ?? '';
    return {
      name: name.trim().replace(/\s+/g, ' '),
      seen: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
    };
  });
}

/** Tab after Tab, then the way back, as somebody does who sees only where the focus is. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const is = (text: string) => (typeof name === 'string' ? text === name : name.test(text));
  const passed = [await focused(page)];
  if (is(passed[0]?.name ?? '')) return;
  for (const [key, most] of [
    ['Tab', MOST_TABS],
    ['Shift+Tab', 2 * MOST_TABS],
  ] as const)
    for (let i = 0; i < most; i++) {
      await page.keyboard.press(key);
      const at = await focused(page);
      if (!at.seen) expect.fail(`the focus does not show on "${at.name}"`);
      if (is(at.name)) return;
      passed.push(at);
    }
  expect.fail(`"${name}" was not reached; passed: ${passed.map((at) => at.name).join(' | ')}`);
}

async function pressByKey(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Enter');
}

async function typeInto(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}

/** The words of the orders that differ, as American dictionaries have them; from memory. */
const inAmerican = (order: string): string =>
  order.replace('anticlockwise', 'counterclockwise').replace('metres', 'meters');

/** Two phones without a finger on their glass: every control by Tab, Enter and typing. WCAG 2.2, 2.1.1, 2.1.2, 2.4.7. */
describe.skipIf(!CHROMIUM)('a crew with keyboards only, one British and one American', () => {
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), createRng(7));
  const store = new MemoryStore();
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;

  beforeAll(async () => {
    server = await startServer({ store });
    browser = await launch();
    const open = async (locale: string) =>
      (await browser.newContext({ viewport: { width: 390, height: 844 }, locale })).newPage();
    panel = await open('en-GB');
    emitter = await open('en-US');
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  it('opens a job from the home page, and joins it', async () => {
    await panel.goto(`${server.url}/`);
    await pressByKey(panel, /^At the panel/);
    await panel.getByLabel('Site').waitFor();
    await typeInto(panel, 'Site', 'Quayside Hall 3');
    await typeInto(panel, 'Beam pair', 'B2');
    await tabTo(panel, 'Meter');
    await panel.keyboard.type('8-bit');
    await pressByKey(panel, /^Edit the meter/);
    await typeInto(panel, /^Settles within/, '0.4');
    await typeInto(panel, /^Must stay steady for/, '1');
    await pressByKey(panel, 'Open the job');
    await panel.getByRole('button', { name: 'Understood' }).waitFor();
    await pressByKey(panel, 'Understood');
    const code = await panel.locator('.invite-code').textContent();

    await emitter.goto(`${server.url}/`);
    await pressByKey(emitter, /^At the emitter/);
    await emitter.getByLabel('Join code').waitFor();
    await typeInto(emitter, 'Join code', code ?? '');
    await emitter.keyboard.press('Enter');
    await emitter.getByRole('button', { name: 'Understood' }).waitFor();
    await pressByKey(emitter, 'Understood');
    await emitter.getByRole('button', { name: 'Upright' }).waitFor();
    await pressByKey(emitter, 'Upright');
    await panel.getByText('Emitter here').waitFor();
  }, 60_000);

  it(
    'aligns the pair, proves it and accepts it',
    async () => {
      const end = Date.now() + LONGEST_ALIGNMENT_MS;
      let answered = -1;
      for (;;) {
        if (Date.now() > end) expect.fail('the alignment was not accepted in time');
        const { instruction, accepted } = await stateOf(store);
        if (accepted) break;
        if (instruction && instruction.seq !== answered) {
          const { action } = instruction.advice;
          answered = instruction.seq;
          if (action.kind !== 'hold')
            for (const [page, name] of [
              [panel, instruction.show],
              [emitter, inAmerican(instruction.show)],
            ] as const)
              await page.getByRole('heading', { name }).waitFor();
          if (action.kind === 'offer-accept') await pressByKey(panel, 'Accept');
          else if (action.kind === 'read') {
            await typeInto(panel, 'Type the reading, or anything you would say', hall.meterShows());
            await panel.keyboard.press('Enter');
          } else if (action.kind !== 'hold') await pressByKey(emitter, hall.work(instruction));
        }
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
    },
    LONGEST_ALIGNMENT_MS + 20_000,
  );
});
