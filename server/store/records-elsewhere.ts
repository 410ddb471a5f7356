import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { FILE_OF_OWNER } from './owner-only.ts';
import { StoreFailure } from './store.ts';

/** Beside the keys: the name of the database that holds the records. A database file in the folder is then of before. */
const FILE = 'records-elsewhere';

/** For people, without a password. */
export function noteRecordsElsewhere(folder: string, database: string): void {
  const file = join(folder, FILE);
  if (!existsSync(file) || readFileSync(file, 'utf8').trim() !== database)
    writeFileSync(file, `${database}\n`, { mode: FILE_OF_OWNER });
}

/** They were brought back into this folder. */
export const noteRecordsHere = (folder: string): void => rmSync(join(folder, FILE), { force: true });

/** Throws `StoreFailure` where the records of this folder are in a database. `instead`: what to do, given its name. */
export function refuseElsewhere(folder: string, instead: (database: string) => string): void {
  const file = join(folder, FILE);
  if (!existsSync(file)) return;
  const database = readFileSync(file, 'utf8').trim();
  throw new StoreFailure(
    `the records of ${folder} are in ${database}, says its file ${FILE}: ${instead(database)}`,
  );
}
