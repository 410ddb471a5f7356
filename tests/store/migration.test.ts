import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { digest } from '../../server/guard/secrets.ts';
import { wholeLog } from '../../server/record/files.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { type Connection, pragma } from '../../server/store/driver.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { SCHEMA_VERSION } from '../../server/store/schema.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { searchOf } from '../../src/visit/search.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { verified } from '../verify/checked.ts';
import { sealRemarks } from './contract.ts';
import { DRIVERS } from './drivers.ts';

/**
 * Databases that the program of each older version wrote itself: `npm run demo -- --speed 50 --exit --data …` at the commit,
 * and what it printed as the link to watch. A new step of the schema needs one more, made with the program of before.
 */
const OLD = [
  { version: 1, commit: '041ce85', job: '5fSrQ5XKzdwj', entries: 246, watch: '98nzTMS6HuUENLSjvXOFeQ' },
  { version: 2, commit: '05173c4', job: '7RczGAyIoDlY', entries: 235, watch: 'v6mRgfdL7LR56iwRoY57jQ' },
  { version: 3, commit: 'e72291e', job: 'dg2geDC-69Nj', entries: 283, watch: 'XAnLdif0xfiu1WZL0NcwfA' },
  { version: 4, commit: '5a91107', job: '5w8tJSDJXyxg', entries: 283, watch: 'Mm-sBSlj4xKUvOB1BAzPBQ' },
  { version: 5, commit: 'a2d9368', job: 'r4LthqWqu-8W', entries: 224, watch: 'SUxlt3arIgKf0dP7ve10-w' },
  { version: 6, commit: 'd998ab6', job: '0yYtORqK31TH', entries: 235, watch: 'Lv8VYEJaGRNWV-cZFu_IRw' },
  { version: 7, commit: '91b2e37', job: '7cKyP_RXHOwT', entries: 274, watch: '59RKjN400DpwbnKlTNNyVw' },
  { version: 8, commit: '5cc7a71', job: '3J-JBZqBMcwW', entries: 245, watch: 'jYz1Puyc9GH_3eeG1Z1ixQ' },
] as const;

const root = mkdtempSync(join(tmpdir(), 'ladderline-migration-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
function newFolder(): string {
  const folder = join(root, String(++folders));
  mkdirSync(folder);
  return folder;
}

const bytesOf = (version: number): Buffer =>
  gunzipSync(readFileSync(new URL(`databases/schema-${version}.sqlite.gz`, import.meta.url)));

/** A data folder as a server of that version left it. */
function folderOf(version: number): string {
  const folder = newFolder();
  writeFileSync(join(folder, DATABASE_FILE), bytesOf(version));
  return folder;
}

/** What no step may change. Summaries are worked out from the logs, and are made again. */
const KEPT = [
  'entries',
  'heads',
  'passes',
  'codes',
  'signed_heads',
  'enclosures',
  'names',
  'stamps',
  'reads',
];

/** Every row of every table that lasts, as SQLite gives it, without our store. */
function rowsIn(db: Connection): Record<string, unknown[]> {
  const tables = db
    .prepare<[], { name: string }>("SELECT name FROM sqlite_schema WHERE type = 'table'")
    .all();
  const kept = KEPT.filter((table) => tables.some(({ name }) => name === table));
  return Object.fromEntries(
    kept.map((table) => [
      table,
      db
        .prepare<[], object>(`SELECT * FROM ${table}`)
        .all()
        .map((row) => ({ ...row })),
    ]),
  );
}

function look<T>(folder: string, at: (db: Connection) => T): T {
  const db = chooseDriver().open(join(folder, DATABASE_FILE));
  try {
    return at(db);
  } finally {
    db.close();
  }
}

const versionIn = (folder: string) => look(folder, (db) => pragma(db, 'user_version'));

it('there is a database of every version that ever was', () => {
  expect(OLD.map(({ version }) => version)).toEqual(
    Array.from({ length: SCHEMA_VERSION - 1 }, (_, i) => i + 1),
  );
});

describe.each(DRIVERS)('with $name', (driver) => {
  describe.each(OLD)('a database of schema version $version', ({ version, job, entries, watch }) => {
    it('opens with today’s program: the newest schema, every row as it was, every hash right, and it goes on', async () => {
      const folder = folderOf(version);
      expect(versionIn(folder)).toBe(version);
      const before = look(folder, rowsIn);
      expect(before.entries).toHaveLength(entries);

      const store = openDataFolder(folder, driver);
      expect(pragma(store.db, 'user_version')).toBe(SCHEMA_VERSION);
      expect(rowsIn(store.db)).toMatchObject(before);
      expect(await store.logs()).toEqual([job]);
      expect(await store.audit(job)).toBeUndefined();
      // The link that the old program printed still opens the job.
      expect(await store.pass(digest(watch))).toEqual({ job, role: 'watcher', revoked: false });

      const log = await wholeLog(store, job);
      expect(verified(toJsonLines(log.entries, log.head))).toMatchObject({ ok: true });
      expect(searchOf(log.entries.reduce(fold, EMPTY))?.accepted).toBeDefined();
      expect(await store.append(job, sealRemarks(log.head, ['Dust on the lens.']))).toEqual({
        kind: 'stored',
      });
      expect(await store.audit(job)).toBeUndefined();
      await store.close();
    });

    it('has the tables, indexes and triggers of a new one', async () => {
      const [old, fresh] = [folderOf(version), newFolder()];
      for (const folder of [old, fresh]) await openDataFolder(folder, driver).close();
      const shape = (folder: string) =>
        look(folder, (db) => db.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY name').all());
      expect(shape(old)).toEqual(shape(fresh));
    });
  });

  it('a database of a newer program is refused with words that say what to do, and not a byte of it is changed', async () => {
    const folder = folderOf(5);
    const file = join(folder, DATABASE_FILE);
    look(folder, (db) => db.exec(`PRAGMA user_version = ${SCHEMA_VERSION + 1}`));
    // Opened once, so that what SQLite itself keeps in the header is settled.
    expect(() => openDataFolder(folder, driver)).toThrow();
    const before = readFileSync(file);
    expect(() => openDataFolder(folder, driver)).toThrow(
      `has schema version ${SCHEMA_VERSION + 1}, and this program knows 1 to ${SCHEMA_VERSION}: use the version of the program that wrote it`,
    );
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

describe('a migration that is cut off', () => {
  const FIRST = OLD[0];
  // Bundled: it starts several times faster than the sources. Inside node_modules, so that it finds the packages.
  const CACHE = join('node_modules', '.cache');
  mkdirSync(CACHE, { recursive: true });
  const outDir = mkdtempSync(join(CACHE, 'ladderline-migration-'));
  const PROGRAM = join(outDir, 'killed-migration.js');
  afterAll(() => rmSync(outDir, { recursive: true }));

  /** What a folder is after anything happened to it: the old or the new, and whole either way. */
  async function oldOrNew(folder: string): Promise<number> {
    const was = versionIn(folder);
    expect([FIRST.version, SCHEMA_VERSION]).toContain(was);
    expect(look(folder, rowsIn)).toMatchObject(look(folderOf(FIRST.version), rowsIn));
    const store = openDataFolder(folder);
    expect(pragma(store.db, 'user_version')).toBe(SCHEMA_VERSION);
    expect(await store.audit(FIRST.job)).toBeUndefined();
    expect((await store.head(FIRST.job)).count).toBe(FIRST.entries);
    await store.close();
    return Number(was);
  }

  /** Kills the program at its N-th order to SQLite. False: it made fewer. */
  async function killedAt(nth: number, when: string, folder: string): Promise<boolean> {
    const child = spawn(process.execPath, [PROGRAM, folder, String(nth), when]);
    const [code, signal] = await once(child, 'exit');
    expect([code, signal]).toEqual(signal === null ? [0, null] : [null, 'SIGKILL']);
    return signal === 'SIGKILL';
  }

  /** Folders whose migration was killed before the first order and after each in turn, and the first that had all but the clean-up. */
  const killed: string[] = [];
  let changed: { folder: string; changes: Buffer } | undefined;
  beforeAll(async () => {
    await build({
      configFile: false,
      logLevel: 'error',
      build: {
        ssr: 'tests/store/killed-migration.ts',
        outDir,
        target: 'node20',
        rollupOptions: { output: { entryFileNames: 'killed-migration.js' } },
      },
    });
    // After one order is before the next one.
    const untouched = folderOf(FIRST.version);
    expect(await killedAt(1, 'before', untouched)).toBe(true);
    killed.push(untouched);
    for (let nth = 1; ; nth++) {
      const folder = folderOf(FIRST.version);
      if (!(await killedAt(nth, 'after', folder))) break;
      killed.push(folder);
      const wal = join(folder, `${DATABASE_FILE}-wal`);
      if (!changed && existsSync(wal) && versionIn(copyOf(folder)) === SCHEMA_VERSION)
        changed = { folder: copyOf(folder), changes: readFileSync(wal) };
    }
  }, 180_000);

  it('by kill -9, before or after each order to SQLite, leaves the old or the new, never half', async () => {
    const versions: number[] = [];
    for (const folder of killed) versions.push(await oldOrNew(folder));
    expect(versions.length).toBeGreaterThan(SCHEMA_VERSION);
    // It was killed on both sides of the one moment that counts.
    expect(new Set(versions)).toEqual(new Set([FIRST.version, SCHEMA_VERSION]));
    expect(versions).toEqual(versions.toSorted());
  });

  it('by the power, with any part of the file of changes on the disk, leaves the old or the new, never half', async () => {
    const { folder, changes } = changed ?? { folder: '', changes: Buffer.alloc(0) };
    const seen = new Set<number>();
    await fc.assert(
      fc.asyncProperty(fc.nat(changes.length), async (kept) => {
        const cut = copyOf(folder);
        writeFileSync(join(cut, `${DATABASE_FILE}-wal`), changes.subarray(0, kept));
        seen.add(await oldOrNew(cut));
      }),
      { numRuns: 40, examples: [[0], [changes.length - 1], [changes.length]] },
    );
    expect(seen).toEqual(new Set([FIRST.version, SCHEMA_VERSION]));
  });

  function copyOf(folder: string): string {
    const copy = newFolder();
    for (const name of [DATABASE_FILE, `${DATABASE_FILE}-wal`])
      copyFileSync(join(folder, name), join(copy, name));
    return copy;
  }
});
