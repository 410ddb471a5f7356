import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import { FILE_OF_OWNER, FOLDER_OF_OWNER } from '../store/owner-only.ts';

/**
 * A database in pieces of always the same length, each in a file of the name of its SHA-256. What two backups have in common
 * lies there once: SQLite changes whole pages and leaves the others where they are.
 */
export const PIECES_FOLDER = 'pieces';

/** 16 pages of SQLite. Smaller ones would be too many files, of larger ones each change would cost more. */
export const PIECE_BYTES = 64 * 1024;

/** SHA-256 of what is in the piece, hexadecimal. */
export type PieceName = string;

const nameOf = (content: Uint8Array): PieceName => createHash('sha256').update(content).digest('hex');

/** `pieces` in a folder of backups. */
export class Pieces {
  private readonly folder: string;

  constructor(backups: string) {
    this.folder = join(backups, PIECES_FOLDER);
  }

  private fileOf(name: PieceName): string {
    return join(this.folder, name.slice(0, 2), `${name}.gz`);
  }

  /** What is in it; undefined where it is missing, or is not what it was. */
  read(name: PieceName): Uint8Array | undefined {
    try {
      const content = gunzipSync(readFileSync(this.fileOf(name)));
      return nameOf(content) === name ? content : undefined;
    } catch {
      return undefined;
    }
  }

  /**
   * Sees to it that the piece is there, whole, and on the disk. One that was there is read again: a backup never rests on a
   * piece that nobody looked at. `bytes`: how many were written.
   */
  put(content: Uint8Array): { name: PieceName; bytes: number; wasDamaged: boolean } {
    const name = nameOf(content);
    if (this.read(name)) return { name, bytes: 0, wasDamaged: false };
    const file = this.fileOf(name);
    const wasDamaged = existsSync(file);
    mkdirSync(join(this.folder, name.slice(0, 2)), { recursive: true, mode: FOLDER_OF_OWNER });
    const packed = gzipSync(content);
    // Under another name until it is whole: a killed backup leaves no half piece.
    writeFileSync(`${file}.new`, packed, { mode: FILE_OF_OWNER, flush: true });
    renameSync(`${file}.new`, file);
    return { name, bytes: packed.length, wasDamaged };
  }

  /** Takes away all but these, and what killed backups left. Returns how many pieces went. */
  keepOnly(names: ReadonlySet<PieceName>): number {
    let gone = 0;
    for (const part of existsSync(this.folder) ? readdirSync(this.folder) : []) {
      for (const file of readdirSync(join(this.folder, part))) {
        if (file.endsWith('.gz') && names.has(file.slice(0, -'.gz'.length))) continue;
        rmSync(join(this.folder, part, file));
        gone += 1;
      }
    }
    return gone;
  }
}

export interface Taken {
  readonly names: PieceName[];
  /** Bytes that were written for it. */
  readonly bytes: number;
  /** How many pieces of earlier backups were damaged, and are whole again: what they hold is the same. */
  readonly mended: number;
}

/** Puts a file among the pieces. */
export async function takeApart(file: string, pieces: Pieces): Promise<Taken> {
  const handle = await open(file);
  try {
    const names: PieceName[] = [];
    let bytes = 0;
    let mended = 0;
    for await (const content of inPieces(handle)) {
      const put = pieces.put(content);
      names.push(put.name);
      bytes += put.bytes;
      if (put.wasDamaged) mended += 1;
    }
    return { names, bytes, mended };
  } finally {
    await handle.close();
  }
}

async function* inPieces(handle: FileHandle): AsyncGenerator<Uint8Array> {
  for (;;) {
    const room = Buffer.alloc(PIECE_BYTES);
    let length = 0;
    while (length < PIECE_BYTES) {
      const { bytesRead } = await handle.read(room, length, PIECE_BYTES - length);
      if (bytesRead === 0) break;
      length += bytesRead;
    }
    if (length > 0) yield room.subarray(0, length);
    if (length < PIECE_BYTES) return;
  }
}

/** The numbers of the pieces that are missing or damaged. */
export const damagedPieces = (names: readonly PieceName[], pieces: Pieces): number[] =>
  names.flatMap((name, i) => (pieces.read(name) ? [] : [i]));

/** Writes a file from its pieces. False where one of them is missing or damaged: then the file is worth nothing. */
export async function putTogether(
  names: readonly PieceName[],
  pieces: Pieces,
  file: string,
): Promise<boolean> {
  const handle = await open(file, 'w', FILE_OF_OWNER);
  try {
    for (const name of names) {
      const content = pieces.read(name);
      if (!content) return false;
      await handle.writeFile(content);
    }
    await handle.sync();
    return true;
  } finally {
    await handle.close();
  }
}
