/**
 * Cuts single words out of the utterances of AN4 that are made of words that the hearer of single words knows:
 *
 *     npx tsx server/speech/training/said-words.ts RECORDINGS OUT
 *
 * What was said is known, so only where each word begins and ends is looked for: the pieces between dips of loudness that explain
 * it best. Words that the hearer does not name likeliest by far are left out. OUT receives `audio/*.wav` and `labels.tsv` (file, speaker, word), for human.py.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import wavefile from 'wavefile';
import { logSoftmax } from '../../../src/speech/logits.ts';
import { cuttings } from '../../../src/speech/pieces.ts';
import { knownTo, spokenAs } from '../../../src/speech/single-words.ts';
import { wordWindow } from '../../../src/speech/window.ts';
import { DEFAULT_MODEL_FOLDER } from '../../process/program.ts';
import { openFolder } from '../model-folder.ts';
import { loadSingleWords } from '../other-hearers.ts';
import { readSound } from '../sound-file.ts';

const RATE = 16_000;
/** A word is kept where its piece names it with at least this probability. */
const LEAST = Math.log(0.7);
/** What speech between two words costs, natural log for each 10 ms, as in src/speech/single-words.ts. */
const UNEXPLAINED = 0.4;

const [recordings = '', out = ''] = process.argv.slice(2);
const model = await loadSingleWords(openFolder(DEFAULT_MODEL_FOLDER));
if (!model) throw new Error('The model has no hearer of single words.');
const tokenOf = new Map(model.words.map((word, i) => [word, i + 1]));

/** The best way to here: its score, and the pieces that it took. */
interface Way {
  score: number;
  pieces: { from: number; to: number; score: number }[];
}

/** Where each word was said, in samples. Undefined where no way covers the sound. */
async function placesOf(sound: Float32Array, words: readonly string[]): Promise<Way | undefined> {
  const { places, arcs, speech } = cuttings(sound);
  if (!model || arcs.length === 0) return undefined;
  const at = (place: number): number => places[place] as number;
  const logProbs = logSoftmax(
    await model.logits(arcs.map(({ from, to }) => wordWindow(sound, at(from), at(to)))),
  );
  const gap = (from: number, to: number): number => -UNEXPLAINED * (speech[from]?.[to] as number);
  let before: (Way | undefined)[] = places.map((_, to) => ({ score: gap(0, to), pieces: [] }));
  for (const word of words) {
    const token = tokenOf.get(spokenAs(word)) as number;
    const after: (Way | undefined)[] = places.map(() => undefined);
    const offer = (to: number, way: Way): void => {
      if (way.score > (after[to]?.score ?? Number.NEGATIVE_INFINITY)) after[to] = way;
    };
    for (const [i, { from, to }] of arcs.entries()) {
      const way = before[from];
      const score = logProbs[i * (tokenOf.size + 1) + token] as number;
      if (!way) continue;
      const pieces = [...way.pieces, { from: at(from), to: at(to), score }];
      for (let next = to; next < places.length; next++)
        offer(next, { score: way.score + score + gap(to, next), pieces });
    }
    before = after;
  }
  return before.at(-1);
}

const wav = (sound: Float32Array): Uint8Array => {
  const file = new wavefile.WaveFile();
  file.fromScratch(
    1,
    RATE,
    '16',
    sound.map((x) => Math.round(Math.max(-1, Math.min(1, x)) * 32_767)),
  );
  return file.toBuffer();
};

mkdirSync(join(out, 'audio'), { recursive: true });
const table = ['file\tspeaker\tword'];
const rows = readFileSync(join(recordings, 'an4', 'transcripts.tsv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1);
for (const row of rows) {
  const [file = '', speaker = '', text = ''] = row.split('\t');
  const said = text.toLowerCase().replaceAll(/\bo\b/g, 'oh');
  if (!knownTo(model, said)) continue;
  const words = said.split(' ');
  const sound = await readSound(join(recordings, 'an4', 'audio', file));
  const way = await placesOf(sound, words);
  for (const [i, { from, to, score }] of (way?.pieces ?? []).entries()) {
    if (score < LEAST) continue;
    const name = `${file.replace('.flac', '')}-${i}.wav`;
    writeFileSync(join(out, 'audio', name), wav(sound.slice(Math.max(0, from), to)));
    table.push([name, speaker, words[i]].join('\t'));
  }
}
writeFileSync(join(out, 'labels.tsv'), `${table.join('\n')}\n`);
