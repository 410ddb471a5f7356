import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_PAIR } from '../../server/demo/site.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import { SURE } from '../../src/sight/watch.ts';
import { createBeamPair, readMeter, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { drawBox, openWithTwoPhones } from './alone-crew.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';
import { cameraSees, type RenderedMeter } from './rendered-meter.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };
const PLACES = 3;
const LONGEST_MS = 240_000;

/**
 * One person alone: one page is the propped phone, whose camera sees a drawn display of a simulated beam; the other is on the
 * ladder.
 */
describe.skipIf(!CHROMIUM)('a phone watches the meter for a person alone', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-e2e-'));
  const rng = createRng(7);
  const hall = new Hall(createBeamPair({ ...DEMO_PAIR, lagMs: 50 }), rng);
  /** All that the display has shown: its last digit flickers, as real ones do. */
  const displays = new Set<string>();
  /** At either end a display shows the end, as real ones do. */
  const displayed = () => {
    const { min, max } = DEMO_PAIR.meter;
    const shown = readMeter(hall.pair, Date.now(), rng);
    const text = String(shown.kind === 'value' ? shown.value : shown.kind === 'none' ? min : max);
    displays.add(text);
    return text;
  };
  let store: Store;
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;
  let emitter: Page;
  let meter: RenderedMeter;

  beforeAll(async () => {
    store = openDataFolder(folder);
    server = await startServer({ store });
    browser = await launch();
    panel = await (await browser.newContext(PHONE)).newPage();
    emitter = await (await browser.newContext(PHONE)).newPage();
    meter = await cameraSees(panel, PLACES, displayed);
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const log = () => logOf(store);
  const state = () => stateOf(store);

  async function until<T>(what: string, look: () => Promise<T | undefined>, ms = 15_000): Promise<T> {
    const end = Date.now() + ms;
    for (;;) {
      const found = await look();
      if (found !== undefined) return found;
      if (Date.now() > end) {
        const last = (await log())
          .slice(-20)
          .map(({ at, fact }) => `${at % 1e6} ${JSON.stringify(fact).slice(0, 160)}`);
        throw new Error(`waited ${ms} ms for ${what}; last in the log:\n${last.join('\n')}`);
      }
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  const saysOfItself = (wanted: string) =>
    until(`the watching phone to say: ${wanted}`, async () => {
      const states = (await log()).flatMap(({ fact }) => (fact.type === 'camera' ? [fact.state] : []));
      return states.at(-1) === wanted ? wanted : undefined;
    });
  const shot = (page: Page, name: string) =>
    process.env.SHOTS ? page.screenshot({ path: join(process.env.SHOTS, `${name}.png`) }) : undefined;

  async function isAccessible(page: Page): Promise<void> {
    await page.evaluate(axe.source);
    const { violations } = await page.evaluate(() =>
      (window as unknown as { axe: typeof axe }).axe.run(document, {
        rules: { 'video-caption': { enabled: false } },
      }),
    );
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  }

  it('is opened from the first page, and looks at once when the other phone has joined', async () => {
    await openWithTwoPhones(panel, emitter, server.url);
    // No voice here: the fake microphone of this browser only beeps.
    await press(emitter, 'Talk hands-free from the start: on');
    await press(emitter, 'Understood');
    await press(emitter, 'Upright');
    await panel.locator('.watch-box').waitFor();
    await shot(panel, 'box-first');
  });

  it('takes a box that a finger draws, and asks once whether the number is right', async () => {
    await drawBox(panel, PLACES);
    for (const corner of await panel.locator('.watch-corner').all()) {
      const size = await corner.boundingBox();
      expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(44);
    }
    const yes = panel.getByRole('button', { name: /Yes, the meter shows/ });
    await yes.waitFor({ timeout: 30_000 });
    await shot(panel, 'box-confirm');
    await isAccessible(panel);
    expect([...displays].map((text) => `Yes, the meter shows ${text}`)).toContain(await yes.textContent());
    await yes.click();
    await saysOfItself('watching');
  }, 60_000);

  it('says on the ladder that it was moved or is in the dark, tells no number then, and goes on after it', async () => {
    const readings = async () => (await log()).filter(({ fact }) => fact.type === 'reading').length;
    await until('the first reading', async () => ((await readings()) > 0 ? true : undefined));
    await shot(panel, 'watching');
    await isAccessible(panel);
    await meter.movedBy(60);
    await saysOfItself('moved');
    await panel.getByText('Moved!').waitFor();
    await shot(panel, 'moved');
    await meter.movedBy(0);
    await saysOfItself('watching');
    const before = await readings();
    await meter.light(0.02);
    await saysOfItself('dark');
    await shot(panel, 'dark');
    expect(await readings()).toBe(before);
    await meter.light(1);
    await saysOfItself('watching');
  }, 60_000);

  it(
    'reads the meter to a proven alignment; nobody touches it',
    async () => {
      let answered = -1;
      await until(
        'all evidence for an acceptance',
        async () => {
          const { instruction } = await state();
          if (!instruction || instruction.seq === answered) return undefined;
          const { action } = instruction.advice;
          if (action.kind === 'offer-accept') return instruction;
          if (action.kind === 'read' || action.kind === 'hold') return undefined;
          await emitter.getByRole('heading', { name: instruction.show }).waitFor();
          answered = instruction.seq;
          await hall.workAt(emitter, instruction);
          return undefined;
        },
        LONGEST_MS,
      );
      expect(shortfallDb(hall.pair)).toBeLessThan(0.2);
      await shot(panel, 'proven');
      const said = (await log()).flatMap(({ fact }) =>
        fact.type === 'said' && fact.seat === 'panel' ? [fact] : [],
      );
      expect(said.length).toBeGreaterThan(5);
      for (const { camera } of said) expect(camera?.belief).toBeGreaterThanOrEqual(SURE);
    },
    LONGEST_MS + 10_000,
  );

  it('is proven on the ladder: the person there accepts, and the propped phone was not touched', async () => {
    await shot(emitter, 'ladder-accept');
    await press(emitter, 'Accept');
    const { override } = await until('the acceptance', async () => (await state()).accepted);
    expect(override).toBeUndefined();
    const pressed = (await log()).filter(
      ({ actor, fact }) => actor === 'panel' && fact.type === 'said' && fact.camera === undefined,
    );
    expect(pressed).toEqual([]);
  });

  it('says that it ends, and gives the seat back', async () => {
    await press(panel, 'Stop watching');
    await saysOfItself('ended');
    await panel.getByLabel('Type the reading, or anything you would say').waitFor();
  });
});
