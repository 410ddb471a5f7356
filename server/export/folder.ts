import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { sha256Of, syncFolder } from '../process/on-disk.ts';
import { FILE_OF_OWNER, FOLDER_OF_OWNER } from '../store/owner-only.ts';
import { StoreFailure } from '../store/store.ts';
import { MANIFEST_FILE, type Manifest } from './manifest.ts';

/** A line for each file, as `sha256sum --check` reads it (GNU coreutils); written last, so that half an export has none. */
export const SUMS_FILE = 'SHA256SUMS';

/** Where an export is written: readable by the owner only. */
export class ExportFolder {
  private readonly names: string[] = [];

  private constructor(readonly path: string) {}

  /** Throws `StoreFailure` where something lies in it already. */
  static make(path: string): ExportFolder {
    if (existsSync(path) && readdirSync(path).length > 0)
      throw new StoreFailure(`${path} is not empty: name a folder that is new.`);
    mkdirSync(path, { recursive: true, mode: FOLDER_OF_OWNER });
    return new ExportFolder(path);
  }

  /** `name`: with slashes, below the folder. */
  write(name: string, content: string | Uint8Array): void {
    const file = join(this.path, name);
    mkdirSync(dirname(file), { recursive: true, mode: FOLDER_OF_OWNER });
    writeFileSync(file, content, { mode: FILE_OF_OWNER, flush: true });
    this.names.push(name);
  }

  /** Each value as JSON in a line of its own. Returns how many there were. */
  async writeLines(name: string, batches: AsyncIterable<readonly object[]>): Promise<number> {
    this.write(name, '');
    let count = 0;
    for await (const batch of batches) {
      const lines = batch.map((value) => `${JSON.stringify(value)}\n`).join('');
      writeFileSync(join(this.path, name), lines, { flag: 'a', flush: true });
      count += batch.length;
    }
    return count;
  }

  async finish(manifest: Manifest): Promise<void> {
    this.write(MANIFEST_FILE, `${JSON.stringify(manifest, undefined, 1)}\n`);
    const lines: string[] = [];
    for (const name of this.names.sort()) lines.push(`${await sha256Of(join(this.path, name))}  ${name}\n`);
    writeFileSync(join(this.path, SUMS_FILE), lines.join(''), { mode: FILE_OF_OWNER, flush: true });
    syncFolder(this.path);
  }
}

/** What is wrong with the files of an export: missing, changed, or not of it. Without a list of them, only that. */
export async function fileFaults(folder: string): Promise<string[]> {
  const list = join(folder, SUMS_FILE);
  if (!existsSync(list)) return [`${SUMS_FILE} is missing: the export was cut off, or is none.`];
  const sums = new Map(
    readFileSync(list, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => [line.slice(66), line.slice(0, 64)]),
  );
  const there = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => !each.isDirectory())
    .map((each) => join(each.parentPath, each.name).slice(join(folder, '/').length));
  const faults = there
    .filter((name) => name !== SUMS_FILE && !sums.has(name))
    .map((name) => `${name} is not of this export.`);
  for (const [name, sum] of sums) {
    if (!there.includes(name)) faults.push(`${name} is missing.`);
    else if ((await sha256Of(join(folder, name))) !== sum) faults.push(`${name} was changed.`);
  }
  return faults;
}
