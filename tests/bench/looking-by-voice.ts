import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startServer } from '../../server/start.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { INDICATOR } from '../../src/model/profile.ts';
import { calmPair } from '../../src/simulator/calm-pair.ts';
import { createBeamPair, shortfallDb } from '../../src/simulator/pair.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { launch } from '../e2e/chromium.ts';
import { Hall, press } from '../e2e/hall.ts';
import { logOf, stateOf } from '../e2e/job-log.ts';
import { microphoneHears, speak } from '../e2e/microphone.ts';

/**
 * One person alone who sees an indicator, from the opening to the acceptance, without a touch after the start: a synthetic voice
 * answers each order into the microphone of a headless Chromium. Build the client first. Minutes, so it is no test.
 */
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, locale: 'en-GB' };
/** Not heard, or asked about: it is said again. */
const AGAIN_MS = 12_000;
const LONGEST_MS = 1_200_000;
/** The signal before an order must be over: the phone does not listen to itself. */
const SIGNAL_MS = 1_500;

const store = openDataFolder(mkdtempSync(join(tmpdir(), 'ladderline-voice-')));
const server = await startServer({ store });
const browser = await launch();
const phone = await (await browser.newContext(PHONE)).newPage();
const calm = calmPair(INDICATOR, { horizontal: 4, vertical: -3 });
const hall = new Hall(
  createBeamPair({ ...calm, lagMs: 50, lobes: [{ ...calm.lobes[0], halfHorizontal: 14, halfVertical: 14 }] }),
  createRng(11),
);

await microphoneHears(phone);
await phone.goto(`${server.url}/alone`);
await phone.getByText('Begin with an indicator').click();
await phone.getByLabel('Site').fill('Quayside Hall 3');
await phone.getByLabel('Beam pair').fill('B2');
await phone.getByLabel('Settles within').fill('0.4');
await phone.getByLabel('Must stay steady for').fill('1');
await press(phone, 'Open the job');
await press(phone, 'Understood');
await press(phone, 'Upright');
await phone.getByText('Hands-free: just speak').waitFor({ timeout: 120_000 });

const SAID = { 'no signal': 'nothing', saturated: 'too strong' } as const;
/** What is said in other words where it was not heard. */
const OTHERWISE: Readonly<Record<string, string>> = { nothing: 'no signal', 'too strong': 'saturated' };
const begun = Date.now();
let last = { seq: -1, at: 0, words: '' };
let spoken = 0;
for (; Date.now() - begun < LONGEST_MS; await phone.waitForTimeout(100)) {
  const { instruction, accepted, answeredBy } = await stateOf(store);
  if (accepted) break;
  if (!instruction || answeredBy !== undefined) continue;
  const { action } = instruction.advice;
  if (action.kind === 'hold') continue;
  const isNew = instruction.seq !== last.seq;
  if (!isNew && Date.now() - last.at < AGAIN_MS) continue;
  await phone.waitForTimeout(SIGNAL_MS);
  const words = isNew ? answer() : (OTHERWISE[last.words] ?? last.words);
  await speak(phone, words);
  spoken += 1;
  last = { seq: instruction.seq, at: Date.now(), words };

  function answer(): string {
    if (!instruction) return '';
    if (action.kind === 'offer-accept') return 'accept';
    if (action.kind === 'read') {
      const does = hall.lightDoes();
      return does === 'no signal' || does === 'saturated' ? SAID[does] : does;
    }
    hall.work(instruction);
    return action.kind === 'block' ? 'blocked' : action.kind === 'unblock' ? 'clear' : 'done';
  }
}
const { accepted } = await stateOf(store);
const log = await logOf(store);
const count = (type: string) => log.filter(({ fact }) => fact.type === type).length;
console.table({
  accepted: accepted ? `yes, ${accepted.reading.kind}` : 'no',
  'short of the peak, dB': shortfallDb(hall.pair).toFixed(2),
  minutes: ((Date.now() - begun) / 60_000).toFixed(1),
  'times spoken': spoken,
  'words taken down': count('said'),
  'asked back': count('query'),
  'said by a key': log.filter(({ fact }) => fact.type === 'said' && fact.via === 'button').length,
});
await browser.close();
await server.close();
process.exit(accepted ? 0 : 1);
