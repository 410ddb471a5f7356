import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import { INDICATOR } from '../../src/model/profile.ts';
import { SHOW_ME } from '../../src/phrases/follow-indicator.ts';
import { NOT_TAUGHT } from '../../src/phrases/not-taught.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
import { createBeamPair, type PairSpec, readMeter, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { searchOf } from '../../src/visit/search.ts';
import { drawBoxRound, openWithTwoPhones } from './alone-crew.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { Hall, press } from './hall.ts';
import { logOf, stateOf } from './job-log.ts';
import {
  cameraSeesLamp,
  inTheHall,
  LAMP_BOX,
  microphoneHearsTone,
  toTheCamera,
} from './rendered-indicator.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };
const FASTER = 5;
const LONGEST_MS = 150_000;

/** Wide light near where it points: few turns. */
const calm = calmPair(INDICATOR, { horizontal: 4, vertical: -3 });
const WIDE: PairSpec = {
  ...calm,
  lagMs: 50,
  lobes: [{ ...calm.lobes[0], halfHorizontal: 14, halfVertical: 14 }],
};

/** What the lessons need: as weak as can be told, and as strong as it gets. dB. */
const TONE = { weak: -36, strong: -6 };
const LAMP = { weak: -14, strong: 0 };

/** One person alone: one page is the propped phone, which follows an indicator of a simulated beam; the other is on the ladder. */
class Alone {
  readonly hall = new Hall(createBeamPair(WIDE), createRng(11));
  readonly #rng = createRng(12);
  /** While it is taught the person sets what is shown; then the beam does. */
  shown: 'beam' | number | undefined;
  constructor(
    readonly store: Store,
    readonly server: RunningServer,
    readonly browser: Browser,
    readonly panel: Page,
    readonly emitter: Page,
    readonly range: typeof TONE,
  ) {}

  static async at(browser: Browser, range: typeof TONE): Promise<Alone> {
    const store = openDataFolder(mkdtempSync(join(tmpdir(), 'ladderline-e2e-')));
    const server = await startServer({ store });
    const page = async () => (await browser.newContext(PHONE)).newPage();
    return new Alone(store, server, browser, await page(), await page(), range);
  }

  readonly strength = (): number | undefined => {
    if (this.shown !== 'beam') return this.shown;
    const now = readMeter(this.hall.pair, Date.now(), this.#rng);
    if (now.kind === 'none') return undefined;
    const { min, max } = INDICATOR;
    const { weak, strong } = this.range;
    return now.kind === 'value' ? weak + ((strong - weak) * (now.value - min)) / (max - min) : strong;
  };

  log = () => logOf(this.store);
  state = () => stateOf(this.store);

  async open(sort: string): Promise<void> {
    await openWithTwoPhones(this.panel, this.emitter, this.server.url, 'indicator');
    // No voice here.
    await press(this.emitter, 'Talk hands-free from the start: on');
    await press(this.emitter, 'Understood');
    await press(this.emitter, 'Upright');
    await this.panel.getByRole('heading', { name: 'This phone follows the indicator' }).waitFor();
    await press(this.panel, sort);
  }

  async teach(name: string): Promise<void> {
    for (const [lesson, db] of [
      ['none', undefined],
      ['some', this.range.weak],
      ['plenty', this.range.strong],
    ] as const) {
      this.shown = db;
      await press(this.panel, SHOW_ME[lesson].key);
      if (lesson === 'some') await this.shot(this.panel, `${name}-learning`);
      await this.panel.locator('li', { hasText: SHOW_ME[lesson].title }).getByText('Learnt').waitFor();
    }
    await this.panel.getByText('It was taught', { exact: false }).waitFor();
    const key = await this.panel.getByRole('button', { name: 'Follow it' }).boundingBox();
    expect((key?.y ?? 0) + (key?.height ?? 0)).toBeLessThanOrEqual(PHONE.viewport.height);
    // Until it follows, the ladder is told that nothing is told.
    await this.emitter.getByRole('heading', { name: NOT_TAUGHT.show }).waitFor();
    await this.shot(this.panel, `${name}-taught`);
    this.shown = 'beam';
    await press(this.panel, 'Follow it');
    await this.saysOfItself('sensing');
    await this.emitter.getByRole('heading', { name: NOT_TAUGHT.show }).waitFor({ state: 'detached' });
  }

  async until<T>(what: string, look: () => Promise<T | undefined>, ms = 20_000): Promise<T> {
    for (const end = Date.now() + ms; ; await this.panel.waitForTimeout(50)) {
      const found = await look();
      if (found !== undefined) return found;
      if (Date.now() < end) continue;
      const last = (await this.log()).slice(-16).map(({ fact }) => JSON.stringify(fact).slice(0, 220));
      throw new Error(`waited ${ms} ms for ${what}; last in the log:\n${last.join('\n')}`);
    }
  }

  saysOfItself(wanted: string): Promise<string> {
    return this.until(`the propped phone to say: ${wanted}`, async () => {
      const states = (await this.log()).flatMap(({ fact }) => (fact.type === 'sensor' ? [fact.state] : []));
      return states.at(-1) === wanted ? wanted : undefined;
    });
  }

  async words(): Promise<string[]> {
    return (await this.log()).flatMap(({ fact }) => (fact.type === 'said' && fact.sensor ? [fact.text] : []));
  }

  shot(page: Page, name: string): Promise<unknown> | undefined {
    const path = process.env.SHOTS && join(process.env.SHOTS, `${name}.png`);
    return path ? page.screenshot({ path, fullPage: name.endsWith('-page') }) : undefined;
  }

  async close(): Promise<void> {
    await this.server.close();
  }
}

async function isAccessible(page: Page): Promise<void> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (window as unknown as { axe: typeof axe }).axe.run(document, {
      rules: { 'video-caption': { enabled: false } },
    }),
  );
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
}

describe.skipIf(!CHROMIUM)('a propped phone that listens to a tone, for a person alone', () => {
  let browser: Browser;
  let crew: Alone;
  beforeAll(async () => {
    browser = await launch();
    crew = await Alone.at(browser, TONE);
    await microphoneHearsTone(crew.panel, crew.strength, FASTER);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await crew?.close();
  });

  it('is taught none, some and plenty', async () => {
    await crew.open('A tone');
    await isAccessible(crew.panel);
    await crew.shot(crew.panel, 'tone-first-page');
    await crew.teach('tone');
    const [sensor] = (await crew.log()).flatMap(({ fact }) => (fact.type === 'sensor' ? [fact] : []));
    expect(sensor).toMatchObject({ sort: 'tone', state: 'sensing', taught: { feature: 'level' } });
    // As loud as it was played.
    expect(Math.abs((sensor?.taught?.some ?? 0) - TONE.weak)).toBeLessThan(1);
    expect(Math.abs((sensor?.taught?.plenty ?? 0) - TONE.strong)).toBeLessThan(1);
  }, 60_000);

  it('says when noise hides the tone or the microphone is off, tells nothing then, and goes on', async () => {
    await crew.until('a first word', async () => ((await crew.words()).length > 0 ? true : undefined));
    await isAccessible(crew.panel);
    await crew.shot(crew.panel, 'tone-telling');
    await inTheHall(crew.panel, { isOff: true });
    await crew.saysOfItself('silent');
    await crew.panel.getByText('Hears nothing!').waitFor();
    await crew.shot(crew.panel, 'tone-silent');
    const before = (await crew.words()).length;
    // No tone, and noise that could hide one: it must not be called nothing.
    crew.shown = undefined;
    await inTheHall(crew.panel, { isOff: false, noise: 0.1 });
    await crew.saysOfItself('noisy');
    expect((await crew.words()).length).toBe(before);
    crew.shown = 'beam';
    await inTheHall(crew.panel, { noise: 0.001 });
    await crew.saysOfItself('sensing');
  }, 60_000);

  it(
    'leads to a proven alignment and an acceptance; nobody touches it',
    async () => {
      let answered = -1;
      await crew.until(
        'the acceptance',
        async () => {
          const { instruction, accepted } = await crew.state();
          if (accepted) return true;
          if (!instruction || instruction.seq === answered) return undefined;
          const { action } = instruction.advice;
          if (action.kind === 'read' || action.kind === 'hold') return undefined;
          await crew.emitter.getByRole('heading', { name: instruction.show, exact: true }).waitFor();
          answered = instruction.seq;
          // Sooner it would be the second tap of a double one.
          await crew.emitter.waitForTimeout(400);
          if (action.kind === 'offer-accept') await press(crew.emitter, 'Accept');
          else await crew.hall.workAt(crew.emitter, instruction);
          return undefined;
        },
        LONGEST_MS,
      );
      const now = await crew.state();
      expect(searchOf(now)?.accepted?.backed).toBe(true);
      expect(shortfallDb(crew.hall.pair)).toBeLessThan(0.5);
      await crew.shot(crew.emitter, 'tone-ladder-accepted');
      expect(await crew.words()).toContain('no signal');
      const pressed = (await crew.log()).filter(
        ({ actor, fact }) => actor === 'panel' && fact.type === 'said' && fact.sensor === undefined,
      );
      expect(pressed).toEqual([]);
    },
    LONGEST_MS + 10_000,
  );
});

describe.skipIf(!CHROMIUM)('a propped phone that looks at a lamp, for a person alone', () => {
  let browser: Browser;
  let crew: Alone;
  beforeAll(async () => {
    browser = await launch();
    crew = await Alone.at(browser, LAMP);
    await cameraSeesLamp(crew.panel, crew.strength, FASTER);
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await crew?.close();
  });

  it('is taught, tells what the lamp does, and says that it was moved or is in the dark', async () => {
    await crew.open('A lamp');
    await drawBoxRound(crew.panel, LAMP_BOX);
    await isAccessible(crew.panel);
    await crew.shot(crew.panel, 'lamp-first-page');
    await crew.teach('lamp');
    await crew.until('a first word', async () => ((await crew.words()).length > 0 ? true : undefined));
    await crew.shot(crew.panel, 'lamp-telling');
    await toTheCamera(crew.panel, { x: 60 });
    await crew.saysOfItself('moved');
    await crew.shot(crew.panel, 'lamp-moved');
    await toTheCamera(crew.panel, { x: 0, light: 0.02 });
    await crew.saysOfItself('dark');
    await toTheCamera(crew.panel, { light: 1 });
    await crew.saysOfItself('sensing');
    await press(crew.panel, 'Stop watching');
    await crew.saysOfItself('ended');
  }, 90_000);
});
