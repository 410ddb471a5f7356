import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** An installed package, as its package.json has it. */
export interface Package {
  name: string;
  folder: string;
  /** An expression of SPDX names, as a rule; empty where it states none. */
  licence: string;
  /** What it needs to run, by name. */
  needs: string[];
}

export function packageIn(folder: string): Package {
  const { name, license, dependencies, optionalDependencies } = JSON.parse(
    readFileSync(join(folder, 'package.json'), 'utf8'),
  );
  const needs = Object.keys({ ...dependencies, ...optionalDependencies });
  return { name, folder, licence: license ?? '', needs };
}

/** Every installed package that this one needs to run, through others too. */
export function neededBy(first: Package): Package[] {
  const found = new Map<string, Package>();
  const visit = (one: Package): void => {
    for (const name of one.needs) {
      const folder = folderOf(name, one.folder);
      if (!folder || found.has(folder)) continue;
      found.set(folder, packageIn(folder));
      visit(packageIn(folder));
    }
  };
  visit(first);
  return [...found.values()];
}

/** Where Node would find it from there; undefined where it is not installed, as those for other systems are not. */
function folderOf(name: string, from: string): string | undefined {
  const folder = join(from, 'node_modules', name);
  if (existsSync(join(folder, 'package.json'))) return folder;
  return dirname(from) === from ? undefined : folderOf(name, dirname(from));
}
