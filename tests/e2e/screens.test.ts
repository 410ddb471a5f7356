import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CHROMIUM, launch } from './chromium.ts';
import { type ScreenState, type Screens, screens } from './screens/states.ts';
import { faultsAt, keyboardFaults, open, resize, type Size, violations } from './screens/walk.ts';

/** The hardest size, and the usual one. `npm run bench:screens` takes all sizes, and makes pictures. */
const HARDEST: Size = { width: 320, height: 568, text: 2 };
const USUAL: Size = { width: 390, height: 844, text: 1 };
const ON_ITS_SIDE: Size = { width: 844, height: 390, text: 2 };

describe.skipIf(!CHROMIUM)('every screen', () => {
  let all: Screens;
  let browser: Browser;

  beforeAll(async () => {
    all = await screens();
    browser = await launch();
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await all?.close();
  });

  it.each([
    ['at the panel', /^panel/],
    ['at the emitter', /^emitter/],
    ['of one person alone', /^(?:alone|start-alone)/],
    ['of the start', /^(?:home|join|start|profiles|page)/],
    ['of practice', /^practice/],
    ['of a site', /^(?:board|new-site|plan|import|visit|report|record)/],
  ])(
    '%s shows all its words, and can be pressed, read aloud and reached by keys',
    async (_, names) => {
      const wanted = all.states.filter(({ name }) => names.test(name));
      expect(wanted.length).toBeGreaterThan(4);
      const found: string[] = [];
      // The other states of a page have the same controls, or fewer.
      const first = (state: ScreenState) => state === wanted.find(({ path }) => path === state.path);
      for (const state of wanted) {
        const page = await open(browser, all.server.url, state);
        for (const size of [HARDEST, ON_ITS_SIDE, USUAL]) {
          const at = `${state.name}, ${size.width}×${size.height} ${size.text * 100} %`;
          for (const { kind, what } of await faultsAt(page, state, size))
            found.push(`${at}: ${kind}: ${what}`);
        }
        await resize(page, USUAL);
        for (const what of await violations(page)) found.push(`${state.name}: axe: ${what}`);
        if (first(state))
          for (const what of await keyboardFaults(page)) found.push(`${state.name}: keyboard: ${what}`);
        await page.context().close();
      }
      expect(found).toEqual([]);
    },
    240_000,
  );
});

describe.skipIf(!CHROMIUM)('what looks for faults on a screen', () => {
  it.each([
    ['cut', '<button style="width:60px;overflow:hidden;white-space:nowrap">Too long for it</button>'],
    ['outside', '<p style="position:absolute;left:300px;white-space:nowrap">This line leaves the page</p>'],
    ['overlap', '<p>One line</p><p style="margin-top:-36px">Another line</p>'],
    ['small', '<button style="height:30px;width:90px;padding:0">Press</button>'],
    ['sideways', '<div style="width:500px;height:9px"></div>'],
  ])('finds a part that is planted: %s', async (kind, html) => {
    const browser = await launch();
    const page = await browser.newPage();
    await page.setContent(`<body style="margin:0;font-size:17px">${html}</body>`);
    const state = { name: 'planted', path: '', ready: 'body' };
    const kinds = (await faultsAt(page, state, HARDEST)).map((fault) => fault.kind);
    expect(kinds).toContain(kind);
    await browser.close();
  });
});
