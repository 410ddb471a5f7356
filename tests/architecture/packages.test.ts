import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const { dependencies, optionalDependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
const FETCHED: ReadonlySet<string> = new Set(Object.keys({ ...dependencies, ...optionalDependencies }));

/** All but what trains the models and reads sound files for that: it runs where the server is installed. */
const files = ['src', 'server'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((name) => name.endsWith('.ts') && !/\/training\/|\/transcribe\.ts$|\/sound-file\.ts$/.test(name)),
);

/** The packages that a file takes something from when it runs: not Node's own, and no types. */
const packagesIn = (text: string): string[] =>
  [
    ...text.matchAll(
      /^(?:import|export) (?!type\b)(?:[^;']*? from )?'([^'.][^']*)'|\bimport\('([^'.][^']*)'\)/gm,
    ),
  ]
    .map(([, from, later]) => from ?? later ?? '')
    .filter((name) => !name.startsWith('node:'))
    .map((name) => name.split('/', name.startsWith('@') ? 2 : 1).join('/'));

it('the server takes nothing from a package that an installation without those of the tests lacks', () => {
  const lacking = files.flatMap((file) =>
    packagesIn(readFileSync(file, 'utf8'))
      .filter((name) => !FETCHED.has(name))
      .map((name) => `${file}: ${name}`),
  );
  expect(files.length).toBeGreaterThan(400);
  expect(lacking).toEqual([]);
});
