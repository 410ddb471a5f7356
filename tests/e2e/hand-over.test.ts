import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { demo, visitTo } from '../server/played-site.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';
import { press } from './hall.ts';

const { job } = visitTo('S3');

describe.skipIf(!CHROMIUM)('the hand-over, written on a small phone', () => {
  let site: AtDesk;
  let phone: Page;

  beforeAll(async () => {
    site = await atDesk(demo);
    phone = await site.browser.newPage({ viewport: { width: 320, height: 568 } });
    await phone.goto(`${site.server.url}/site/pair#${site.keys.desk}/${job}`);
    await phone.getByRole('heading', { name: 'Hand-over' }).waitFor();
  }, 60_000);
  afterAll(() => site?.leave());

  const written = async () => {
    const entries = await site.store.read(job, -1, 10_000);
    return entries.reduce(fold, EMPTY).handOver;
  };
  const open = (name: string) => phone.locator('.hand-over summary', { hasText: name }).click();
  const picture = async (name: string) => {
    if (process.env.PICTURES) await phone.screenshot({ path: `${process.env.PICTURES}/${name}.png` });
  };

  it('begins empty beside what was read last and planned, and takes what is typed', async () => {
    await open('As left');
    expect(await phone.getByLabel('Signal', { exact: true }).inputValue()).toBe('');
    expect(await phone.getByLabel('Alarm delay').inputValue()).toBe('');
    expect(await phone.getByText('Last reading: ').count()).toBe(1);
    expect(await phone.getByText('Planned: ').count()).toBeGreaterThan(2);
    expect(await phone.getByRole('button', { name: 'Write it down as left' }).isDisabled()).toBe(true);
    await phone.getByLabel('Serial number of the receiver').fill('R-0012');
    await phone.getByLabel('Fault delay').fill('soon');
    expect(await phone.getByRole('button', { name: 'Write it down as left' }).isDisabled()).toBe(true);
    await picture('left-wrong');
    await phone.getByLabel('Fault delay').fill('599');
    await press(phone, 'Write it down as left');
    await phone.locator('.hand-over dd', { hasText: /599 s \(planned: / }).waitFor();
    expect((await written()).asLeft).toMatchObject({ receiverSerial: 'R-0012', faultDelay: 599 });
    await open('As left');
    await picture('left');
  });

  it('takes conditions, a variation and what is next', async () => {
    await open('Conditions');
    await phone.getByLabel('Sun').selectOption('near');
    await phone.getByLabel('dust in the air').check();
    await picture('conditions');
    await press(phone, 'Write the conditions down');
    await phone.locator('.hand-over dd', { hasText: 'sun near the receiver, dust in the air' }).waitFor();
    await open('A variation agreed');
    await phone.getByLabel('What is otherwise').fill('No access to the roof side');
    await phone.getByLabel('Agreed with').fill('W. Example');
    await press(phone, 'Write the variation down');
    await phone.locator('.hand-over dd', { hasText: '(agreed with W. Example)' }).waitFor();
    await open('To be done next');
    await phone.getByLabel('What', { exact: true }).fill('Clean and test');
    await phone.getByLabel('By', { exact: true }).fill('2027-11-26');
    await press(phone, 'Write down what is next');
    await phone.locator('.hand-over dd', { hasText: 'Clean and test, by 2027-11-26' }).waitFor();
    const { conditions, variations, nextDue } = await written();
    expect(conditions).toMatchObject({ sun: 'near', building: ['dusty'] });
    expect(variations).toHaveLength(1);
    expect(nextDue).toMatchObject({ on: '2027-11-26' });
    await phone.locator('#hand-over-title').scrollIntoViewIfNeeded();
    await picture('written');
  });

  it('is not wider than the phone, and every control is tall enough for a glove', async () => {
    const wide = await phone.evaluate(() => document.documentElement.scrollWidth > innerWidth);
    expect(wide).toBe(false);
    const low = await phone
      .locator('.hand-over :is(button, summary, select, input:not([type=checkbox]), .tick)')
      .evaluateAll((all) =>
        all
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 44)
          .map((each) => each.outerHTML),
      );
    expect(low).toEqual([]);
    if (!process.env.PICTURES) return;
    for (const [width, height] of [
      [390, 844],
      [1280, 800],
    ] as const) {
      await phone.setViewportSize({ width, height });
      await phone.locator('#hand-over-title').scrollIntoViewIfNeeded();
      await picture(`written-${width}`);
    }
  });

  it('can only be read with the read-only link', async () => {
    const reader = await site.browser.newPage();
    await reader.goto(`${site.server.url}/site/pair#${site.keys.watch}/${job}`);
    await reader.getByRole('heading', { name: 'Hand-over' }).waitFor();
    expect(await reader.locator('.hand-over form').count()).toBe(0);
    await reader.close();
  });
});
