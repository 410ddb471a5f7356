import { readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { cruise, type ICruiseResult } from 'dependency-cruiser';
import extractDepcruiseOptions from 'dependency-cruiser/config-utl/extract-depcruise-options';
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config';
import { beforeAll, describe, expect, it } from 'vitest';
import { arrowsTable, coreDrawing, FOLDERS, SHARED } from './table.ts';

let found: ICruiseResult;

beforeAll(async () => {
  const options = await extractDepcruiseOptions('./.dependency-cruiser.mjs');
  const { output } = await cruise(['src', 'server', 'client'], options, undefined, {
    tsConfig: extractTSConfig('./tsconfig.json'),
  });
  if (typeof output === 'string') throw new Error(output);
  found = output;
}, 120_000);

/** Every arrow between two folders that some file draws. */
function arrows(): Map<string, Set<string>> {
  const all = new Map<string, Set<string>>();
  for (const { source, dependencies } of found.modules) {
    const from = all.get(dirname(source)) ?? new Set();
    for (const { resolved } of dependencies)
      if (dirname(resolved) !== dirname(source)) from.add(dirname(resolved));
    all.set(dirname(source), from);
  }
  return all;
}

describe('the arrows between files', () => {
  it('are all allowed, and make no circle', () => {
    const violations = found.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} → ${to}`);
    expect(violations).toEqual([]);
    expect(found.summary.totalCruised).toBeGreaterThan(400);
  });

  it('are all seen, also those that take only a type', () => {
    // src/phrases takes nothing but types from src/log.
    expect(arrows().get('src/phrases')).toContain('src/log');
  });
});

describe('the table of folders', () => {
  it('names every folder with code in it, and no other', () => {
    const withCode = [...arrows().keys()].filter((folder) => /^(src|server|client)\b/.test(folder));
    expect(Object.keys(FOLDERS).sort()).toEqual(withCode.sort());
  });

  it('has each folder below all that it takes from, so that there is no circle', () => {
    const names = Object.keys(FOLDERS);
    for (const [folder, { from }] of Object.entries(FOLDERS)) {
      for (const other of from) {
        expect(names.indexOf(other), `${folder} takes from ${other}`).toBeGreaterThanOrEqual(0);
        expect(names.indexOf(other), `${folder} takes from ${other}`).toBeLessThan(names.indexOf(folder));
      }
    }
  });

  it('allows no arrow that nobody draws', () => {
    const drawn = arrows();
    const idle = Object.entries(FOLDERS).flatMap(([folder, { from }]) =>
      from.filter((other) => !drawn.get(folder)?.has(other)).map((other) => `${folder} → ${other}`),
    );
    expect(idle).toEqual([]);
    expect(FOLDERS[SHARED]?.from).toEqual([]);
  });

  it('stands in docs/architecture.md as it is here, with its drawing', () => {
    // Written again with `npm run arrows`.
    const page = readFileSync('docs/architecture.md', 'utf8');
    expect(page).toContain(arrowsTable());
    expect(page).toContain(coreDrawing());
  });
});
