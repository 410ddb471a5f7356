/**
 * Fits the curve of `src/speech/belief.ts` on half of the held-out people, without and with noise:
 *
 *     npx tsx tests/bench/speech/fit.ts [RECORDINGS]
 */
import { join } from 'node:path';
import { DEFAULT_MODEL_FOLDER, ROOT_FOLDER } from '../../../server/process/program.ts';
import { loadLetterModel } from '../../../server/speech/letter-model.ts';
import { openFolder } from '../../../server/speech/model-folder.ts';
import { wordGraph } from '../../../src/grammar/graph.ts';
import { createRng } from '../../../src/simulator/rng.ts';
import { features } from '../../../src/speech/belief.ts';
import { withEdges } from '../../../src/speech/edges.ts';
import { weigher } from '../../../src/speech/hear.ts';
import { fitted } from './logistic.ts';
import { KINDS, noisy } from './noise.ts';
import { meaningOf } from './outcome.ts';
import { isForFit, people, voices } from './recordings.ts';
import { printBins, printThresholds } from './thresholds.ts';

const rng = createRng(3);
const [recordings = join(ROOT_FOLDER, '..', 'shared', 'speech')] = process.argv.slice(2);
const model = await loadLetterModel(openFolder(DEFAULT_MODEL_FOLDER));
const weigh = weigher(wordGraph(), model.alphabet);

const rows: { x: number[]; right: boolean; snr: number; ours: boolean }[] = [];
const kinds = Object.values(KINDS);
for (const utterance of [...people(recordings), ...voices(250, rng)].filter(isForFit)) {
  const sound = await utterance.sound();
  const kind = kinds[Math.floor(rng() * kinds.length)] as (typeof kinds)[number];
  const meant = meaningOf(utterance.text);
  for (const quiet of [true, false]) {
    const snr = quiet ? 40 : 12 * rng();
    const { weighed } = weigh(await model.logits(withEdges(noisy(sound, kind, snr, rng))));
    if (!weighed) continue;
    const right = weighed.sentences[0]?.meaning === meant;
    rows.push({ x: features(weighed), right, snr, ours: meant !== undefined });
  }
}

const weights = fitted(rows);

console.log(`${rows.length} utterances, ${rows.filter(({ right }) => right).length} right`);
console.log(
  'weights',
  weights.map((w) => Number(w.toFixed(3))),
);
const believed = rows.map(({ x, ...row }) => ({
  ...row,
  belief: 1 / (1 + Math.exp(-x.reduce((sum, value, i) => sum + value * (weights[i] as number), 0))),
}));
printBins(believed);
for (const [name, some] of [
  ['ours at 40 dB', believed.filter(({ ours, snr }) => ours && snr === 40)],
  ['ours at 6 to 12 dB', believed.filter(({ ours, snr }) => ours && snr >= 6 && snr <= 12)],
  ['ours at 0 to 6 dB', believed.filter(({ ours, snr }) => ours && snr < 6)],
  ['not ours', believed.filter(({ ours }) => !ours)],
] as const) {
  console.log(`\n${name}`);
  printThresholds(some);
}
