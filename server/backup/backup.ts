import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { sha256Of, syncFolder } from '../process/on-disk.ts';
import { openDataFolder } from '../store/data-folder.ts';
import { FILE_OF_OWNER, FOLDER_OF_OWNER } from '../store/owner-only.ts';
import { refuseElsewhere } from '../store/records-elsewhere.ts';
import { StoreFailure } from '../store/store.ts';
import {
  backupsIn,
  checkFolder,
  copyKeys,
  databaseIn,
  HEADS_FILE,
  headsText,
  KEY_FILES,
  MANIFEST_FILE,
  type Manifest,
  UNFINISHED,
} from './folder.ts';
import { Pieces, takeApart } from './pieces.ts';
import { askForCopy } from './socket.ts';
import { inTurn } from './turn.ts';

export interface Made {
  readonly folder: string;
  readonly manifest: Manifest;
  readonly keys: readonly string[];
  /** Logs that fail their check: copied as they are, because the others need their backup all the same. */
  readonly damaged: readonly string[];
  /** Pictures that are lost, or others than their logs name: the rest of the log is whole. */
  readonly lost: readonly string[];
  /** Bytes that were written for it beside those of the backups before. */
  readonly bytes: number;
  /** Pieces of backups before that were damaged: they are whole again. */
  readonly mended: number;
  /** Older backups that were taken away. */
  readonly removed: readonly string[];
}

/**
 * A backup of a data folder, in a new folder inside `into`, also while the server runs. Every message that was
 * acknowledged before is in it, and every log in it is checked. What it has in common with those before is not written
 * again. `at`: now, ms. `keep`: how many backups may stay; without it, and where
 * anything in the new one is damaged, all. Rejects with `StoreFailure`.
 */
export async function backUp(data: string, into: string, at: number, keep?: number): Promise<Made> {
  refuseElsewhere(
    data,
    () =>
      `back that up with the tools of PostgreSQL (docs/operations.md, “The backup”), and copy from this folder ${KEY_FILES.join(', ')}, those that are there.`,
  );
  if (!existsSync(databaseIn(data))) {
    throw new StoreFailure(
      `there is no database in ${data}: name the data folder of the server with --data.`,
    );
  }
  mkdirSync(into, { recursive: true });
  return inTurn(into, async () => {
    forgetUnfinished(into);
    const made = await make(data, into, at);
    // An older one may be the last that has what was damaged since.
    const mayRemove = keep !== undefined && made.damaged.length === 0 && made.lost.length === 0;
    return { ...made, removed: mayRemove ? removeAllBut(into, keep) : [] };
  });
}

async function make(data: string, into: string, at: number): Promise<Omit<Made, 'removed'>> {
  const name = `ladderline-${new Date(at).toISOString().replace(/[-:]/g, '').replace('.', '-')}`;
  const folder = join(into, name);
  // Under another name until it is whole, so that half a backup is never taken for one.
  const half = folder + UNFINISHED;
  mkdirSync(half, { mode: FOLDER_OF_OWNER });
  const copied = join(half, 'copied');
  mkdirSync(copied, { mode: FOLDER_OF_OWNER });
  const file = databaseIn(copied);
  if (!(await askForCopy(data, file))) {
    const store = openDataFolder(data);
    await store.copyTo(file).finally(() => store.close());
  }
  const keys = copyKeys(data, half);
  // Before it is opened, so that its pages lie as they lay in the backups before.
  const { names, bytes, mended } = await takeApart(file, new Pieces(into));
  const sha256 = await sha256Of(file);
  copyKeys(data, copied);
  const { heads, damaged, lost } = await checkFolder(copied);
  rmSync(copied, { recursive: true });
  const manifest: Manifest = {
    format: 'ladderline-backup',
    version: 2,
    at,
    sha256,
    pieces: names,
    logs: heads.length,
    entries: heads.reduce((sum, { count }) => sum + count, 0),
  };
  const beside = [
    write(join(half, HEADS_FILE), gzipSync(headsText(heads))),
    write(join(half, MANIFEST_FILE), Buffer.from(`${JSON.stringify(manifest)}\n`)),
  ];
  renameSync(half, folder);
  syncFolder(into);
  return { folder, manifest, keys, damaged, lost, bytes: beside.reduce((a, b) => a + b, bytes), mended };
}

function write(file: string, content: Uint8Array): number {
  writeFileSync(file, content, { mode: FILE_OF_OWNER, flush: true });
  return content.length;
}

/** What backups that were killed have left, half made or half taken away. */
function forgetUnfinished(into: string): void {
  for (const name of readdirSync(into))
    if (name.startsWith('ladderline-') && name.endsWith(UNFINISHED))
      rmSync(join(into, name), { recursive: true });
}

/** Takes away all backups but the newest, and the pieces that none of these has. Returns their folders. */
function removeAllBut(into: string, keep: number): string[] {
  const old = backupsIn(into).slice(keep);
  for (const { folder } of old) {
    // From here on it is none, so that no backup ever lacks its pieces.
    renameSync(folder, folder + UNFINISHED);
    rmSync(folder + UNFINISHED, { recursive: true });
  }
  const kept = backupsIn(into).flatMap(({ manifest }) => (manifest.version === 2 ? manifest.pieces : []));
  new Pieces(into).keepOnly(new Set(kept));
  return old.map(({ folder }) => folder);
}
