import { wayThrough } from '../../../server/speech/training/way-through.ts';
import { withEdges } from '../../../src/speech/edges.ts';
import type { SingleWordModel } from '../../../src/speech/single-words.ts';
import { TO_READ } from '../../../src/speech/to-read.ts';
import { tenOf } from '../../../src/speech/voice.ts';
import { accentedDigits } from './accents.ts';
import { people, spokenByEach, type Utterance } from './recordings.ts';

/** The set of what was read so that a voice is known: ten utterances of each speaker. */
export const READING = 'reading';

/**
 * Ten digits of each left-out speaker of whom there are ten, put together to one reading as a phone would send it, and cut again as the program
 * cuts it, with half a second of its own quietest part between two. Who says digits in whole utterances only (AN4) has them cut out of these; "oh" stands for a zero that was never said,
 * another digit for one that is missing. A reading that is not cut into ten has none. `single`: the hearer that finds the words.
 */
export async function readings(
  recordings: string,
  single: SingleWordModel,
  rng: () => number,
): Promise<Utterance[]> {
  const said = [
    ...people(recordings).filter(({ set }) => set === 'digits'),
    ...(await digitsWithin(people(recordings), single)),
    ...spokenByEach(TO_READ),
    ...accentedDigits(READING, rng),
  ];
  const speakers = [...new Set(said.map(({ speaker }) => speaker))];
  const read = speakers.map((speaker) => readingOf(said.filter((one) => one.speaker === speaker)));
  return (await Promise.all(read)).flat();
}

async function readingOf(said: readonly Utterance[]): Promise<Utterance[]> {
  const left = [...said];
  const taken = (isIt: (one: Utterance) => boolean): Utterance | undefined =>
    left.splice(left.findIndex(isIt) >>> 0, 1)[0];
  const ten = TO_READ.map(
    (digit) =>
      taken(({ text }) => text === digit) ??
      taken(({ text }) => digit === 'zero' && text === 'oh') ??
      taken(({ text }) => said.filter((one) => one.text === text).length > 1),
  );
  if (!ten.every((one) => one !== undefined)) return [];
  const sounds = await Promise.all(ten.map(async ({ sound }) => withEdges(await sound())));
  const pieces = tenOf(Float32Array.from(sounds.flatMap((sound) => [...sound])));
  if (!pieces) console.error(`${ten[0]?.speaker}: the reading was not cut into ten`);
  return (pieces ?? []).map((piece, i) => ({
    ...(ten[i] as Utterance),
    set: READING,
    recordings: ten.flatMap(({ recordings = [] }) => recordings),
    sound: async () => piece,
  }));
}

/** Digits cut out of utterances of digits. */
async function digitsWithin(all: readonly Utterance[], single: SingleWordModel): Promise<Utterance[]> {
  const isDigit = (word: string): boolean => word === 'oh' || TO_READ.includes(word);
  const found: Utterance[] = [];
  for (const { text, sound, ...rest } of all) {
    const words = text.split(' ');
    if (rest.set !== 'an4' || !words.every(isDigit)) continue;
    const samples = await sound();
    const way = await wayThrough(single, samples, words);
    for (const [i, { from, to }] of (way?.pieces ?? []).entries())
      found.push({
        ...rest,
        text: words[i] as string,
        sound: async () => samples.slice(Math.max(0, from), to),
      });
  }
  return found;
}
