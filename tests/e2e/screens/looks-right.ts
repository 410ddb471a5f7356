import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { expect } from 'vitest';
import { faultsAt, resize, type Size, violations } from './walk.ts';

const HARDEST: Size = { width: 320, height: 568, text: 2 };
const USUAL: Size = { width: 390, height: 844, text: 1 };
const DESK: Size = { width: 1280, height: 800, text: 1 };

/** A phone of its own: nothing that another one keeps. `locale`: what its person reads. */
export async function phoneIn(browser: Browser, locale?: string): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: USUAL.width, height: USUAL.height },
    hasTouch: true,
    serviceWorkers: 'block',
    reducedMotion: 'reduce',
    ...(locale && { locale }),
  });
  return context.newPage();
}

/** On a small phone with text of double size, on a usual one and at a desk nothing is cut, covered or unreadable; with SHOTS, pictures. */
export async function looksRight(page: Page, name: string): Promise<void> {
  const state = { name, path: '', ready: 'body' };
  const found: string[] = [];
  for (const size of [HARDEST, USUAL, DESK]) {
    for (const { kind, what } of await faultsAt(page, state, size))
      found.push(`${name}, ${size.width}: ${kind}: ${what}`);
    if (process.env.SHOTS)
      await page.screenshot({ path: join(process.env.SHOTS, `${name}-${size.width}.png`), fullPage: true });
  }
  found.push(...(await violations(page)).map((what) => `${name}: axe: ${what}`));
  await resize(page, USUAL);
  expect(found).toEqual([]);
}
