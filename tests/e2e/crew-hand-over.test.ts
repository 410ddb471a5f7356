import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Seat } from '../../src/model/facts.ts';
import { STEPS_OF_EVERY_VISIT } from '../../src/phrases/steps.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { tokenOf, unsignedWithSteps, visitTo } from '../server/played-site.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';
import { press } from './hall.ts';

const { job } = visitTo('S3');

describe.skipIf(!CHROMIUM)('the hand-over, written on the phones of the crew', () => {
  let site: AtDesk;
  let panel: Page;

  const phoneAt = async (seat: Seat): Promise<Page> => {
    const saved = { seat, job, token: await tokenOf(site.store, job, seat) };
    const phone = await site.browser.newPage({ viewport: { width: 390, height: 844 } });
    await phone.addInitScript(
      ([key, text, cautions]) => {
        localStorage.setItem(key as string, text as string);
        localStorage.setItem(cautions as string, 'true');
      },
      [`ladderline.seat.${seat}`, JSON.stringify(saved), `ladderline.cautions.${job}.${seat}`],
    );
    await phone.goto(`${site.server.url}/${seat}`);
    await press(phone, 'Menu');
    await press(phone, 'Hand-over and test steps');
    return phone;
  };
  const written = async () => (await site.store.read(job, -1, 10_000)).reduce(fold, EMPTY);
  const picture = async (phone: Page, name: string) => {
    if (process.env.PICTURES) await phone.screenshot({ path: `${process.env.PICTURES}/${name}.png` });
  };
  const fits = async (phone: Page) => {
    expect(await phone.evaluate(() => document.documentElement.scrollWidth > innerWidth)).toBe(false);
    const low = await phone
      .locator('.sheet :is(button, input:not([type=checkbox]), .hand-over-tick)')
      .evaluateAll((all) =>
        all
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 44)
          .map((each) => each.outerHTML),
      );
    expect(low).toEqual([]);
  };

  beforeAll(async () => {
    site = await atDesk(unsignedWithSteps('S3', STEPS_OF_EVERY_VISIT));
    panel = await phoneAt('panel');
  }, 60_000);
  afterAll(() => site?.leave());

  it('lists all that can be written, and goes through it one thing at a time', async () => {
    await panel.locator('.hand-over-item', { hasText: 'Serial number of the receiver' }).waitFor();
    await fits(panel);
    await picture(panel, 'crew-list');
    await panel.locator('.hand-over-item', { hasText: 'Serial number of the receiver' }).click();
    expect(await panel.locator('.sheet input').count()).toBe(1);
    expect(await panel.getByRole('button', { name: 'Write it down' }).isDisabled()).toBe(true);
    await panel.getByLabel('Serial number of the receiver').fill('R-0012');
    await press(panel, 'Write it down');
    await panel.getByLabel('Firmware').waitFor();
    await fits(panel);
    await picture(panel, 'crew-value');
    await press(panel, 'Not known, go on');
    await panel.getByLabel('Position of the emitter').waitFor();
    await press(panel, 'All of the hand-over');
    await panel.locator('.hand-over-item small', { hasText: /^R-0012$/ }).waitFor();
    expect((await written()).handOver.asLeft).toMatchObject({ receiverSerial: 'R-0012' });
  });

  it('takes no figure that cannot be, and says so', async () => {
    await panel.locator('.hand-over-item', { hasText: 'Fault delay' }).click();
    await panel.getByLabel('Fault delay').fill('soon');
    expect(await panel.getByRole('alert').count()).toBeGreaterThan(0);
    expect(await panel.getByRole('button', { name: 'Write it down' }).isDisabled()).toBe(true);
    await picture(panel, 'crew-wrong');
    await press(panel, 'All of the hand-over');
  });

  it('keeps one condition when another is written', async () => {
    await panel.locator('.hand-over-item', { hasText: 'Sun' }).click();
    await press(panel, 'sun near the receiver');
    await panel.getByLabel('Weather').fill('Rain');
    await press(panel, 'Write it down');
    await panel.getByLabel('dust in the air').check();
    await fits(panel);
    await picture(panel, 'crew-building');
    await press(panel, 'Write it down');
    await panel.getByLabel('To be done next').waitFor();
    await picture(panel, 'crew-next');
    await press(panel, 'All of the hand-over');
    await panel.locator('.hand-over-item small', { hasText: /^dust in the air$/ }).waitFor();
    expect((await written()).handOver.conditions).toMatchObject({
      sun: 'near',
      weather: 'Rain',
      building: ['dusty'],
    });
  });

  it('answers a step from the emitter', async () => {
    const emitter = await phoneAt('emitter');
    await emitter.locator('.hand-over-item').first().click();
    await fits(emitter);
    await picture(emitter, 'crew-step');
    await emitter.getByRole('button', { name: 'FAILED', exact: true }).dblclick();
    await emitter.getByText('Battery of the panel disconnected').waitFor();
    await press(emitter, 'All of the hand-over');
    await emitter.locator('.hand-over-item small', { hasText: /^FAILED$/ }).waitFor();
    // The second tap of the double tap has answered nothing.
    expect((await written()).handOver.steps).toEqual({
      'Mains of the panel switched off': expect.objectContaining({ result: 'failed' }),
    });
  });
});
