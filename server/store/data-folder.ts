import { accessSync, constants, existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Driver } from './driver.ts';
import { openSqlite, type SqliteStore } from './sqlite.ts';
import { StoreFailure } from './store.ts';

export const DATABASE_FILE = 'ladderline.sqlite';

/** The store of a data folder, which is made when it is not there. Throws `StoreFailure`. */
export function openDataFolder(folder: string, driver?: Driver): SqliteStore {
  try {
    makeFolder(folder);
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new StoreFailure(
      `the data folder ${folder} cannot be written (${code}): choose another with --data, or see to its permissions.`,
    );
  }
  return openSqlite(join(folder, DATABASE_FILE), driver);
}

/** Level by level: Node's own recursive way never returns from a file system that refuses like /proc. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder);
}
