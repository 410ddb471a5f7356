/**
 * How well a display is read, of kinds that the reader was not trained on:
 *
 *     npm run bench:sight -- [--each N] [--model FILE] [--tesseract] [--seed N]
 */
import { Command } from 'commander';
import { createRng } from '../../src/simulator/rng.ts';
import { KINDS, SPOILERS } from './sight/held-out.ts';
import { ownReader, type Reader, tesseractReader } from './sight/readers.ts';
import { type Outcome, sequence } from './sight/sequence.ts';
import { wilson } from './speech/interval.ts';

const program = new Command('bench:sight')
  .option('--each <n>', 'displays of each kind, spoilt in each way', Number, 20)
  .option('--seed <n>', 'of all draws', Number, 20261126)
  .option('--model <file>', 'another reader of ours')
  .option('--tesseract', 'measure tesseract.js instead of our network')
  .parse();
const { each, seed, model, tesseract } = program.opts<{
  each: number;
  seed: number;
  model?: string;
  tesseract?: boolean;
}>();

const reader: Reader = tesseract ? await tesseractReader() : await ownReader(model);
const rng = createRng(seed);

interface Row {
  kind: string;
  spoilt: string;
  outcomes: Outcome[];
}
const rows: Row[] = [];
for (const kind of KINDS)
  for (const [spoilt, spoil] of Object.entries(SPOILERS)) {
    const outcomes: Outcome[] = [];
    for (let i = 0; i < each; i++) outcomes.push(await sequence(rng, kind.lookOf(rng), spoil, reader));
    rows.push({ kind: kind.name, spoilt, outcomes });
  }

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(1, whole)).toFixed(1)}`;
const interval = (part: number, whole: number) => {
  const { low, high } = wilson(part, Math.max(1, whole));
  return `${percent(part, whole)} (${(100 * low).toFixed(2)} to ${(100 * high).toFixed(2)})`;
};
const sum = (outcomes: readonly Outcome[], of: (outcome: Outcome) => number) =>
  outcomes.reduce((total, outcome) => total + of(outcome), 0);

function print(name: string, all: readonly Outcome[]): void {
  const begun = all.filter(({ began }) => began);
  const taken = begun.filter((o) => o.taken !== 'nothing').length;
  const wrong = begun.filter((o) => o.taken === 'wrong').length;
  const usable = sum(begun, (o) => o.read - o.misread);
  console.log(
    `| ${name} | ${all.length} | ${percent(
      sum(all, (o) => o.exact),
      sum(all, (o) => o.frames),
    )} | ${percent(begun.length, all.length)} | ${percent(
      usable,
      sum(begun, (o) => o.frames),
    )} | ${percent(taken, begun.length)} | ${wrong} of ${taken}: ${interval(wrong, taken)} | ${sum(begun, (o) => o.misread)} |`,
  );
}

const HEAD = [
  'n',
  'likeliest is right, % of all frames',
  'begun, %',
  'frames usable, % of those begun',
  'taken, %',
  'taken wrongly, % (95 %)',
  'frames misread',
];
for (const by of ['kind', 'spoilt'] as const) {
  console.log(`\n| ${[by === 'kind' ? 'display' : 'spoilt by', ...HEAD].join(' | ')} |`);
  console.log(`| ${[...HEAD, ''].map(() => '---').join(' | ')} |`);
  const names = [...new Set(rows.map((row) => row[by]))];
  for (const name of names)
    print(
      name,
      rows.filter((row) => row[by] === name).flatMap(({ outcomes }) => outcomes),
    );
  if (by === 'spoilt')
    print(
      'all',
      rows.flatMap(({ outcomes }) => outcomes),
    );
}
const all = rows.flatMap(({ outcomes }) => outcomes);
console.log(
  '\n| a frame is read from a belief of | read, % of all frames | misread, % of those read (95 %) |',
);
console.log('| --- | --- | --- |');
const frames = sum(all, (o) => o.frames);
for (const from of [0.5, 0.7, 0.8, 0.85, 0.9, 0.93, 0.95, 0.97, 0.98, 0.99]) {
  const read = all.flatMap(({ beliefs }) => beliefs).filter(({ belief }) => belief >= from);
  const wrong = read.filter(({ right }) => !right).length;
  console.log(
    `| ${from} | ${percent(read.length, frames)} | ${wrong} of ${read.length}: ${interval(wrong, read.length)} |`,
  );
}
const ms = all.flatMap((o) => o.ms).sort((a, b) => a - b);
console.log(
  `\n${reader.name}: ${ms[ms.length >> 1]?.toFixed(1)} ms a frame at the median, ${ms[Math.floor(ms.length * 0.99)]?.toFixed(1)} ms at 99 %.`,
);
for (const { kind, spoilt, outcomes } of rows)
  for (const { wrong } of outcomes) if (wrong) console.log(`wrong: ${wrong} (${kind}, ${spoilt})`);
process.exit(0);
