/**
 * Cuts words out of sound as the program does, and writes the vectors that the speech embedding gives for them:
 *
 *     npx tsx server/speech/training/single-vectors.ts SOUNDS EMBEDDING OUT [SEED]
 *
 * SOUNDS is what single_sounds.py wrote; EMBEDDING the folder that single-graph.ts makes without a head. OUT receives
 * `vectors.bin` and `vectors.tsv` (set, speaker, part, word, kind): single words beside others of the same speaker, spoilt, and
 * what is no single word: two words, a part of one, spelling, noise. And `arcs.bin` and `arcs.jsonl`: every piece of the
 * utterances of AN4 that are made of known words.
 */
import { createWriteStream, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { AutoModelForCTC, env, Tensor } from '@xenova/transformers';
import { withEdges } from '../../../src/speech/edges.ts';
import { cuttings } from '../../../src/speech/pieces.ts';
import { inOneRow, WINDOW, wordWindow } from '../../../src/speech/window.ts';
import { seeded } from './seeded.ts';
import { atSpeed, between, noise, spoilt, trimmed } from './spoil.ts';

const RATE = 16_000;
const DIGITS = new Set('zero one two three four five six seven eight nine'.split(' '));
/** Words of AN4 that it learns from whole utterances. */
const SAID = new Set(
  'zero oh o one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty thirty forty fifty sixty seventy eighty ninety hundred and yes no stop go'.split(
    ' ',
  ),
);
/** How often each recording is used, beside two words and parts of words. */
const TIMES = { digits: 3, commands: 1, voices: 1 } as const;
const RARE_DIGIT_TIMES = 6;

const [sounds = '', embedding = '', out = '', seed = '1'] = process.argv.slice(2);
const rng = seeded(Number(seed) * 7919);
const pick = <T>(from: readonly T[]): T => from[Math.floor(rng() * from.length)] as T;

interface Recording {
  set: string;
  speaker: string;
  part: string;
  text: string;
  sound(): Float32Array;
}

const bytes = readFileSync(join(sounds, 'sounds.bin'));
const samples = new Int16Array(bytes.buffer, bytes.byteOffset, bytes.length / 2);
const all = readFileSync(join(sounds, 'sounds.tsv'), 'utf8')
  .trim()
  .split('\n')
  .map((line): Recording => {
    const [set = '', speaker = '', part = '', text = '', at, length] = line.split('\t');
    const sound = () =>
      Float32Array.from(samples.subarray(Number(at), Number(at) + Number(length)), (x) => x / 32_768);
    return { set, speaker, part, text, sound };
  });

env.allowRemoteModels = false;
env.localModelPath = `${dirname(resolve(embedding))}/`;
const model = await AutoModelForCTC.from_pretrained(basename(resolve(embedding)), { quantized: true });
async function vectorsOf(windows: readonly Float32Array[]): Promise<Uint8Array> {
  const { logits } = await model({
    input_values: new Tensor('float32', inOneRow(windows), [windows.length, WINDOW]),
  });
  return new Uint8Array(Float32Array.from(logits.data as Float32Array).buffer);
}

mkdirSync(out, { recursive: true });
const vectors = createWriteStream(join(out, 'vectors.bin'));
const table: string[] = [];
const NONE = { set: 'noise', speaker: '-', part: 'train' };
async function keep(
  mix: Float32Array,
  [from, to]: readonly [number, number],
  word: string,
  kind: string,
  { set, speaker, part }: Pick<Recording, 'set' | 'speaker' | 'part'>,
): Promise<void> {
  vectors.write(await vectorsOf([wordWindow(mix, Math.round(from), Math.round(to))]));
  table.push([set, speaker, part, word, kind].join('\t'));
}

/** Seconds that a cut lies outside of a word, as samples; less than nothing cuts into it. */
const outside = (inward: number, outward: number): number => RATE * between(rng, -inward, outward);
const gap = (): number => Math.round(RATE * Math.max(0, between(rng, -0.16, 0.3)));
const quieter = (): number => 10 ** (-between(rng, 0, 9) / 20);
const BEFORE = 3000;

/** One recording between others of the same speaker, cut out as a whole word, with a neighbour, or in part. */
async function cut(one: Recording, own: readonly Recording[], kind: 'whole' | 'two' | 'part'): Promise<void> {
  const clean = (recording: Recording, speed = 1): Float32Array => {
    const level = quieter();
    return trimmed(atSpeed(recording.sound(), speed), rng).map((x) => x * level);
  };
  const word = clean(one, between(rng, 0.88, 1.14));
  const before = rng() < 0.6 ? clean(pick(own)) : undefined;
  const after = rng() < 0.6 || kind === 'two' ? clean(pick(own)) : undefined;
  const [gapBefore, gapAfter] = [gap(), gap()];
  const begin = BEFORE + (before ? before.length + gapBefore : 0);
  const end = begin + word.length;
  const length = end + (after ? gapAfter + after.length : 0) + BEFORE;
  const joined = new Float32Array(length);
  if (before) joined.set(before, BEFORE);
  joined.set(word, begin);
  if (after) joined.set(after, end + gapAfter);
  const mix = spoilt(joined, rng);
  const near = (neighbour: Float32Array | undefined, room: number): number =>
    neighbour ? Math.min(outside(0.03, 0.06), room + 0.05 * RATE) : outside(0.03, 0.1);
  if (kind === 'whole') {
    await keep(mix, [begin - near(before, gapBefore), end + near(after, gapAfter)], one.text, kind, one);
  } else if (kind === 'two' && after) {
    const share = rng() < 0.6 ? 1 : between(rng, 0.45, 0.85);
    // With a longer gap between them they are two pieces, and never one.
    if (gapAfter > 0.2 * RATE) return;
    await keep(mix, [begin - outside(0.02, 0.05), end + gapAfter + after.length * share], '', kind, one);
  } else {
    const share = between(rng, 0.25, 0.6) * word.length;
    const range = rng() < 0.5 ? ([end - share, end] as const) : ([begin, begin + share] as const);
    await keep(mix, range, '', 'part', one);
  }
}

const singles = all.filter(({ set }) => set in TIMES);
const bySpeaker = new Map<string, Recording[]>();
for (const one of singles) {
  const key = `${one.set} ${one.speaker}`;
  bySpeaker.set(key, [...(bySpeaker.get(key) ?? []), one]);
}
for (const one of singles) {
  const own = bySpeaker.get(`${one.set} ${one.speaker}`) ?? [one];
  const set = one.set as keyof typeof TIMES;
  const times = set === 'commands' && DIGITS.has(one.text) ? RARE_DIGIT_TIMES : TIMES[set];
  for (let i = 0; i < times; i++) await cut(one, own, 'whole');
  const share = set === 'digits' ? 1 : 0.5;
  if (rng() < share) await cut(one, own, 'two');
  if (rng() < share) await cut(one, own, 'part');
}
const sentences = all.filter(({ set }) => set === 'an4');
const spelled = sentences.filter(({ text }) =>
  text.split(' ').every((word) => word.length === 1 && word !== 'o'),
);
for (const one of [...spelled, ...spelled]) {
  const mix = spoilt(trimmed(one.sound(), rng), rng);
  const length = RATE * between(rng, 0.25, 0.75);
  const from = between(rng, 0, Math.max(1, mix.length - length));
  await keep(mix, [from, from + length], '', 'spelled', one);
}
for (let i = 0; i < 400; i++)
  await keep(noise(RATE, rng), [0, RATE * between(rng, 0.2, 0.9)], '', 'noise', NONE);
vectors.end();
writeFileSync(join(out, 'vectors.tsv'), table.join('\n'));

const pieces = createWriteStream(join(out, 'arcs.bin'));
const lines: string[] = [];
const known = sentences.filter(({ text }) => text.split(' ').every((word) => SAID.has(word)));
for (const isSpoilt of [false, true]) {
  for (const { speaker, part, text, sound } of known) {
    const said = sound();
    const heard = withEdges(isSpoilt ? spoilt(atSpeed(said, between(rng, 0.88, 1.14)), rng) : said);
    const { places, arcs, speech } = cuttings(heard);
    if (arcs.length === 0) continue;
    const windows = arcs.map(({ from, to }) =>
      wordWindow(heard, places[from] as number, places[to] as number),
    );
    pieces.write(await vectorsOf(windows));
    lines.push(
      JSON.stringify({ speaker, part, text, places, arcs: arcs.map(({ from, to }) => [from, to]), speech }),
    );
  }
}
pieces.end();
writeFileSync(join(out, 'arcs.jsonl'), lines.join('\n'));
