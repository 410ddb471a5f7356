import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { DEFAULT_MODEL_FOLDER } from '../../server/process/program.ts';
import { openTranscriber } from '../../server/speech/start.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Store } from '../../server/store/store.ts';
import {
  DIGITS_READ,
  HEARD_WELL,
  OWN_VOICE_OFFER,
  READ_DIGITS,
  VOICE_UNCLEAR,
} from '../../src/phrases/own-voice.ts';
import { TO_READ } from '../../src/speech/to-read.ts';
import { spokenFile } from '../sounds/spoken.ts';
import { CHROMIUM, launch } from './chromium.ts';
import { press } from './hall.ts';
import { logOf } from './job-log.ts';

const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };
const RATE = 16_000;
const ANSWER_MS = 15_000;

/** A WAV file in which a synthetic voice reads the digits, half a second apart; a second before the first. And how long it is, ms. */
function readAloud(folder: string): { file: string; ms: number } {
  const quiet = new Array<number>(RATE / 2).fill(0);
  const digits = TO_READ.flatMap((digit) => {
    const spoken = new wavefile.WaveFile(new Uint8Array(readFileSync(spokenFile(digit))));
    return [...quiet, ...spoken.getSamples(false, Int16Array)];
  });
  const wav = new wavefile.WaveFile();
  const samples = [...quiet, ...digits, ...quiet];
  wav.fromScratch(1, RATE, '16', samples);
  const file = join(folder, 'ten-digits.wav');
  writeFileSync(file, wav.toBuffer());
  return { file, ms: (1000 * samples.length) / RATE };
}

describe.skipIf(!CHROMIUM)('somebody who is heard wrong', () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-voice-'));
  const reading = readAloud(folder);
  let store: Store;
  let server: RunningServer;
  let browser: Browser;
  let panel: Page;

  beforeAll(async () => {
    store = openDataFolder(folder);
    server = await startServer({ store, transcriber: openTranscriber(DEFAULT_MODEL_FOLDER) });
    browser = await launch(reading.file);
    panel = await (await browser.newContext(PHONE)).newPage();
  }, 60_000);

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  const shot = async (name: string) => {
    if (!process.env.SHOTS) return;
    await panel.locator('.own-voice').scrollIntoViewIfNeeded();
    await panel.screenshot({ path: join(process.env.SHOTS, `${name}.png`) });
  };

  it('reads ten digits in the menu, is told how they were heard, and leaves nothing in the record', async () => {
    await panel.goto(`${server.url}/`);
    await panel.getByText('At the panel').click();
    await panel.getByLabel('Site').fill('Quayside Hall 3');
    await panel.getByLabel('Beam pair').fill('B2');
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await press(panel, 'Open the job');
    await press(panel, 'Understood');
    await panel.getByText('Hold or tap to talk').waitFor({ timeout: 60_000 });
    await press(panel, 'Menu');
    await panel.getByText(OWN_VOICE_OFFER).waitFor();
    await shot('voice-offer');
    const before = (await logOf(store)).length;
    await press(panel, READ_DIGITS);
    await panel.getByText(TO_READ.join(' · ')).waitFor();
    await panel.getByRole('button', { name: DIGITS_READ }).waitFor();
    await shot('voice-reading');
    await panel.waitForTimeout(reading.ms);
    await press(panel, DIGITS_READ);
    await panel.getByText(HEARD_WELL).waitFor({ timeout: ANSWER_MS });
    await shot('voice-well');

    // A second one that is ended at once.
    await press(panel, READ_DIGITS);
    await panel.getByRole('button', { name: DIGITS_READ }).waitFor();
    await press(panel, DIGITS_READ);
    await panel.getByText(VOICE_UNCLEAR).waitFor({ timeout: ANSWER_MS });
    await panel.setViewportSize({ width: 320, height: 568 });
    await shot('voice-unclear-320');
    expect((await logOf(store)).length).toBe(before);
  }, 90_000);
});
