import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CANDIDATES } from './browsers/candidates.ts';
import { type Outcome, runJob } from './browsers/job.ts';

/**
 * A short run of the main job in each browser that this machine has, as a table; those that it lacks are named. Build the
 * client first. WebKitGTK needs a display (`xvfb-run npm run bench:browsers`). `-- NAME`: only the browsers whose name
 * matches it.
 */
const only = new RegExp(process.argv[2] ?? '', 'i');
const folder = mkdtempSync(join(tmpdir(), 'ladderline-browsers-'));

interface Column {
  readonly title: string;
  readonly outcomes: readonly Outcome[];
}

const columns: Column[] = [];
for (const { name, by, path, open } of CANDIDATES.filter((one) => only.test(one.name))) {
  if (!path) {
    console.log(`${name}: not on this machine.`);
    continue;
  }
  const own = join(folder, name.replace(/\W+/g, '-'));
  mkdirSync(own);
  try {
    const opened = await open(path);
    console.log(`${name}: ${opened.version}, driven by ${by}.`);
    columns.push({ title: name, outcomes: await runJob(opened, own) });
    await opened.close();
  } catch (error) {
    console.log(`${name}: did not start: ${(error as Error).message.split('\n')[0]}`);
  }
}
const steps = [...new Set(columns.flatMap(({ outcomes }) => outcomes.map(({ step }) => step)))];
const cell = ({ outcomes }: Column, step: string): string => {
  const one = outcomes.find((outcome) => outcome.step === step);
  if (!one) return 'not tried';
  if (!one.ok) return `FAILED: ${one.note}`;
  return one.note || 'yes';
};
const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
console.log(
  [
    row(['', ...columns.map(({ title }) => title)]),
    row(['---', ...columns.map(() => '---')]),
    ...steps.map((step) => row([step, ...columns.map((column) => cell(column, step))])),
  ].join('\n'),
);
console.log(`Pictures: ${folder}`);
process.exit(columns.some(({ outcomes }) => outcomes.some(({ ok }) => !ok)) ? 1 : 0);
