import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { DEFAULT_MODEL_FOLDER } from '../../server/process/program.ts';
import { openTranscriber } from '../../server/speech/start.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { listenLabel } from '../../src/phrases/sound.ts';
import { spokenFile } from '../sounds/spoken.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';

const SAID = 'one four two';

/** Two seconds of quiet, the words, and two of quiet, as the microphone hears them. */
function microphone(): string {
  const wav = new wavefile.WaveFile(readFileSync(spokenFile(SAID)));
  const { sampleRate } = wav.fmt as { sampleRate: number };
  const words = wav.getSamples(false, Int16Array) as unknown as Int16Array;
  const samples = new Int16Array(words.length + 4 * sampleRate);
  samples.set(words, 2 * sampleRate);
  const file = new wavefile.WaveFile();
  file.fromScratch(1, sampleRate, '16', samples);
  const path = join(mkdtempSync(join(tmpdir(), 'ladderline-said-')), 'said.wav');
  writeFileSync(path, file.toBuffer());
  return path;
}

describe.skipIf(!CHROMIUM)('the sound of what is said', () => {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  afterEach(async () => {
    await browser?.close();
    await server?.close();
  });

  it('is kept once the crew turns it on, and is played beside its words in the record', async () => {
    const store = new MemoryStore();
    server = await startServer({ store, transcriber: openTranscriber(DEFAULT_MODEL_FOLDER) });
    browser = await launch(microphone(), ['--autoplay-policy=no-user-gesture-required']);
    const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
    const panel = await context.newPage();
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B3');
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    await press(panel, 'Menu');
    await press(panel, 'Voice is on. Turn it off');
    await press(panel, 'Keep the sound for 30 days');
    await panel.getByRole('button', { name: 'Do not keep the sound' }).waitFor();
    await panel.screenshot({ path: join(tmpdir(), 'ladderline-sound-menu.png') });
    await panel.keyboard.press('Escape');
    await panel.getByText('is kept with this record for 30 days').first().waitFor();
    await panel.getByRole('button', { name: /Hold or tap to talk/ }).click({ timeout: 60_000 });
    await panel.waitForTimeout(5_000);
    await panel.getByRole('button', { name: /Listening/ }).click();

    const job = (await store.jobs())[0]?.job ?? '';
    await expect.poll(() => store.enclosed(), { timeout: 30_000 }).toHaveLength(1);
    const [{ seq } = { seq: -1 }] = await store.enclosed();
    const fact = (await store.read(job, seq - 1, 1))[0]?.fact;
    if (fact?.type !== 'said') throw new Error(`nothing was heard: ${JSON.stringify(fact)}`);

    const token = await panel.evaluate(() => JSON.stringify(localStorage));
    const seat = /"token\\*":\\*"([\w-]+)/.exec(token)?.[1] ?? '';
    const record = await context.newPage();
    await record.goto(`${server.url}/watch#${seat}`);
    await press(record, 'Exchange');
    await record.getByRole('button', { name: listenLabel(fact.text) }).click();
    const sound = record.locator('audio');
    await sound.waitFor();
    await expect
      .poll(() => sound.evaluate((audio) => (audio as HTMLAudioElement).currentTime), { timeout: 20_000 })
      .toBeGreaterThan(0.2);
    // Five seconds were spoken into the button, give or take how fast the page is.
    const { duration } = await sound.evaluate(({ duration }: HTMLAudioElement) => ({ duration }));
    expect(duration).toBeGreaterThan(2);
    await sound.scrollIntoViewIfNeeded();
    await record.screenshot({ path: join(tmpdir(), 'ladderline-sound-record.png') });
  }, 240_000);
});
