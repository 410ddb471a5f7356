import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demo } from '../server/played-site.ts';
import { type AtDesk, atDesk } from './at-desk.ts';
import { CHROMIUM } from './chromium.ts';

const PHONE = { width: 390, height: 844 };

/** What a supervisor sees on a phone, before a finger moves. */
describe.skipIf(!CHROMIUM)('on a phone, without scrolling', () => {
  let site: AtDesk;
  let page: Page;

  beforeAll(async () => {
    site = await atDesk(demo);
    page = site.desk;
    await page.setViewportSize(PHONE);
  }, 60_000);
  afterAll(() => site?.leave());

  it('the board lists a pair that needs attention first', async () => {
    // While the records are read, their rows say nothing yet.
    await page.locator('.pair-row').first().waitFor();
    await page.getByText('are not read yet').waitFor({ state: 'detached' });
    expect(await page.locator('.pair-row .status-sign').first().textContent()).toContain('Needs attention');
  });

  it('a record shows its verdict and its first finding', async () => {
    await page.locator('.pair-row a.pair-open').first().click();
    await page.locator('.finding').first().waitFor();
    await page.locator('#charts-title').waitFor();
    const bottom = async (selector: string): Promise<number> => {
      const box = await page.locator(selector).first().boundingBox();
      return box ? box.y + box.height : Number.POSITIVE_INFINITY;
    };
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(await bottom('.verdict')).toBeLessThanOrEqual(PHONE.height);
    expect(await bottom('.finding')).toBeLessThanOrEqual(PHONE.height);
    const places = ['.verdict', '.finding', '.chart', '.counters', '.seal'].map(bottom);
    const order = await Promise.all(places);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });
});
