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
import { knownTo } from '../../../src/speech/single-words.ts';
import { DEFAULT_MODEL_FOLDER } from '../../process/program.ts';
import { openFolder } from '../model-folder.ts';
import { loadSingleWords } from '../other-hearers.ts';
import { readSound } from '../sound-file.ts';
import { wayThrough } from './way-through.ts';

const RATE = 16_000;
/** A word is kept where its piece names it with at least this probability. */
const LEAST = Math.log(0.7);

const [recordings = '', out = ''] = process.argv.slice(2);
const model = await loadSingleWords(openFolder(DEFAULT_MODEL_FOLDER));
if (!model) throw new Error('The model has no hearer of single words.');

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
  const way = await wayThrough(model, sound, words);
  for (const [i, { from, to, score }] of (way?.pieces ?? []).entries()) {
    if (score < LEAST) continue;
    const name = `${file.replace('.flac', '')}-${i}.wav`;
    writeFileSync(join(out, 'audio', name), wav(sound.slice(Math.max(0, from), to)));
    table.push([name, speaker, words[i]].join('\t'));
  }
}
writeFileSync(join(out, 'labels.tsv'), `${table.join('\n')}\n`);
