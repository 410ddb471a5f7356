import { beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_MODEL_FOLDER } from '../../server/process/program.ts';
import { loadRecogniser } from '../../server/speech/recogniser.ts';
import { readSound } from '../../server/speech/sound-file.ts';
import { decide } from '../../src/conversation/decide.ts';
import type { Recogniser } from '../../src/speech/recogniser.ts';
import { spokenFile } from '../sounds/spoken.ts';

const RATE = 16_000;
/** Where the word begins, as loud as a tenth of its loudest 10 ms. */
function begin(sound: Float32Array): number {
  const levels = Array.from({ length: Math.floor(sound.length / 160) }, (_, i) =>
    Math.max(...sound.subarray(160 * i, 160 * (i + 1)).map(Math.abs)),
  );
  const top = Math.max(...levels);
  return 160 * levels.findIndex((x) => x >= top / 10);
}

// The talk button was pressed late. A word that is cut off whole leaves no trace: only what is left of it can tell.
describe('the start of a reading that was cut', { timeout: 120_000 }, () => {
  let recogniser: Recogniser;
  beforeAll(async () => {
    recogniser = await loadRecogniser(DEFAULT_MODEL_FOLDER);
  });

  it.each([
    ['one four two', 142],
    ['six seven', 67],
    ['sixteen', 16],
    ['fifty', 50],
  ])('is never another reading that is taken: "%s"', async (text, value) => {
    const sound = await readSound(spokenFile(text));
    const from = begin(sound);
    for (const cutS of [0, 0.03, 0.06, 0.1]) {
      const heard = await recogniser.hear(sound.slice(from + Math.round(cutS * RATE)));
      const decision = decide({ via: 'voice', ...heard });
      if (decision.kind === 'taken')
        expect(decision.intents, `${cutS} s cut`).toMatchObject([{ reading: { value } }]);
    }
  });
});
