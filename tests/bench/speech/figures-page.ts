import { wilson } from './interval.ts';
import type { Outcome } from './outcome.ts';

/** What became of one utterance, with the belief of its fold and with the shipped one. */
export interface Judged {
  set: string;
  speaker: string;
  fold: number;
  outcome: Outcome;
  shipped: Outcome;
}

export const SETS: Record<string, string> = {
  clean: 'sentences and single words of ours, people (AN4, Speech Commands)',
  noise: 'the same at 10 dB: white noise, fan, sounder, forklift in turn',
  digits: 'single digits, cut tight (one fast speaker)',
  strings: 'strings of two and three digits, 0 to 0.3 s apart, up to 9 dB quieter (one fast speaker)',
  voices: "the trade's sentences, synthetic voices",
  accents: 'strings of digits, synthetic accents that no hearer was trained on',
  'accented-words': 'single words in those accents: digits, numbers, commands',
  others: 'words and spelling of people that are not ours (wrong: anything was taken)',
  chatter: 'talk that is not ours, synthetic voices (wrong: anything was taken)',
};
/** A worst speaker is told of those with so many utterances in a set. */
const ENOUGH = 10;

export const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
export const share = (all: readonly Outcome[], kind: Outcome): number =>
  all.filter((one) => one === kind).length / Math.max(1, all.length);

function row(name: string, all: readonly Outcome[]): string {
  const { low, high } = wilson(all.filter((one) => one === 'wrong').length, all.length);
  const cells = [
    name,
    all.length,
    percent(share(all, 'right')),
    percent(share(all, 'asked')),
    `${percent(share(all, 'wrong'))} (${percent(low)} to ${percent(high)})`,
  ];
  return `| ${cells.join(' | ')} |`;
}

/** The worst of some groups: most wrong, then least right. */
function worst(
  all: readonly Judged[],
  by: (one: Judged) => string | number,
): [string, Outcome[]] | undefined {
  const groups = new Map<string, Outcome[]>();
  for (const one of all) groups.set(String(by(one)), [...(groups.get(String(by(one))) ?? []), one.outcome]);
  const [first] = [...groups]
    .filter(([, outcomes]) => outcomes.length >= ENOUGH)
    .sort(([, a], [, b]) => share(b, 'wrong') - share(a, 'wrong') || share(a, 'right') - share(b, 'right'));
  return first;
}

function rowsOf(set: string, name: string, all: readonly Judged[]): string[] {
  const of = all.filter((one) => one.set === set);
  if (of.length === 0) return [];
  const speaker = worst(of, (one) => one.speaker);
  const fold = worst(of, (one) => one.fold);
  return [
    row(
      `**${name}**`,
      of.map(({ outcome }) => outcome),
    ),
    ...(speaker && new Set(of.map((one) => one.speaker)).size > 1
      ? [row(`worst speaker, ${speaker[0]}`, speaker[1])]
      : []),
    ...(fold && new Set(of.map((one) => one.fold)).size > 1 ? [row(`worst fold`, fold[1])] : []),
    row(
      'with the curve and threshold that ship',
      of.map(({ shipped }) => shipped),
    ),
  ];
}

/** The tables as a page of docs; `voices`: what a reading changes; `times`: processor time of each utterance, ms. */
export function figuresPage(all: readonly Judged[], voices: string, times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (part: number): string => `${Math.round(sorted[Math.floor(part * sorted.length)] ?? 0)} ms`;
  return `# How well strangers are heard

Written by \`npm run bench:speech-folds -- --write\`; change nothing here by hand. Every speaker below is a stranger to all three hearers
(the split is \`server/speech/training/split.json\`). They are parted into ten folds; for each, the curve of belief and the threshold were
fitted on the other nine. Letters, second hearer and single words together, without expectation. In brackets: Wilson's 95 % interval.
A worst speaker or fold is told where it has at least ${ENOUGH} utterances of a set.

| what | n | right at once | asked | taken wrongly |
| --- | --- | --- | --- | --- |
${Object.entries(SETS)
  .flatMap(([set, name]) => rowsOf(set, name, all))
  .join('\n')}

## With ten digits read before

The same people and voices, those of whom there are ten digits, judged on other recordings. "With": how far voices lie apart was chosen on the other
speakers (one wrong counted as a hundred asked); "as shipped": with the number that ships. The curve of belief is the one that ships.

${voices}
Processor time of one utterance with all hearers: ${at(0.5)} at the median, ${at(0.95)} at the 95th percentile (n ${times.length}, on whatever else
the machine did).
`;
}
