import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type Plugin } from 'vite';
import { describe, expect, it } from 'vitest';
import { ROOT_FOLDER } from '../../server/process/program.ts';
import { SYNTHESISER } from '../../server/voice/synthesiser.ts';
import { isAllowed } from './allowed.ts';
import { neededBy, type Package, packageIn } from './packages.ts';

const read = (file: string): string => readFileSync(join(ROOT_FOLDER, file), 'utf8');

describe('the licence of every package that the running program needs', () => {
  const needed = neededBy(packageIn(ROOT_FOLDER));
  const listed = (packages: Package[]) => packages.map(({ name, licence }) => `${name}: ${licence}`);

  it('is on the list of those allowed', () => {
    expect(needed.length).toBeGreaterThan(50);
    expect(listed(needed.filter(({ name, licence }) => !isAllowed(name, licence)))).toEqual([]);
  });

  it('is never the GPL', () => {
    expect(listed(needed.filter(({ licence }) => /\bA?GPL/.test(licence)))).toEqual([]);
  });

  it.each([
    ['MIT', true],
    ['(BSD-2-Clause OR MIT OR Apache-2.0)', true],
    ['(MIT OR GPL-3.0-or-later)', true],
    ['(MIT AND GPL-3.0-or-later)', false],
    ['GPL-3.0-or-later', false],
    ['LGPL-3.0-or-later', false],
    ['UNLICENSED', false],
    ['', false],
  ])('%j, of a package that nobody has looked at: allowed %s', (licence, allowed) => {
    expect(isAllowed('some-package', licence)).toBe(allowed);
  });
});

it('the optional voice is neither a dependency nor in the lock file', () => {
  expect(read('package.json')).not.toContain(SYNTHESISER.package);
  expect(read('package-lock.json')).not.toContain(SYNTHESISER.package);
});

it('NOTICE names every package that is copied into the built pages, or bundled with one of these', async () => {
  const copied = new Set<string>();
  const spy: Plugin = {
    name: 'packages',
    moduleParsed({ id }) {
      const [, name] = /.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(id) ?? [];
      if (name) copied.add(name);
    },
  };
  for (const config of ['vite.config.ts', 'vite.worker.config.ts']) {
    await build({
      configFile: join(ROOT_FOLDER, config),
      logLevel: 'silent',
      build: { write: false },
      plugins: [spy],
      worker: { plugins: () => [spy] },
    });
  }
  for (const name of [...copied]) {
    const folder = join(ROOT_FOLDER, 'node_modules', name);
    for (const other of neededBy(packageIn(folder))) copied.add(other.name);
  }
  expect([...copied]).toEqual(
    expect.arrayContaining(['preact', 'onnxruntime-web', 'protobufjs', 'workbox-precaching']),
  );
  // Declarations of types are not copied.
  const names = [...copied].filter((name) => !/^@types\/|^undici-types$/.test(name));
  const words = new Set(read('NOTICE').split(/[\s,]+/));
  expect(names.filter((name) => !words.has(name))).toEqual([]);
}, 600_000);
