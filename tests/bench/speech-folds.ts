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
import { loadLetterModel } from '../../server/speech/letter-model.ts';
import { openFolder } from '../../server/speech/model-folder.ts';
import { loadSecondHearer, loadSingleWords } from '../../server/speech/other-hearers.ts';
import { TAKE } from '../../src/conversation/decide.ts';
import { wordGraph } from '../../src/grammar/graph.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { belief, curveOf, features } from '../../src/speech/belief.ts';
import { withEdges } from '../../src/speech/edges.ts';
import { heardOf, type Weighing, weigher } from '../../src/speech/hear.ts';
import { secondHearer } from '../../src/speech/second.ts';
import { knownTo, type Spotted, spot } from '../../src/speech/single-words.ts';
import { accented } from './speech/accents.ts';
import { figuresPage, type Judged } from './speech/figures-page.ts';
import { fitted } from './speech/logistic.ts';
import { KINDS, noisy } from './speech/noise.ts';
import { judge, meaningOf, takesAnything } from './speech/outcome.ts';
import { people, type Utterance, voices } from './speech/recordings.ts';
import { strings } from './speech/strings.ts';

const SEED = 20261127;
const FOLDS = 10;
/** Of what a fold is fitted on, at most this share may be taken wrongly. */
const WRONG_MOST = 0.003;
const THRESHOLDS = [0.8, 0.85, 0.88, 0.9, 0.91, 0.92, 0.93, 0.94, 0.95, 0.96, 0.97, 0.98];

interface Heard extends Pick<Utterance, 'speaker' | 'text'> {
  set: string;
  weighing: Weighing;
  spotted: Spotted | undefined;
  ms: number;
}

const program = new Command('bench:speech-folds')
  .option('--recordings <folder>', 'an4, digits and commands', join(ROOT_FOLDER, '..', 'shared', 'speech'))
  .option('--each <n>', 'utterances of each set', Number, 240)
  .option('--model <folder>', 'the speech model', DEFAULT_MODEL_FOLDER)
  .option('--write', 'write docs/speech-figures.md')
  .parse();
const { recordings, each, model, write } = program.opts<{
  recordings: string;
  each: number;
  model: string;
  write?: boolean;
}>();
const rng = createRng(SEED);

const drawn = <T>(from: readonly T[], count: number): T[] => {
  const left = [...from];
  const next = (): T => left.splice(Math.floor(rng() * left.length), 1)[0] as T;
  return Array.from({ length: Math.min(count, left.length) }, next);
};

/** What is said, set by set. */
function sets(): Utterance[] {
  const all = people(recordings);
  const isOurs = ({ text }: Utterance): boolean => meaningOf(text) !== undefined;
  const kinds = Object.values(KINDS);
  const single = all.filter(({ set }) => set !== 'digits');
  const clean = drawn(single.filter(isOurs), each);
  const inNoise = drawn(single.filter(isOurs), each).map((one, i) => ({
    ...one,
    set: 'noise',
    sound: async () => noisy(await one.sound(), kinds[i % kinds.length] as (typeof kinds)[number], 10, rng),
  }));
  const others = drawn(
    single.filter((one) => !isOurs(one)),
    each,
  ).map((one) => ({ ...one, set: 'others' }));
  return [
    ...clean.map((one) => ({ ...one, set: 'clean' })),
    ...inNoise,
    ...strings(
      all.filter(({ set }) => set === 'digits'),
      each,
      rng,
    ),
    ...voices(each / 2, rng).map((one) => ({ ...one, set: 'voices' })),
    ...accented(each / 2, rng),
    ...others,
  ];
}

async function hearAll(): Promise<Heard[]> {
  const folder = openFolder(model);
  const letters = await loadLetterModel(folder);
  const weigh = weigher(wordGraph(), letters.alphabet);
  const second = await loadSecondHearer(folder);
  const single = await loadSingleWords(folder);
  const opinionOf = second && secondHearer(second.words);
  const heard: Heard[] = [];
  for (const { set, speaker, text, sound } of sets()) {
    const samples = withEdges(await sound());
    const begun = process.cpuUsage();
    const weighing = weigh(
      await letters.logits(samples),
      {},
      second && opinionOf?.(await second.logits(samples)),
    );
    const first = weighing.weighed?.sentences[0]?.text ?? '';
    const spotted = single && knownTo(single, first) ? await spot(single, samples) : undefined;
    const { user, system } = process.cpuUsage(begun);
    heard.push({ set, speaker, text, weighing, spotted, ms: (user + system) / 1000 });
  }
  return heard;
}

/** The belief with which a threshold of `TAKE` takes what this curve takes from `least` on. */
function moved(weights: readonly number[], least: number): ReturnType<typeof curveOf> {
  const [first = 0, ...rest] = weights;
  const logit = (p: number): number => Math.log(p / (1 - p));
  return curveOf([first + logit(TAKE) - logit(least), ...rest]);
}

const judged = ({ text, weighing, spotted }: Heard, believe: typeof belief) => {
  const one = heardOf(weighing, spotted, believe);
  return meaningOf(text) === undefined ? (takesAnything(one) ? 'wrong' : 'asked') : judge(text, one);
};

/** The curve and threshold that take the most rightly of these, with few enough wrong. */
function fittedOn(some: readonly Heard[]): typeof belief {
  const rows = some.flatMap(({ text, weighing: { weighed } }) =>
    weighed ? [{ x: features(weighed), right: weighed.sentences[0]?.meaning === meaningOf(text) }] : [],
  );
  const weights = fitted(rows);
  const least = THRESHOLDS.find((threshold) => {
    const believe = moved(weights, threshold);
    const wrong = some.filter((one) => judged(one, believe) === 'wrong').length;
    return wrong <= WRONG_MOST * some.length;
  });
  return moved(weights, least ?? (THRESHOLDS.at(-1) as number));
}

function inFolds(heard: readonly Heard[]): Judged[] {
  const speakers = [...new Set(heard.map(({ speaker }) => speaker))].sort();
  const foldOf = new Map(speakers.map((speaker, i) => [speaker, i % FOLDS]));
  return Array.from({ length: FOLDS }, (_, fold) => {
    const isIn = ({ speaker }: Heard): boolean => foldOf.get(speaker) === fold;
    const believe = fittedOn(heard.filter((one) => !isIn(one)));
    return heard
      .filter(isIn)
      .map((one) => ({ ...one, fold, outcome: judged(one, believe), shipped: judged(one, belief) }));
  }).flat();
}

const heard = await hearAll();
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
  heard.map(({ ms }) => ms),
);
console.log(page);
if (write) writeFileSync(join(ROOT_FOLDER, 'docs', 'speech-figures.md'), page);
