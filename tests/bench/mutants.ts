import { relative } from 'node:path';
import { parseArgs } from 'node:util';
import type { MutantResult, PartialStrykerOptions } from '@stryker-mutator/api/core';
import { Stryker } from '@stryker-mutator/core';
import { FILES, SHARE } from './mutants/held.ts';
import { mutateNumbers } from './mutants/numbers.ts';

/**
 * How many small changes to the files that decide safety the tests notice: of all of them, or of those given as
 * arguments. Lists what lived, then a table; fails where too many did. `--changed` runs again only what changed in
 * a file or its tests since the last time, and does not see a change elsewhere.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { concurrency: { type: 'string', default: '2' }, changed: { type: 'boolean', default: false } },
});
const unknown = positionals.filter((name) => !FILES.includes(name));
if (unknown.length > 0) throw new Error(`not in the list of tests/bench/mutants/held.ts: ${unknown}`);
const files = positionals.length > 0 ? positionals : FILES;

const OPTIONS: PartialStrykerOptions = {
  mutate: [...files],
  testRunner: 'vitest',
  vitest: { configFile: 'tests/bench/mutants/vitest.config.ts' },
  coverageAnalysis: 'perTest',
  concurrency: Number(values.concurrency),
  // A word is one of a closed set, and the compiler refuses any other; what hangs on it is a comparison, and
  // those are mutated.
  mutator: { excludedMutations: ['StringLiteral'] },
  incremental: true,
  incrementalFile: 'node_modules/.cache/mutants.json',
  force: !values.changed,
  // Not below node_modules, where vitest would not compile it.
  tempDirName: '.mutants',
  ignorePatterns: ['docs', 'dist', 'data', 'server/speech/model'],
  disableTypeChecks: false,
  reporters: ['progress-append-only'],
  allowConsoleColors: false,
};

// One that runs on and on is as good as killed, unless the machine was busy: so these are counted by themselves, too.
const isEndless = ({ status }: MutantResult): boolean => status === 'Timeout';
const isKilled = (mutant: MutantResult): boolean => mutant.status === 'Killed' || isEndless(mutant);
const isLiving = ({ status }: MutantResult): boolean => status === 'Survived' || status === 'NoCoverage';

function describe({ location, mutatorName, replacement, status }: MutantResult): string {
  const { line, column } = location.start;
  const to = replacement?.replace(/\s+/g, ' ');
  return `${line}:${column} ${mutatorName} → ${to}${status === 'NoCoverage' ? ' (no test runs it)' : ''}`;
}

await mutateNumbers();
const all = await new Stryker(OPTIONS).runMutationTest();
const within = (file: string) => all.filter(({ fileName }) => relative('', fileName) === file);

const place = ({ location: { start } }: MutantResult): number => 1_000 * start.line + start.column;
for (const file of files) {
  const living = within(file).filter(isLiving);
  for (const mutant of living.sort((a, b) => place(a) - place(b))) console.log(`${file}:${describe(mutant)}`);
}

const rows = files.map((file) => {
  const killed = within(file).filter(isKilled).length;
  const endless = within(file).filter(isEndless).length;
  const survived = within(file).filter(isLiving).length;
  return { file, killed, endless, survived, share: killed / (killed + survived) };
});
console.table(
  Object.fromEntries(
    rows.map(({ file, killed, endless, survived, share }) => [
      file,
      {
        mutants: killed + survived,
        killed,
        'of them by timeout': endless,
        survived,
        'share, %': (100 * share).toFixed(1),
      },
    ]),
  ),
);
if (rows.some(({ share }) => !(share >= SHARE))) process.exitCode = 1;
