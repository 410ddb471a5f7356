import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { openDataFolder } from '../store/data-folder.ts';
import { FOLDER_OF_OWNER } from '../store/owner-only.ts';
import { StoreFailure } from '../store/store.ts';
import { checkFolder, copyKeys, databaseIn, MANIFEST_FILE, type Manifest, sha256Of } from './folder.ts';
import { askForCopy } from './socket.ts';

export interface Made {
  readonly folder: string;
  readonly manifest: Manifest;
  readonly keys: readonly string[];
  /** Logs that fail their check: copied as they are, because the others need their backup all the same. */
  readonly damaged: readonly string[];
  /** Pictures that are lost, or others than their logs name: the rest of the log is whole. */
  readonly lost: readonly string[];
}

/**
 * A backup of a data folder, in a new folder inside `into`, also while the server runs. Every message that was
 * acknowledged before is in it, and every log in it is checked. `at`: now, ms. Rejects with `StoreFailure`.
 */
export async function backUp(data: string, into: string, at: number): Promise<Made> {
  if (!existsSync(databaseIn(data))) {
    throw new StoreFailure(
      `there is no database in ${data}: name the data folder of the server with --data.`,
    );
  }
  const name = `ladderline-${new Date(at).toISOString().replace(/[-:]/g, '').replace('.', '-')}`;
  const folder = join(into, name);
  // Under another name until it is whole, so that half a backup is never taken for one.
  const half = join(into, `${name}.unfinished`);
  mkdirSync(into, { recursive: true });
  mkdirSync(half, { mode: FOLDER_OF_OWNER });
  const file = databaseIn(half);
  if (!(await askForCopy(data, file))) {
    const store = openDataFolder(data);
    await store.copyTo(file).finally(() => store.close());
  }
  const keys = copyKeys(data, half);
  const { logs, entries, damaged, lost } = await checkFolder(half);
  const manifest: Manifest = {
    format: 'ladderline-backup',
    version: 1,
    at,
    sha256: await sha256Of(file),
    logs,
    entries,
  };
  writeFileSync(join(half, MANIFEST_FILE), `${JSON.stringify(manifest, null, 2)}\n`, { flush: true });
  renameSync(half, folder);
  return { folder, manifest, keys, damaged, lost };
}
