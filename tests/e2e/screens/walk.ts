import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { type Fault, faultsOnPage, keysInSight, orderInSight } from './faults.ts';
import type { ScreenState } from './states.ts';

export interface Size {
  width: number;
  height: number;
  /** Of the text, 1 or 2. */
  text: number;
}

/** The sizes that the program must fit: the smallest phone, a usual one, the same on its side, and a desk. */
export const SIZES: readonly Size[] = [
  [320, 568],
  [390, 844],
  [844, 390],
  [1280, 800],
].flatMap(([width = 0, height = 0]) => [1, 2].map((text) => ({ width, height, text })));

/** The least that a finger can hit. WCAG 2.2, success criterion 2.5.5 (target size, enhanced): 44 CSS pixels. */
const TOUCH = 44;

const ROOT_PX = 17;

/** `locale`: what the browser says that its person reads; the page is then in that language. */
export async function open(
  browser: Browser,
  url: string,
  state: ScreenState,
  { dark = false, locale }: { dark?: boolean; locale?: string | undefined } = {},
): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    serviceWorkers: 'block',
    reducedMotion: 'reduce',
    colorScheme: dark ? 'dark' : 'light',
    ...(locale && { locale }),
  });
  await context.addInitScript((kept) => {
    for (const [key, value] of Object.entries(kept))
      if (localStorage.getItem(`ladderline.${key}`) === null)
        localStorage.setItem(`ladderline.${key}`, JSON.stringify(value));
  }, state.kept ?? {});
  // What runs the benchmarks marks every function with a helper that the page does not have.
  await context.addInitScript('globalThis.__name = (named) => named');
  const page = await context.newPage();
  await page.goto(`${url}${state.path}`);
  await page.locator(state.ready).first().waitFor({ timeout: 15_000 });
  await state.go?.(page);
  return page;
}

export async function resize(page: Page, { width, height, text }: Size): Promise<void> {
  await page.setViewportSize({ width, height });
  await page.evaluate(
    (px) => {
      document.documentElement.style.fontSize = px;
    },
    text === 1 ? '' : `${ROOT_PX * text}px`,
  );
  // Charts are drawn again for their new width.
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
}

/** A form is ended with it: its page is moved under it. */
const ENDS = '.foot .main';
/** What this seat is asked for. */
const ANSWERS = ['.answers .answer-main', '.panel-answers .main', '.told-box .main'];
const FIGURES = ':is(.number-pad button, .number-pad ~ .main)';
/** On a usual phone all of the ladder's, and what is talked into there. */
const OTHERS = '.ladder-keys button, .emitter .talk-button';

/**
 * The keys that are in sight before a finger moves. On a small phone the figures are below a long order that does not ask for
 * a reading, and in large text a seat's order comes before all of them.
 */
function keysOf({ height, text }: Size): string {
  if (text > 1 || height < 500) return ENDS;
  return height < 800
    ? [ENDS, ...ANSWERS, `main:has([data-kind="read"]:not(.face-other)) ${FIGURES}`].join()
    : [ENDS, ...ANSWERS, FIGURES, OTHERS].join();
}

export async function faultsAt(page: Page, state: ScreenState, size: Size): Promise<Fault[]> {
  await resize(page, size);
  const all = await page.evaluate(faultsOnPage, TOUCH);
  const isMoved = state.paper && size.width < 390 && size.text > 1;
  const faults = isMoved ? all.filter(({ kind }) => kind !== 'sideways') : all;
  const hidden = [
    ...(state.order ? await page.evaluate(orderInSight) : []),
    ...(await page.evaluate(keysInSight, keysOf(size))),
  ];
  return [
    ...faults,
    ...hidden.map((what) => ({ kind: 'outside' as const, what: `below the fold: ${what}` })),
  ];
}

/** What axe-core finds, at the level of WCAG 2.2 AA and its best practices. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
    }),
  );
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
}

/** Controls that the tabulator key does not reach, and those that do not show that they have the focus. */
export async function keyboardFaults(page: Page): Promise<string[]> {
  const marked = await page.evaluate(() => {
    const root = document.querySelector('dialog[open]') ?? document.body;
    const pressed = 'button, a[href], input, select, textarea, summary';
    let count = 0;
    for (const element of root.querySelectorAll<HTMLElement>(pressed)) {
      const shown = element.checkVisibility({ visibilityProperty: true });
      // Of several radio buttons of one name the key reaches one; the arrows move among them.
      const other = element.matches(
        '[type="radio"]:not(:checked), :disabled, [tabindex="-1"], [type="hidden"]',
      );
      if (shown && !other) element.dataset.tabbed = String(count++);
    }
    (document.activeElement as HTMLElement | null)?.blur();
    return count;
  });
  const faults: string[] = [];
  const reached = new Set<string>();
  for (let i = 0; i < marked * 2 + 10 && reached.size < marked; i++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      if (!element || element === document.body) return undefined;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const seen = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
      return { id: element.dataset.tabbed, seen, what: element.outerHTML.slice(0, 80) };
    });
    if (!at) continue;
    if (at.id !== undefined && !reached.has(at.id) && !at.seen) faults.push(`no visible focus: ${at.what}`);
    if (at.id !== undefined) reached.add(at.id);
  }
  const missed = await page.evaluate(
    (got) =>
      [...document.querySelectorAll<HTMLElement>('[data-tabbed]')]
        .filter((element) => !got.includes(element.dataset.tabbed ?? ''))
        .map((element) => element.outerHTML.slice(0, 100)),
    [...reached],
  );
  return [...faults, ...missed.map((what) => `not reached: ${what}`)];
}
