import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demo } from '../server/played-site.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';
import { press } from './hall.ts';

/** A signed pair of the demo, and the number that its visit left. */
const PAIR = 'N1';
const left = demo.visits
  .filter(({ pair }) => pair === PAIR)
  .flatMap(({ entries }) =>
    entries.flatMap(({ fact }) =>
      fact.type === 'reading' && fact.reading.kind === 'value' ? [String(fact.reading.value)] : [],
    ),
  )
  .at(-1) as string;

describe.skipIf(!CHROMIUM)('a periodic visit, on two phones', () => {
  let site: AtDesk;
  let panel: Page;
  let emitter: Page;

  const phone = () =>
    site.browser.newContext({ viewport: { width: 390, height: 844 } }).then((context) => context.newPage());
  const type = async (words: string) => {
    const letters = panel.getByRole('button', { name: 'abc', exact: true });
    if (await letters.isVisible()) await letters.click();
    await panel.locator('input').last().fill(words);
    await press(panel, 'Send');
  };
  const order = (on: Page, words: string) => on.getByText(words).first().waitFor();

  beforeAll(async () => {
    site = await atDesk(demo);
    panel = await phone();
    emitter = await phone();
    await panel.goto(`${site.server.url}/site/plan#${site.keys.desk}/${PAIR}`);
    await panel.getByLabel('What for').selectOption('periodic');
    await panel.getByLabel('Your name').fill('P. Example');
    await press(panel, 'Begin a visit here');
    await press(panel, 'Understood');
    const link = await panel
      .locator('code, input')
      .evaluateAll(
        (all) =>
          all
            .map((each) => (each instanceof HTMLInputElement ? each.value : each.textContent) ?? '')
            .find((text) => text.includes('/join#')) ?? '',
      );
    await emitter.goto(link);
    await emitter.getByLabel('Your name').fill('E. Example');
    await press(emitter, 'Join');
    await press(emitter, 'Understood');
    await press(emitter, 'Upright');
  }, 90_000);
  afterAll(() => site?.leave());

  it('reads, cleans, compares and keeps the alignment, without a turn', async () => {
    for (const words of ['yes', 'told the control room', 'yes', 'yes', 'yes']) await type(words);
    await order(panel, 'Read the meter as found');
    await type(left);
    await order(emitter, 'Windows of both units cleaned?');
    await press(emitter, 'Yes');
    // Settled, read, held and read again.
    const offered = panel.getByText('As left last').first();
    const asked = panel.getByText(/^Read the meter|^Path clear: read the meter/).first();
    await expect
      .poll(
        async () => {
          if (!(await offered.isVisible()) && (await asked.isVisible())) await type(left);
          return offered.isVisible();
        },
        { timeout: 60_000, interval: 500 },
      )
      .toBe(true);
    await order(emitter, 'As left last: say "accept"');
    await type('accept');
    await order(panel, 'Kept as the last visit left it');
  }, 120_000);
});
