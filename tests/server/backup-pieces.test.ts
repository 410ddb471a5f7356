import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { backUp } from '../../server/backup/backup.ts';
import { backupsIn, checkFolder, KEY_FILES, MANIFEST_FILE } from '../../server/backup/folder.ts';
import { PIECES_FOLDER } from '../../server/backup/pieces.ts';
import { restore } from '../../server/backup/restore.ts';
import { sha256Of } from '../../server/process/on-disk.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { sealRemarks } from '../store/contract.ts';
import { start } from './child.ts';

const root = mkdtempSync(join(tmpdir(), 'lp-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const JOB = 'job-one-0001';
const OTHER = 'job-two-0002';

/** Adds entries to a log of a stopped server. */
async function grow(data: string, count: number, job = JOB): Promise<void> {
  const store = openDataFolder(data);
  const head = (await store.head(job)) ?? emptyHead(job);
  const texts = Array.from({ length: count }, (_, i) => `remark ${head.count + i} ${'x'.repeat(300)}`);
  await store.append(job, sealRemarks(head, texts));
  await store.close();
}

async function countIn(folder: string, job = JOB): Promise<number> {
  const store = openDataFolder(folder);
  expect(await store.audit(job)).toBeUndefined();
  const { count } = await store.head(job);
  await store.close();
  return count;
}

/** What a restore of it brings, entries of the log. */
async function restored(from: string, job = JOB): Promise<number> {
  const data = newFolder();
  await restore(from, data, false, 1);
  return countIn(data, job);
}

const pieceFiles = (into: string): string[] =>
  readdirSync(join(into, PIECES_FOLDER), { recursive: true, withFileTypes: true })
    .filter((file) => file.isFile())
    .map((file) => join(file.parentPath, file.name));

/** The pieces of this backup that no other there has. */
function onlyIn(folder: string, into: string): string[] {
  const piecesOf = (name: string): string[] =>
    JSON.parse(readFileSync(join(into, name, MANIFEST_FILE), 'utf8')).pieces;
  const others = readdirSync(into).filter(
    (name) => name.startsWith('ladderline-') && join(into, name) !== folder,
  );
  const known = new Set(others.flatMap(piecesOf));
  return piecesOf(folder.slice(into.length + 1))
    .filter((piece) => !known.has(piece))
    .map((piece) => join(into, PIECES_FOLDER, piece.slice(0, 2), `${piece}.gz`));
}

function spoil(file: string): void {
  const bytes = readFileSync(file);
  const middle = bytes.length >> 1;
  bytes[middle] = (bytes[middle] ?? 0) ^ 1;
  writeFileSync(file, bytes);
}

describe('a second backup into the same folder', () => {
  it('writes what has changed, not what the first has too, and both are restored as they were', async () => {
    const data = newFolder();
    const into = newFolder();
    await grow(data, 6_000);
    const first = await backUp(data, into, 5);
    await grow(data, 3);
    const second = await backUp(data, into, 6);
    const nothing = await backUp(data, into, 7);
    const size = statSync(join(data, DATABASE_FILE)).size;
    expect(size).toBeGreaterThan(2_500_000);
    // Three entries are one log's end, its head, and the first page.
    const written = (made: typeof first) =>
      pieceFiles(into).filter((file) => onlyIn(made.folder, into).includes(file));
    expect(second.bytes).toBeLessThan(first.bytes / 10);
    expect(written(second).length).toBeLessThanOrEqual(6);
    expect(nothing.bytes).toBeLessThan(second.bytes);
    expect([await restored(first.folder), await restored(second.folder)]).toEqual([6_000, 6_003]);
    expect(await restored(into)).toBe(6_003);
  });

  it('mends a piece of the first that was damaged meanwhile, and says so', async () => {
    const data = newFolder();
    const into = newFolder();
    await grow(data, 500);
    await backUp(data, into, 5);
    const [piece = ''] = pieceFiles(into);
    spoil(piece);
    expect((await backUp(data, into, 6)).mended).toBe(1);
    expect(await restored(into)).toBe(500);
    expect((await backUp(data, into, 7)).mended).toBe(0);
  });

  it('takes older ones away with --keep, and only their pieces; never while the new one has damage', async () => {
    const data = newFolder();
    const into = newFolder();
    for (const at of [5, 6, 7]) {
      await grow(data, 300);
      await backUp(data, into, at);
    }
    await grow(data, 300);
    const last = await backUp(data, into, 8, 2);
    expect(last.removed).toHaveLength(2);
    expect(readdirSync(into).filter((name) => name.startsWith('ladderline-'))).toHaveLength(2);
    const named = new Set(
      backupsIn(into).flatMap(({ manifest }) => (manifest.version === 2 ? manifest.pieces : [])),
    );
    expect(pieceFiles(into)).toHaveLength(named.size);
    expect(await restored(into)).toBe(1_200);

    const db = chooseDriver().open(join(data, DATABASE_FILE));
    db.exec('DROP TRIGGER entries_stay');
    db.exec("UPDATE entries SET body = replace(body, 'remark', 'REMARK') WHERE seq = 1");
    db.close();
    const damaged = await backUp(data, into, 9, 1);
    expect([damaged.damaged, damaged.removed]).toEqual([[`${JOB} at entry 1 (hash)`], []]);
    expect(await restored(last.folder)).toBe(1_200);
  });

  it('waits for no other: while one works in the folder, another is refused', async () => {
    const data = newFolder();
    const into = newFolder();
    await grow(data, 3);
    mkdirSync(into);
    const lock = join(into, 'backup.lock');
    const { hostname } = await import('node:os');
    writeFileSync(lock, JSON.stringify({ host: hostname(), process: process.pid }));
    await expect(backUp(data, into, 5)).rejects.toThrow(/another backup works in .* remove .*backup\.lock/);
    writeFileSync(lock, JSON.stringify({ host: 'another machine', process: 1 }));
    await expect(backUp(data, into, 5)).rejects.toThrow(/another backup works/);
    // Half a file, or a process that has ended: it was killed.
    for (const text of ['{"ho', JSON.stringify({ host: hostname(), process: 2 ** 22 + 1 })]) {
      writeFileSync(lock, text);
      await backUp(data, into, folders);
      expect(existsSync(lock)).toBe(false);
      folders += 1;
    }
  });
});

describe('a damaged piece', () => {
  it('is said at the restore, with the backup that is whole and what that one lacks', async () => {
    const data = newFolder();
    const into = newFolder();
    await grow(data, 200);
    const first = await backUp(data, into, 5);
    await grow(data, 20);
    await grow(data, 7, OTHER);
    const second = await backUp(data, into, 6);
    const [only = ''] = onlyIn(second.folder, into);
    spoil(only);
    const other = newFolder();
    const failed = restore(into, other, false, 7);
    await expect(failed).rejects.toThrow(
      /^1 of \d+ pieces of .* are missing or damaged, so it cannot be restored/,
    );
    await expect(failed).rejects.toThrow(`Restore ${first.folder} instead: it is whole`);
    await expect(failed).rejects.toThrow(
      `It lacks 27 entries of 2 logs: ${JOB} from entry 200 on, ${OTHER} from entry 0 on.`,
    );
    expect(existsSync(join(other, DATABASE_FILE))).toBe(false);
    expect(await restored(first.folder)).toBe(200);
    // Gone altogether, it is the same; and without the pieces nothing is whole.
    rmSync(only);
    await expect(restore(into, other, false, 7)).rejects.toThrow(/1 of \d+ pieces/);
    rmSync(join(into, PIECES_FOLDER), { recursive: true });
    await expect(restore(into, other, false, 7)).rejects.toThrow(/No other backup there is whole/);
  });

  it('of an older backup leaves the newer ones alone', async () => {
    const data = newFolder();
    const into = newFolder();
    await grow(data, 200);
    const first = await backUp(data, into, 5);
    await grow(data, 200);
    const second = await backUp(data, into, 6);
    const [only = ''] = onlyIn(first.folder, into);
    spoil(only);
    expect(await restored(into)).toBe(400);
    await expect(restore(first.folder, newFolder(), false, 7)).rejects.toThrow(
      `Restore ${second.folder} instead: it is whole, of 1970-01-01T00:00:00.006Z. It lacks no entry.`,
    );
  });
});

describe('a backup of the form before, with the whole database in it', () => {
  it('is restored as ever, and stands in as the older one', async () => {
    const data = newFolder();
    const into = newFolder();
    await grow(data, 100);
    const folder = join(into, 'ladderline-19700101T000000-004Z');
    mkdirSync(into);
    cpSync(data, folder, { recursive: true });
    const sha256 = await sha256Of(join(folder, DATABASE_FILE));
    const manifest = { format: 'ladderline-backup', version: 1, at: 4, sha256, logs: 1, entries: 100 };
    writeFileSync(join(folder, MANIFEST_FILE), JSON.stringify(manifest));
    expect(await restored(into)).toBe(100);
    await grow(data, 1);
    const second = await backUp(data, into, 5);
    for (const piece of onlyInV2(second.folder))
      rmSync(join(into, PIECES_FOLDER, piece.slice(0, 2), `${piece}.gz`));
    await expect(restore(into, newFolder(), false, 6)).rejects.toThrow(
      `Restore ${folder} instead: it is whole`,
    );
  });

  const onlyInV2 = (folder: string): string[] =>
    JSON.parse(readFileSync(join(folder, MANIFEST_FILE), 'utf8')).pieces.slice(0, 1);
});

describe('a backup that is killed with -9', () => {
  // Bundled: it starts several times faster than the sources. Inside node_modules, so that it finds the packages.
  const CACHE = join('node_modules', '.cache');
  mkdirSync(CACHE, { recursive: true });
  const outDir = mkdtempSync(join(CACHE, 'ladderline-backup-'));
  const PROGRAM = join(outDir, 'killed-backup.js');
  afterAll(() => rmSync(outDir, { recursive: true }));
  beforeAll(() =>
    build({
      configFile: false,
      logLevel: 'error',
      build: {
        ssr: 'tests/server/killed-backup.ts',
        outDir,
        target: 'node20',
        rollupOptions: { output: { entryFileNames: 'killed-backup.js' } },
      },
    }),
  );

  it('before or after anything that it does to the disk, leaves those before as they were, and the next one works', async () => {
    const data = newFolder();
    const old = newFolder();
    await grow(data, 40);
    await backUp(data, old, 5);
    await grow(data, 10);
    await backUp(data, old, 6);
    await grow(data, 10);
    let kills = 0;
    const brought = new Set<number>();
    for (let nth = 1; ; nth++) {
      const into = newFolder();
      cpSync(old, into, { recursive: true });
      const child = spawn(process.execPath, [
        PROGRAM,
        data,
        into,
        '7',
        String(nth),
        nth % 2 ? 'before' : 'after',
      ]);
      const [code, signal] = await once(child, 'exit');
      expect([code, signal]).toEqual(signal === null ? [0, null] : [null, 'SIGKILL']);
      if (signal === null) break;
      kills += 1;
      // The newest that is there is whole, and it is the one before or the new one.
      brought.add(await restored(into));
      const next = await backUp(data, into, 8, 2);
      expect([next.damaged, next.manifest.entries, await restored(into)]).toEqual([[], 60, 60]);
      const left = readdirSync(into).filter((name) => name !== PIECES_FOLDER);
      expect(left.every((name) => existsSync(join(into, name, MANIFEST_FILE)))).toBe(true);
    }
    expect(kills).toBeGreaterThan(15);
    expect(brought).toEqual(new Set([50, 60]));
  }, 180_000);
});

/** What lies in a data folder and needs no copy: the database has its own way, and a socket is of the running server. */
const LEFT_OUT = ['backup.sock'];

describe('the keys in a backup', () => {
  it('are all files that a server makes in its data folder, beside the database', async () => {
    const data = newFolder();
    const server = await start(data, '--tls', 'own');
    const made = readdirSync(data).filter(
      (name) => !name.startsWith(DATABASE_FILE) && !LEFT_OUT.includes(name),
    );
    server.child.kill('SIGTERM');
    await server.ended;
    expect(made.length).toBeGreaterThan(3);
    expect(KEY_FILES).toEqual(expect.arrayContaining(made));
    // The check is one of a folder with all of them.
    expect((await checkFolder(data)).damaged).toEqual([]);
  });
});
