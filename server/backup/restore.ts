import { copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { sha256Of } from '../process/on-disk.ts';
import { openDataFolder } from '../store/data-folder.ts';
import { FOLDER_OF_OWNER } from '../store/owner-only.ts';
import { StoreFailure } from '../store/store.ts';
import {
  type Backup,
  backupIn,
  checkFolder,
  copyKeys,
  databaseIn,
  KEY_FILES,
  type Manifest,
} from './folder.ts';
import { whatIsLost } from './loss.ts';
import { Pieces, putTogether } from './pieces.ts';

export interface Restored {
  readonly from: string;
  readonly manifest: Manifest;
  readonly keys: readonly string[];
  /** Pictures that the backup lacks, or that are others than its logs name. */
  readonly lost: readonly string[];
  /** Where what stood in the data folder before lies now. */
  readonly before?: string;
}

/**
 * Puts a backup into a data folder, after every hash in it was checked. What stands there is never thrown away: without
 * `overwrite` it is refused, with it it is put aside. `at`: now, ms. Rejects with `StoreFailure`.
 */
export async function restore(from: string, data: string, overwrite: boolean, at: number): Promise<Restored> {
  const backup = backupIn(from);
  const { folder, manifest } = backup;
  const isUsed = existsSync(databaseIn(data));
  if (isUsed && !overwrite) {
    throw new StoreFailure(
      `${data} holds a database already: name another folder with --data, or give --overwrite to put it aside.`,
    );
  }
  mkdirSync(data, { recursive: true, mode: FOLDER_OF_OWNER });
  const half = join(data, 'restoring');
  rmSync(half, { recursive: true, force: true });
  mkdirSync(half, { mode: FOLDER_OF_OWNER });
  try {
    await bringDatabase(backup, databaseIn(half));
    const keys = copyKeys(folder, half);
    const { damaged, lost } = await checkFolder(half);
    if (damaged.length > 0)
      throw new StoreFailure(`${folder} holds damaged logs: ${damaged.join('; ')}. Use an older backup.`);
    const before = isUsed ? await putAside(data, at) : undefined;
    for (const name of keys) renameSync(join(half, name), join(data, name));
    // Last, so that a data folder with a database has its keys.
    renameSync(databaseIn(half), databaseIn(data));
    return { from: folder, manifest, keys, lost, ...(before !== undefined && { before }) };
  } finally {
    rmSync(half, { recursive: true, force: true });
  }
}

/** Rejects with `StoreFailure`, which says what is lost, when it is not what was backed up. */
async function bringDatabase(backup: Backup, file: string): Promise<void> {
  const { folder, manifest } = backup;
  if (manifest.version === 1) copyFileSync(databaseIn(folder), file);
  else if (!(await putTogether(manifest.pieces, new Pieces(dirname(folder)), file)))
    throw new StoreFailure(await whatIsLost(backup));
  if ((await sha256Of(file)) !== manifest.sha256)
    throw new StoreFailure(
      `the database in ${folder} is not the file that was backed up: use another backup.`,
    );
}

const PUT_ASIDE = 'before-restore-';

/** Folders in a data folder with what stood there before a restore. */
export const putAsideIn = (data: string): string[] =>
  readdirSync(data)
    .filter((name) => name.startsWith(PUT_ASIDE))
    .map((name) => join(data, name));

/** Refuses while a server has the folder. */
async function putAside(data: string, at: number): Promise<string> {
  // Opened and closed: what still lies in its write-ahead log goes into the file.
  await openDataFolder(data).close();
  const before = join(data, `${PUT_ASIDE}${at}`);
  mkdirSync(before, { mode: FOLDER_OF_OWNER });
  const file = databaseIn(data);
  for (const path of [file, `${file}-wal`, `${file}-shm`]) {
    if (existsSync(path)) renameSync(path, databaseIn(before) + path.slice(file.length));
  }
  for (const name of KEY_FILES) {
    if (existsSync(join(data, name))) renameSync(join(data, name), join(before, name));
  }
  return before;
}
