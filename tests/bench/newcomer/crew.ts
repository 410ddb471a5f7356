import type { Page } from 'playwright-core';
import { startServer } from '../../../server/start.ts';
import { MemoryStore } from '../../../server/store/memory.ts';
import { PAD_MINUS, PAD_POINT } from '../../../src/phrases/buttons.ts';
import { readingText } from '../../../src/phrases/readings.ts';
import {
  block,
  createBeamPair,
  gainFor,
  type PairSpec,
  reAim,
  readMeter,
  setGain,
  shortfallDb,
  turn,
} from '../../../src/simulator/pair.ts';
import type { Rng } from '../../../src/simulator/rng.ts';
import { stateOf } from '../../e2e/job-log.ts';
import { Thumb } from './thumb.ts';

export interface Walk {
  readonly panel: Thumb;
  readonly emitter: Thumb;
  /** From the home page to both phones at their first order, to the acceptance, and how much of it was "hold". */
  readonly seconds: { readonly ready: number; readonly accepted: number; readonly held: number };
  /** What the hands did. */
  readonly turns: number;
  readonly gains: number;
  readonly aims: number;
  readonly covers: number;
  readonly readings: number;
  readonly questions: number;
  /** Of the accepted pair, dB. */
  readonly shortfall: number;
}

const LONGEST_MS = 900_000;
/** From the sound of an order to a look at the screen: time enough for the screen to change. */
const LOOKS_MS = 100;

/** What a phone shows its person, and nothing else. */
interface Shown {
  words: string;
  /** Not in outline: it is asked of whoever holds this phone. */
  mine: boolean;
}

/** Two people who have never seen it: they read the orders off their own screens and do what these say, at once. */
export class Crew {
  readonly panel: Thumb;
  readonly emitter: Thumb;
  #pair;
  /** The hall's own clock: its fog and drift begin with the walk. */
  readonly #from = Date.now();
  readonly did = { turns: 0, gains: 0, aims: 0, covers: 0, readings: 0, questions: 0 };

  constructor(
    panel: Page,
    emitter: Page,
    readonly spec: PairSpec,
    readonly rng: Rng,
  ) {
    this.panel = new Thumb(panel);
    this.emitter = new Thumb(emitter);
    this.#pair = createBeamPair(spec);
  }

  get #now(): number {
    return Date.now() - this.#from;
  }

  async walk(): Promise<Walk> {
    const store = new MemoryStore();
    const server = await startServer({ store });
    const since = () => (Date.now() - this.#from) / 1000;
    try {
      await this.#getReady(server.url);
      const ready = since();
      let held = 0;
      let done: number | undefined;
      let last = Date.now();
      for (;;) {
        const { instruction, accepted } = await stateOf(store);
        if (accepted) break;
        if (since() * 1000 > LONGEST_MS) throw new Error('not accepted in time');
        const now = Date.now();
        if (instruction?.advice.action.kind === 'hold') held += now - last;
        last = now;
        // Each new order sounds on the phone. What it is, its screen says.
        await new Promise((resolve) => setTimeout(resolve, LOOKS_MS));
        if (instruction && instruction.seq !== done && (await this.#follow(instruction.show)))
          done = instruction.seq;
      }
      const seconds = { ready, accepted: since(), held: held / 1000 };
      return {
        panel: this.panel,
        emitter: this.emitter,
        seconds,
        ...this.did,
        shortfall: shortfallDb(this.#pair),
      };
    } finally {
      await server.close();
    }
  }

  /** From the home page of both phones to the first order. */
  async #getReady(url: string): Promise<void> {
    const { panel, emitter } = this;
    await Promise.all([panel.page.goto(`${url}/`), emitter.page.goto(`${url}/`)]);
    await panel.tap(panel.page.getByText('At the panel'));
    await panel.type('Site', 'Quayside Hall 3');
    await panel.type('Beam pair', 'B2');
    const meters = panel.page.getByLabel('Meter', { exact: true });
    if ((await meters.locator('option:checked').textContent()) !== this.spec.meter.name)
      await panel.choose('Meter', this.spec.meter.name);
    await panel.press('Open the job');
    await panel.press('Understood');
    const code = (await panel.page.locator('.invite-code').textContent()) ?? '';
    await emitter.tap(emitter.page.getByText('At the emitter'));
    await emitter.type('Join code', code.replace(' ', ''));
    await emitter.press('Join');
    await emitter.press('Understood');
    await emitter.press('Upright');
    await panel.page.getByText('Emitter here').waitFor();
    await emitter.page.getByText('Panel here').waitFor();
  }

  /** Does what is newly asked, once a screen shows it. False: not shown yet, or nothing to do. */
  async #follow(newest: string): Promise<boolean> {
    for (const phone of [this.panel, this.emitter]) {
      const shown = await shownOn(phone.page);
      if (!shown?.mine || !isOf(shown.words, newest)) continue;
      if (/^Hold/.test(shown.words)) return true;
      await (phone === this.panel ? this.#atPanel(shown.words) : this.#atEmitter(shown.words));
      return true;
    }
    return false;
  }

  async #atPanel(words: string): Promise<void> {
    if (/^Read the meter/.test(words)) return this.#read();
    if (/^Ready/.test(words)) return this.panel.press('Accept');
    if (words === CHECK) return this.panel.press('All checked');
    if (/\?$/.test(words)) {
      this.did.questions += 1;
      return this.panel.press('Yes');
    }
    throw new Error(`the panel is asked: ${words}`);
  }

  async #read(): Promise<void> {
    this.did.readings += 1;
    const { panel, spec } = this;
    const text = readingText(readMeter(this.#pair, this.#now, this.rng), spec.meter);
    if (text === 'no signal') return panel.press('No signal');
    if (text === 'saturated') return panel.press('Saturated');
    for (const figure of text) await panel.press(PAD_KEYS[figure] ?? figure);
    return panel.press('Send');
  }

  async #atEmitter(words: string): Promise<void> {
    const { emitter, did } = this;
    const turning = TURN.exec(words);
    if (turning) {
      did.turns += 1;
      const [, axis, whole, part, sense] = turning;
      const eighths = 8 * Number(whole) + PARTS.indexOf(part ?? '');
      const by = sense === 'clockwise' ? eighths : -eighths;
      this.#pair = turn(this.#pair, axis === 'Horizontal' ? 'horizontal' : 'vertical', by, this.#now);
      return emitter.press('Done');
    }
    const toward = /^(?:Lower|Raise) gain toward (\S+)$/.exec(words);
    if (toward || words === 'Gain to full') {
      did.gains += 1;
      const db = toward ? gainFor(this.#pair, Number(toward[1]), this.#now) : 0;
      this.#pair = setGain(this.#pair, db, this.#now);
      return emitter.press('Gain is set');
    }
    if (/^Aim by eye/.test(words)) {
      did.aims += 1;
      // It ends where the unit already points.
      this.#pair = reAim(this.#pair, this.#pair.pointing, this.#now);
      return emitter.press('Aimed');
    }
    if (/card in the direct line/.test(words)) {
      did.covers += 1;
      this.#pair = block(this.#pair, true, this.#now);
      return emitter.press('It is covered');
    }
    if (words === 'Uncover the beam') {
      this.#pair = block(this.#pair, false, this.#now);
      return emitter.press('It is clear');
    }
    if (words === CHECK) return emitter.press('All checked');
    if (/\?$/.test(words)) {
      did.questions += 1;
      return emitter.press('Yes');
    }
    throw new Error(`the ladder is asked: ${words}`);
  }
}

const CHECK = 'Please check';
/** A list of causes has its heading, and is an order in one line for a reader of the record. */
const isOf = (shown: string, newest: string): boolean =>
  shown === newest || (shown === CHECK && newest.startsWith('Check:'));

const PARTS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'];
const TURN = /^(Horizontal|Vertical) (?:back )?(\d*)([⅛¼⅜½⅝¾⅞]?) (clockwise|anticlockwise)$/;
const PAD_KEYS: Readonly<Record<string, string>> = { '-': PAD_MINUS, '.': PAD_POINT };

const shownOn = (page: Page): Promise<Shown | undefined> =>
  page.evaluate(() => {
    const face = document.querySelector('.face:not(.unsure)');
    const words = face?.querySelector('.show')?.textContent;
    return face && words ? { words, mine: !face.classList.contains('face-other') } : undefined;
  });
