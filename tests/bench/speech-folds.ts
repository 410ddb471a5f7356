/**
 * What a stranger's words come to, with the belief and its threshold fitted without that stranger:
 *
 *     npm run bench:speech-folds -- [--recordings FOLDER] [--each N] [--model FOLDER] [--write]
 *
 * The speakers whom no hearer was trained on are parted into ten folds. For each fold the curve of belief and the threshold are
 * fitted on the other nine, and the fold is measured. `--write` puts the tables into docs/speech-figures.md.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Command } from 'commander';
import { DEFAULT_MODEL_FOLDER, ROOT_FOLDER } from '../../server/process/program.ts';
import { openFolder } from '../../server/speech/model-folder.ts';
import { loadSingleWords } from '../../server/speech/other-hearers.ts';
import { ASK, TAKE } from '../../src/conversation/decide.ts';
import type { Voice } from '../../src/model/voice.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { belief, curveOf, features } from '../../src/speech/belief.ts';
import { heardOf } from '../../src/speech/hear.ts';
import { accentedWords } from './speech/accents.ts';
import { figuresPage, type Judged } from './speech/figures-page.ts';
import { fitted } from './speech/logistic.ts';
import { judge, meaningOf, type Outcome, takesAnything } from './speech/outcome.ts';
import { READING, readings } from './speech/readings.ts';
import type { Utterance } from './speech/recordings.ts';
import { SEED, sets } from './speech/sets.ts';
import { hearAll, keep, kept, type Stranger } from './speech/stranger.ts';
import { voiceTable } from './speech/voice-table.ts';

const FOLDS = 10;
/** One that is taken wrongly is as bad as so many that are asked about. Ours, no source; never changed after a look at the figures. */
const WRONG_COSTS = 100;
const THRESHOLDS = [0.8, 0.85, 0.88, 0.9, 0.91, 0.92, 0.93, 0.94, 0.95, 0.96, 0.97, 0.98];

const program = new Command('bench:speech-folds')
  .option('--recordings <folder>', 'an4, digits and commands', join(ROOT_FOLDER, '..', 'shared', 'speech'))
  .option('--each <n>', 'utterances of each set', Number, 240)
  .option('--model <folder>', 'the speech model', DEFAULT_MODEL_FOLDER)
  .option('--keep <file>', 'only hear, and add what was heard to this file')
  .option('--sets <names...>', 'only these sets')
  .option('--part <k/n>', 'hear every nth utterance, from the kth on', '0/1')
  .option('--from <files...>', 'judge what was kept in these files')
  .option('--write', 'write docs/speech-figures.md')
  .parse();
const options = program.opts<{
  recordings: string;
  each: number;
  model: string;
  keep?: string;
  sets?: string[];
  part: string;
  from?: string[];
  write?: boolean;
}>();

/** With draws of their own, so that what the other sets draw stays as it was. */
async function moreSets(): Promise<Utterance[]> {
  const single = await loadSingleWords(openFolder(options.model));
  return [
    ...accentedWords(createRng(SEED + 2)),
    ...(single ? await readings(options.recordings, single, createRng(SEED + 3)) : []),
  ];
}

async function strangers(): Promise<Stranger[]> {
  if (options.from) return options.from.flatMap(kept);
  const [k = 0, n = 1] = options.part.split('/').map(Number);
  const said = [
    ...sets(options.recordings, options.each).filter((_, i) => i % n === k),
    ...(k === 0 ? await moreSets() : []),
  ];
  const some = said.filter(({ set }) => options.sets?.includes(set) ?? true);
  const heard: Stranger[] = [];
  for await (const one of hearAll(options.model, some)) {
    heard.push(one);
    if (options.keep) keep(options.keep, one);
  }
  return heard;
}

/** The belief with which a threshold of `TAKE` takes what this curve takes from `least` on. */
function moved(weights: readonly number[], least: number): ReturnType<typeof curveOf> {
  const [first = 0, ...rest] = weights;
  const logit = (p: number): number => Math.log(p / (1 - p));
  return curveOf([first + logit(TAKE) - logit(least), ...rest]);
}

/**
 * What becomes of an utterance changes only at these beliefs, but for numbers like thirteen and thirty. Each belief is taken for the one
 * below it: the folds ask for the same ones again and again, and parsing all that was found costs much.
 */
const LEVELS = [0.995, 0.98, 0.95, TAKE, ASK, 0];
/** Outcomes of each stranger by level. */
const known = new WeakMap<Stranger, Map<number, Outcome>>();

function judged(one: Stranger, believe: typeof belief): Outcome {
  const exact = one.weighing.weighed ? believe(one.weighing.weighed) : 0;
  const level = LEVELS.find((least) => least <= exact) ?? 0;
  const outcomes = known.get(one) ?? new Map<number, Outcome>();
  known.set(one, outcomes);
  const outcome = outcomes.get(level) ?? outcomeOf(one, () => level);
  outcomes.set(level, outcome);
  return outcome;
}

function outcomeOf({ text, weighing, spotted }: Stranger, believe: typeof belief, voice?: Voice): Outcome {
  const heard = heardOf(weighing, spotted, believe, voice);
  return meaningOf(text) !== undefined ? judge(text, heard) : takesAnything(heard) ? 'wrong' : 'asked';
}

function costOf(outcomes: readonly Outcome[]): number {
  const count = (kind: Outcome): number => outcomes.filter((one) => one === kind).length;
  return count('asked') + WRONG_COSTS * count('wrong');
}

/**
 * The curve of these, and the threshold that costs least. A highest share of wrong ones instead drove the threshold to its end: a single
 * word that is heard wrong at 0.98 forbade all below it.
 */
function fittedOn(some: readonly Stranger[]): typeof belief {
  const rows = some.flatMap(({ text, weighing: { weighed } }) =>
    weighed ? [{ x: features(weighed), right: weighed.sentences[0]?.meaning === meaningOf(text) }] : [],
  );
  const weights = fitted(rows);
  const costs = THRESHOLDS.map((threshold) => {
    const believe = moved(weights, threshold);
    return costOf(some.map((one) => judged(one, believe)));
  });
  return moved(weights, THRESHOLDS[costs.indexOf(Math.min(...costs))] as number);
}

function inFolds(heard: readonly Stranger[]): Judged[] {
  const speakers = [...new Set(heard.map(({ speaker }) => speaker))].sort();
  const foldOf = new Map(speakers.map((speaker, i) => [speaker, i % FOLDS]));
  return Array.from({ length: FOLDS }, (_, fold) => {
    const isIn = ({ speaker }: Stranger): boolean => foldOf.get(speaker) === fold;
    const believe = fittedOn(heard.filter((one) => !isIn(one)));
    return heard
      .filter(isIn)
      .map((one) => ({ ...one, fold, outcome: judged(one, believe), shipped: outcomeOf(one, belief) }));
  }).flat();
}

const all = await strangers();
if (options.keep) process.exit();
const heard = all.filter(({ set }) => set !== READING);
console.log(
  'weights on all of it',
  fitted(
    heard.flatMap(({ text, weighing: { weighed } }) =>
      weighed ? [{ x: features(weighed), right: weighed.sentences[0]?.meaning === meaningOf(text) }] : [],
    ),
  ).map((w) => Number(w.toFixed(3))),
);
const page = figuresPage(
  inFolds(heard),
  voiceTable(all, (one, voice) => outcomeOf(one, belief, voice), costOf),
  heard.map(({ ms }) => ms),
);
console.log(page);
if (options.write) writeFileSync(join(ROOT_FOLDER, 'docs', 'speech-figures.md'), page);
