/**
 * How well the crew is heard, on people and voices the model never heard:
 *
 *     npm run bench:speech -- [--recordings FOLDER] [--each N] [--parts clean,tight,strings,noise,others,load]
 *
 * Speakers at even places in the list of their set were used to fit the confidence (`speech/fit.ts`). Others are measured.
 */
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { DEFAULT_MODEL_FOLDER, ROOT_FOLDER } from '../../server/process/program.ts';
import { loadLetterModel } from '../../server/speech/letter-model.ts';
import { openFolder, SECOND, SINGLE } from '../../server/speech/model-folder.ts';
import { loadSecondHearer, loadSingleWords } from '../../server/speech/other-hearers.ts';
import { ASK, TAKE } from '../../src/conversation/decide.ts';
import { wordGraph } from '../../src/grammar/graph.ts';
import { createRng } from '../../src/simulator/rng.ts';
import type { Heard } from '../../src/speech/heard.ts';
import { type Recogniser, recogniser as recogniserOf } from '../../src/speech/recogniser.ts';
import { chatter } from './speech/chatter.ts';
import { wilson } from './speech/interval.ts';
import { measureLoad } from './speech/load.ts';
import { KINDS, noisy } from './speech/noise.ts';
import { once } from './speech/once.ts';
import { believed, judge, meaningOf, type Outcome, takesAnything, takesReading } from './speech/outcome.ts';
import { isForFit, people, spoken, type Utterance, voices } from './speech/recordings.ts';
import { READING_ASKED, situationOf } from './speech/situation.ts';
import { strings } from './speech/strings.ts';
import { type Believed, printBins, printThresholds } from './speech/thresholds.ts';
import { tight } from './speech/tight.ts';
import { wordErrors } from './speech/word-errors.ts';

const SEED = 20261125;
const WAYS = ['grammar', 'grammar and expectation', 'neither'];
const SNRS = [20, 10, 5, 0] as const;
const PARTS = ['clean', 'tight', 'strings', 'noise', 'others', 'load'] as const;

const program = new Command('bench:speech')
  .option('--recordings <folder>', 'an4, digits and commands', join(ROOT_FOLDER, '..', 'shared', 'speech'))
  .option('--each <n>', 'utterances of each set at most', Number, 120)
  .option('--parts <list>', 'what to measure', (list) => list.split(','), [...PARTS])
  .parse();
const { recordings, each, parts } = program.opts<{ recordings: string; each: number; parts: string[] }>();

const rng = createRng(SEED);
const percent = (part: number, whole: number): string =>
  `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

function drawn<T>(from: readonly T[], count: number): T[] {
  const left = [...from];
  return Array.from(
    { length: Math.min(count, left.length) },
    () => left.splice(Math.floor(rng() * left.length), 1)[0] as T,
  );
}

interface Tally extends Record<Outcome, number> {
  n: number;
}
const empty = (): Tally => ({ n: 0, right: 0, asked: 0, wrong: 0 });

const line = (name: string, { n, right, asked, wrong }: Tally): void => {
  const { low, high } = wilson(wrong, n);
  console.log(
    `${name.padEnd(44)} ${String(n).padStart(5)} ${percent(right, n).padStart(8)} ${percent(asked, n).padStart(8)} ${percent(wrong, n).padStart(8)} (${percent(low, 1)} to ${percent(high, 1)})`,
  );
};

/** The speaker with the most taken wrongly, and of several such the one with the least right at once. */
function worst(name: string, bySpeaker: ReadonlyMap<string, Tally>): void {
  const share = (part: number, n: number): number => part / Math.max(1, n);
  const [first] = [...bySpeaker].sort(
    ([, a], [, b]) => share(b.wrong, b.n) - share(a.wrong, a.n) || share(a.right, a.n) - share(b.right, b.n),
  );
  if (first) line(`${name}, worst of ${bySpeaker.size} speakers: ${first[0]}`, first[1]);
}

/** With the grammar; with the grammar and the expectation; without both. */
async function hearAll(
  recogniser: Recogniser,
  sound: Float32Array,
  text: string,
): Promise<[Heard, Heard, Heard]> {
  const heard = await recogniser.hear(sound);
  const expected = await recogniser.hear(sound, { expect: situationOf(text) });
  const free = {
    text: heard.freeText,
    confidence: 1,
    alternatives: [{ text: heard.freeText, confidence: 1 }],
    freeText: heard.freeText,
  };
  return [heard, expected, free];
}

async function main(): Promise<void> {
  const begun = performance.now();
  const folder = openFolder(DEFAULT_MODEL_FOLDER);
  const letters = once(await loadLetterModel(folder));
  const second = await loadSecondHearer(folder);
  const single = await loadSingleWords(folder);
  const both = { second: second && once(second) };
  const recogniser = recogniserOf(letters, wordGraph(), { ...both, single });
  const others = {
    'letters alone': recogniserOf(letters, wordGraph()),
    'second hearer': recogniserOf(letters, wordGraph(), both),
  };
  const bytes = ['onnx', join(SECOND, 'onnx'), join(SINGLE, 'onnx')]
    .map((part) => statSync(join(DEFAULT_MODEL_FOLDER, part, 'model_quantized.onnx')).size)
    .reduce((a, b) => a + b);
  console.log(
    `model ${(bytes / 1e6).toFixed(1)} MB, loaded in ${((performance.now() - begun) / 1000).toFixed(1)} s`,
  );

  const heldOut: Utterance[] = existsSync(recordings) ? people(recordings) : [];
  if (heldOut.length === 0) console.log(`No recordings in ${recordings}: people are left out.`);
  const all = [...heldOut, ...voices(2 * each, rng)].filter((one) => !isForFit(one));
  const ours = all.filter(({ text }) => meaningOf(text) !== undefined);
  const sets = [...new Set(ours.map(({ set }) => set))];
  const chosen = sets.flatMap((set) =>
    drawn(
      ours.filter((one) => one.set === set),
      each,
    ),
  );

  if (parts.includes('clean')) await measureClean(recogniser, chosen);
  if (parts.includes('tight')) await measureTight(recogniser, chosen);
  if (parts.includes('strings')) await measureStrings({ ...others, 'all hearers': recogniser }, all);
  if (parts.includes('noise')) await measureNoise(recogniser, chosen);
  if (parts.includes('others')) await measureOthers(recogniser, all);
  if (parts.includes('load')) await measureLoad(chosen);
}

const HEAD = `${' '.repeat(27)}     n    right    asked    wrong`;

async function measureClean(recogniser: Recogniser, chosen: readonly Utterance[]): Promise<void> {
  console.log(`\nSentences of ours${HEAD}`);
  const times: number[] = [];
  const beliefs: Believed[] = [];
  const errors = { open: 0, grammar: 0, words: 0 };
  const clean = new Map<string, Tally[]>();
  const speakers = new Map<string, Tally>();
  for (const utterance of chosen) {
    const { text } = utterance;
    const sound = await utterance.sound();
    const at = performance.now();
    const results = await hearAll(recogniser, sound, text);
    times.push((performance.now() - at) / 2);
    beliefs.push(believed(text, results[0]));
    errors.open += wordErrors(text, results[0].freeText);
    errors.grammar += wordErrors(text, results[0].text);
    errors.words += text.split(' ').length;
    const own = speakers.get(utterance.speaker) ?? empty();
    speakers.set(utterance.speaker, own);
    count(own, judge(text, results[0]));
    for (const set of [utterance.set, 'all']) {
      const tallies = clean.get(set) ?? [empty(), empty(), empty()];
      clean.set(set, tallies);
      for (const [i, heard] of results.entries()) count(tallies[i] as Tally, judge(text, heard));
    }
  }
  for (const [set, tallies] of clean) {
    for (const [i, tally] of tallies.entries()) line(`clean, ${set}, ${WAYS[i]}`, tally);
  }
  worst('clean, grammar', speakers);
  console.log(
    `word errors ${percent(errors.open, errors.words)} without grammar, ${percent(errors.grammar, errors.words)} with it, of ${errors.words}; ${median(times).toFixed(0)} ms an utterance (median)`,
  );
  curve('clean', beliefs);
}

async function measureTight(recogniser: Recogniser, chosen: readonly Utterance[]): Promise<void> {
  console.log(`\nCut tight${' '.repeat(8)}${HEAD}`);
  const tallies = new Map<string, Tally>();
  for (const { set, text, sound } of chosen) {
    const outcome = judge(text, await recogniser.hear(tight(await sound())));
    for (const name of [set, 'all']) {
      const tally = tallies.get(name) ?? empty();
      tallies.set(name, tally);
      count(tally, outcome);
    }
  }
  for (const [name, tally] of tallies) line(`cut tight, ${name}, grammar`, tally);
}

/** Strings of digits, with the letters alone, with the second hearer and with all, speaker by speaker. */
async function measureStrings(by: Record<string, Recogniser>, all: readonly Utterance[]): Promise<void> {
  console.log(`\nStrings of digits${HEAD}`);
  const drawnStrings = strings(
    all.filter(({ set }) => set === 'digits'),
    3 * each,
    rng,
  );
  const made = await Promise.all(drawnStrings.map(async (one) => ({ ...one, samples: await one.sound() })));
  for (const [name, recogniser] of Object.entries(by)) {
    const tallies = new Map<string, Tally>();
    for (const { speaker, text, samples } of made) {
      const tally = tallies.get(speaker) ?? empty();
      tallies.set(speaker, tally);
      count(tally, judge(text, await recogniser.hear(samples)));
    }
    for (const [speaker, tally] of tallies) line(`strings, ${speaker}, ${name}`, tally);
  }
}

async function measureNoise(recogniser: Recogniser, chosen: readonly Utterance[]): Promise<void> {
  console.log(`\nIn noise${' '.repeat(9)}${HEAD}`);
  const beliefs: Believed[] = [];
  for (const snr of SNRS) {
    const together = [empty(), empty()] as const;
    for (const [name, kind] of Object.entries(KINDS)) {
      const tally = empty();
      for (const { text, sound } of drawn(chosen, each)) {
        const spoilt = noisy(await sound(), kind, snr, rng);
        const heard = await recogniser.hear(spoilt);
        const expected = await recogniser.hear(spoilt, { expect: situationOf(text) });
        beliefs.push(believed(text, heard));
        const outcome = judge(text, heard);
        count(tally, outcome);
        count(together[0], outcome);
        count(together[1], judge(text, expected));
      }
      line(`${name} at ${snr} dB`, tally);
    }
    line(`all at ${snr} dB`, together[0]);
    line(`all at ${snr} dB, with expectation`, together[1]);
  }
  curve('all noise together', beliefs);
}

const NOISES_EACH = 150;
const CHATTER = 400;

/** Once with no expectation, and once while a reading is asked for. */
async function measureOthers(recogniser: Recogniser, all: readonly Utterance[]): Promise<void> {
  console.log(`\nNot ours${' '.repeat(36)}     n   reading   reading, asked   anything`);
  const texts = new Set(Array.from({ length: CHATTER }, () => chatter(rng)));
  const others = [...all, ...spoken([...texts]).filter((one) => !isForFit(one))].filter(
    ({ text }) => meaningOf(text) === undefined,
  );
  const total = { n: 0, reading: 0, asked: 0, taken: 0 };
  const reject = async (name: string, sounds: readonly (() => Promise<Float32Array>)[]): Promise<void> => {
    const tally = { n: 0, reading: 0, asked: 0, taken: 0 };
    for (const sound of sounds) {
      const samples = await sound();
      const heard = await recogniser.hear(samples);
      const asked = await recogniser.hear(samples, { expect: READING_ASKED });
      tally.n++;
      tally.reading += Number(takesReading(heard));
      tally.asked += Number(takesReading(asked));
      tally.taken += Number(takesAnything(heard));
    }
    for (const key of ['n', 'reading', 'asked', 'taken'] as const) total[key] += tally[key];
    rejected(name, tally);
  };
  for (const set of new Set(others.map((one) => one.set))) {
    const some = others.filter((one) => one.set === set);
    await reject(
      `${set}, other words`,
      some.map(({ sound }) => sound),
    );
    for (const snr of SNRS) {
      const spoilt = some.map(({ sound }, i) => async () => {
        const kinds = Object.values(KINDS);
        return noisy(await sound(), kinds[i % kinds.length] as (typeof kinds)[number], snr, rng);
      });
      await reject(`${set}, other words at ${snr} dB`, spoilt);
    }
  }
  for (const [name, kind] of Object.entries(KINDS)) {
    const noises = Array.from(
      { length: NOISES_EACH },
      () => async () => kind(16_000 + Math.floor(rng() * 32_000), rng),
    );
    await reject(`${name} alone`, noises);
  }
  rejected('all together', total);
}

function rejected(
  name: string,
  { n, reading, asked, taken }: Record<'n' | 'reading' | 'asked' | 'taken', number>,
): void {
  const cell = (part: number): string =>
    `${percent(part, n)} (to ${percent(wilson(part, n).high, 1)})`.padStart(18);
  console.log(`${name.padEnd(44)} ${String(n).padStart(5)}${cell(reading)}${cell(asked)}${cell(taken)}`);
}

/** How well the belief fits the results, and what other thresholds would do. */
function curve(name: string, beliefs: readonly Believed[]): void {
  console.log(`\nBelief, ${name}; now taken from ${TAKE}, asked from ${ASK}`);
  printBins(beliefs);
  printThresholds(beliefs);
}

function count(tally: Tally, outcome: Outcome): void {
  tally.n++;
  tally[outcome]++;
}

await main();
