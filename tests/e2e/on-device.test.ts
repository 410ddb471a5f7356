import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { FactOf } from '../../src/model/facts.ts';
import { spokenFile } from '../sounds/spoken.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

const SAID = 'one four two';
const LOAD_WITHIN_MS = 60_000;
const HEARD_WITHIN_MS = 30_000;

/** Some quiet, the words, and quiet again, as a WAV file. */
function soundFile(before: number, after: number): string {
  const wav = new wavefile.WaveFile(readFileSync(spokenFile(SAID)));
  const { sampleRate } = wav.fmt as { sampleRate: number };
  const words = wav.getSamples(false, Int16Array) as unknown as Int16Array;
  const samples = new Int16Array(words.length + (before + after) * sampleRate);
  samples.set(words, before * sampleRate);
  const file = new wavefile.WaveFile();
  file.fromScratch(1, sampleRate, '16', samples);
  const path = join(mkdtempSync(join(tmpdir(), 'ladderline-said-')), 'said.wav');
  writeFileSync(path, file.toBuffer());
  return path;
}

/** The server hears nothing: a phone recognises words itself, or types. */
describe.skipIf(!CHROMIUM)('a phone that hears by itself', () => {
  let store: MemoryStore;
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  /** A panel with the speech model loaded, and its voice off. */
  async function panelWithRecogniser(sound: string): Promise<Page> {
    store = new MemoryStore();
    server = await startServer({ store });
    browser = await launch(sound);
    const panel = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage();
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B3');
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    await panel.getByText('Speech is not ready: type the reading.').waitFor();
    await press(panel, 'Menu');
    await press(panel, 'Voice is on. Turn it off');
    await press(panel, 'Speech on this phone is off. Turn it on');
    await panel.getByText('Speech on this phone is on').waitFor({ timeout: LOAD_WITHIN_MS });
    await panel.keyboard.press('Escape');
    return panel;
  }

  /** The words that the phone has heard and the log keeps. */
  async function heard(panel: Page): Promise<FactOf<'said'>> {
    const [job] = await store.jobs();
    for (const end = Date.now() + HEARD_WITHIN_MS; Date.now() < end; ) {
      const entries = await store.read(job?.job as string, -1, 1_000);
      const said = entries
        .map(({ fact }) => fact)
        .find((fact) => fact.type === 'said' && fact.via === 'voice');
      if (said?.type === 'said') return said;
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    throw new Error(`nothing was heard; the page says: ${await panel.locator('.talk').textContent()}`);
  }

  it('hears what is said into its button', async () => {
    const panel = await panelWithRecogniser(soundFile(2, 2));
    await panel.getByRole('button', { name: /Hold or tap to talk/ }).click();
    await panel.waitForTimeout(5_000);
    await panel.getByRole('button', { name: /Listening/ }).click();
    const { text, alternatives } = await heard(panel);
    expect([text, ...(alternatives ?? []).map((other) => other.text)]).toContain(SAID);
  }, 120_000);

  it('hears hands-free, from the first word on, and closes by itself', async () => {
    const panel = await panelWithRecogniser(soundFile(3, 4));
    await press(panel, 'Talk hands-free');
    await panel.getByRole('button', { name: /Hands-free: just speak/ }).waitFor({ timeout: LOAD_WITHIN_MS });
    const { text, alternatives } = await heard(panel);
    expect([text, ...(alternatives ?? []).map((other) => other.text)]).toContain(SAID);
    await panel.getByRole('button', { name: /Hands-free: just speak/ }).click({ timeout: HEARD_WITHIN_MS });
    await panel.getByRole('button', { name: /Hold or tap to talk/ }).waitFor();
  }, 120_000);
});
