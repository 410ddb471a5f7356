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

/** From where a word begins to where it ends. */
const trimmed = (sound: Float32Array): Float32Array =>
  sound.slice(begin(sound), sound.length - begin(sound.slice().reverse()));

/** Words one after the other, each this much louder, dB, with a pause between. */
function joined(words: readonly Float32Array[], gainsDb: readonly number[], pauseS: number): Float32Array {
  const pause = Array.from({ length: Math.round(pauseS * RATE) }, () => 0);
  return Float32Array.from(
    words.flatMap((word, i) => [
      ...(i > 0 ? pause : []),
      ...word.map((x) => x * 10 ** ((gainsDb[i] ?? 0) / 20)),
    ]),
  );
}

describe('a reading that was spoilt', { timeout: 120_000 }, () => {
  let recogniser: Recogniser;
  beforeAll(async () => {
    recogniser = await loadRecogniser(DEFAULT_MODEL_FOLDER);
  });

  const heard = async (sound: Float32Array) => decide({ via: 'voice', ...(await recogniser.hear(sound)) });

  // The talk button was pressed late. A word that is cut off whole leaves no trace: only what is left of it can tell.
  it.each([
    ['one four two', 142],
    ['six seven', 67],
    ['sixteen', 16],
    ['fifty', 50],
  ])('at its start is never another reading that is taken: "%s"', async (text, value) => {
    const sound = await readSound(spokenFile(text));
    const from = begin(sound);
    for (const cutS of [0, 0.03, 0.06, 0.1]) {
      const decision = await heard(sound.slice(from + Math.round(cutS * RATE)));
      if (decision.kind === 'taken')
        expect(decision.intents, `${cutS} s cut`).toMatchObject([{ reading: { value } }]);
    }
  });

  // The bench's own spread: up to 9 dB between two digits, 0 to 0.3 s apart.
  it.each([
    ['five', 'eight', 58],
    ['six', 'seven', 67],
    ['three', 'nine', 39],
  ])('by a quiet digit or a pause is never another reading that is taken: "%s %s"', async (...said) => {
    const [first, second, value] = said;
    const words = [trimmed(await readSound(spokenFile(first))), trimmed(await readSound(spokenFile(second)))];
    for (const gainsDb of [
      [-9, 0],
      [0, -9],
    ]) {
      for (const pauseS of [0, 0.3]) {
        const decision = await heard(joined(words, gainsDb, pauseS));
        if (decision.kind === 'taken')
          expect(decision.intents, `${gainsDb} dB, ${pauseS} s`).toMatchObject([{ reading: { value } }]);
      }
    }
  });
});
