import { accessSync, constants, existsSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Driver } from './driver.ts';
import { closeToOthers, FILE_OF_OWNER, FOLDER_OF_OWNER, makeClosed } from './owner-only.ts';
import { openSqlite, type SqliteStore, type Warn } from './sqlite.ts';
import { StoreFailure } from './store.ts';
import { summaryKeyOf } from './summary-key.ts';

export const DATABASE_FILE = 'ladderline.sqlite';

/**
 * The store of a data folder, which is made when it is not there, and is closed to all others than the user who runs
 * the server. `warn` hears what should be looked into. Throws `StoreFailure`.
 */
export function openDataFolder(folder: string, driver?: Driver, warn?: Warn): SqliteStore {
  makeDataFolder(folder);
  const file = join(folder, DATABASE_FILE);
  const isOld = existsSync(file);
  // A folder that holds other things may be open to others on purpose.
  if (isOld && !closeToOthers(folder, FOLDER_OF_OWNER)) warn?.(openToOthers(folder));
  const { key, isNew } = summaryKeyOf(folder);
  // SQLite gives `-wal` and `-shm` the permissions of the database itself.
  if (!isOld) makeClosed(file);
  for (const name of [file, `${file}-wal`, `${file}-shm`]) {
    if (existsSync(name) && !closeToOthers(name, FILE_OF_OWNER)) warn?.(openToOthers(name));
  }
  const store = openSqlite(file, key, driver, warn);
  if (isOld && isNew) warn?.(NEW_KEY);
  return store;
}

/** Makes it where it is not there. Throws `StoreFailure` where it cannot be written. */
export function makeDataFolder(folder: string): void {
  try {
    makeFolder(folder);
    accessSync(folder, constants.W_OK | constants.X_OK);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new StoreFailure(
      `the data folder ${folder} cannot be written (${code}): choose another with --data, or see to its permissions.`,
    );
  }
}

const openToOthers = (path: string): string =>
  `${path} can be read by other users of this machine, and its permissions cannot be changed: give it to the user who runs the server.`;

const NEW_KEY =
  'the key of the kept summaries was missing, and a new one was made: all summaries are made again from the logs.';

/** Level by level: Node's own recursive way never returns from a file system that refuses like /proc. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder, { mode: FOLDER_OF_OWNER });
}
