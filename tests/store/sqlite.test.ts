import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { digest } from '../../server/guard/secrets.ts';
import { DATABASE_FILE, openDataFolder as openFolder } from '../../server/store/data-folder.ts';
import { pragma } from '../../server/store/driver.ts';
import { SCHEMA_VERSION } from '../../server/store/schema.ts';
import { openSqlite as openFile } from '../../server/store/sqlite.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { bodyOf, emptyHead } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { sealRemarks, storeContract } from './contract.ts';
import { DRIVERS } from './drivers.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-store-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const JOB = 'job-one-0001';

describe.each(DRIVERS)('with $name', (driver) => {
  const openDataFolder = (folder: string) => openFolder(folder, driver);
  const openSqlite = (file: string) => openFile(file, newSummaryKey(), driver);

  storeContract('SQLite', async () => openDataFolder(newFolder()));

  describe('the SQLite file', () => {
    let folder: string;
    let file: string;
    beforeEach(() => {
      folder = newFolder();
      file = join(folder, DATABASE_FILE);
    });

    /** A store with three entries, closed again. */
    async function filled() {
      const store = openDataFolder(folder);
      await store.append(JOB, sealRemarks(emptyHead(JOB), ['one', 'two', 'three']));
      await store.close();
    }

    /** Changes the file behind the store's back, without its triggers. */
    function tamper(...statements: string[]) {
      const db = driver.open(file);
      const triggers = db.prepare<[], { name: string }>(
        "SELECT name FROM sqlite_schema WHERE type = 'trigger'",
      );
      for (const { name } of triggers.all()) db.exec(`DROP TRIGGER ${name}`);
      for (const statement of statements) expect(db.prepare(statement).run().changes).toBe(1);
      db.close();
    }

    /** Makes the file one of another version. */
    function tamperSchema(...statements: string[]) {
      const db = driver.open(file);
      for (const statement of statements) db.exec(statement);
      db.close();
    }

    const audit = async () => {
      const store = openDataFolder(folder);
      const fault = await store.audit(JOB);
      await store.close();
      return fault;
    };

    it('is written through to the disk: WAL and synchronous=FULL on the live connection', async () => {
      const store = openDataFolder(folder);
      expect(pragma(store.db, 'journal_mode')).toBe('wal');
      const FULL = 2;
      expect(pragma(store.db, 'synchronous')).toBe(FULL);
      await store.append(JOB, sealRemarks(emptyHead(JOB), ['x']));
      expect(pragma(store.db, 'synchronous')).toBe(FULL);
      await store.close();
    });

    it('lies in a folder of its owner alone, with every file beside it, from the start and after it was open to others', async () => {
      const modes = () =>
        Object.fromEntries(
          ['', ...readdirSync(folder)].map((name) => [name, statSync(join(folder, name)).mode & 0o777]),
        );
      const beside = [DATABASE_FILE, `${DATABASE_FILE}-shm`, `${DATABASE_FILE}-wal`, 'summaries.key'];
      const closed = { '': 0o700, ...Object.fromEntries(beside.map((name) => [name, 0o600])) };
      const old = process.umask(0);
      onTestFinished(() => {
        process.umask(old);
      });
      for (const open of [false, true]) {
        if (open) for (const name of Object.keys(modes())) chmodSync(join(folder, name), 0o777);
        const store = openDataFolder(folder);
        await store.append(JOB, sealRemarks(await store.head(JOB), ['x']));
        // In exclusive mode SQLite needs no `-shm` file.
        expect(closed).toMatchObject(modes());
        expect(modes()).toMatchObject({ '': 0o700, [DATABASE_FILE]: 0o600, [`${DATABASE_FILE}-wal`]: 0o600 });
        await store.close();
      }
    });

    it('leaves a folder that others made as it is, until our database is in it', () => {
      mkdirSync(folder, { mode: 0o755 });
      chmodSync(folder, 0o755);
      writeFileSync(join(folder, 'something else'), '');
      openDataFolder(folder).close();
      expect(statSync(folder).mode & 0o777).toBe(0o755);
      expect(statSync(file).mode & 0o777).toBe(0o600);
    });

    it('has what was stored when it is opened again', async () => {
      await filled();
      const store = openDataFolder(folder);
      expect(await store.read(JOB, -1, 10)).toEqual(sealRemarks(emptyHead(JOB), ['one', 'two', 'three']));
      await store.close();
    });

    it.each([
      "UPDATE entries SET body = '{}' WHERE seq = 1",
      'DELETE FROM entries WHERE seq = 2',
      "INSERT OR REPLACE INTO entries (job, seq, hash, body) VALUES ('job-one-0001', 1, '', '{}')",
      'UPDATE heads SET count = 2',
      'DELETE FROM heads',
    ])('is append-only for any statement: %s', async (statement) => {
      await filled();
      const store = openDataFolder(folder);
      expect(() => store.db.exec(statement)).toThrow(/append-only/);
      expect(await store.audit(JOB)).toBeUndefined();
      await store.close();
    });

    it('stores nothing of what fails half-way, and goes on', async () => {
      await filled();
      const store = openDataFolder(folder);
      const issue = [{ token: digest('token'), role: 'panel' as const }];
      await store.append(JOB, [], { issue });
      const more = sealRemarks(await store.head(JOB), ['four']);
      await expect(store.append(JOB, more, { issue })).rejects.toThrow(StoreFailure);
      expect((await store.head(JOB)).count).toBe(3);
      expect(await store.append(JOB, more)).toEqual({ kind: 'stored' });
      await store.close();
      expect(await audit()).toBeUndefined();
    });

    it('stores nothing on a full disk, and goes on when there is room', async () => {
      await filled();
      const store = openDataFolder(folder);
      const pages = Number(pragma(store.db, 'page_count'));
      const long = sealRemarks(await store.head(JOB), ['x'.repeat(100_000)]);
      store.db.exec(`PRAGMA max_page_count = ${pages}`);
      await expect(store.append(JOB, long)).rejects.toThrow(/disk is full/);
      expect((await store.head(JOB)).count).toBe(3);
      store.db.exec(`PRAGMA max_page_count = ${pages + 100}`);
      expect(await store.append(JOB, long)).toEqual({ kind: 'stored' });
      await store.close();
      expect(await audit()).toBeUndefined();
    });

    it('names the first entry whose bytes were changed behind its back', async () => {
      await filled();
      tamper("UPDATE entries SET body = replace(body, 'two', 'TWO') WHERE seq = 1");
      expect(await audit()).toEqual({ seq: 1, fault: 'hash' });
    });

    it('sees a changed byte that does not change the JSON', async () => {
      await filled();
      tamper("UPDATE entries SET body = body || ' ' WHERE seq = 1");
      expect(await audit()).toEqual({ seq: 1, fault: 'hash' });
    });

    it('sees an entry that was taken out of the middle', async () => {
      await filled();
      tamper('DELETE FROM entries WHERE seq = 1');
      expect(await audit()).toEqual({ seq: 1, fault: 'order' });
    });

    it('sees a tail that was cut off', async () => {
      await filled();
      tamper('DELETE FROM entries WHERE seq = 2');
      expect(await audit()).toEqual({ seq: 2, fault: 'head' });
    });

    it('sees an entry exchanged for one that is sound in itself', async () => {
      await filled();
      const [, forged] = sealRemarks(emptyHead(JOB), ['uno', 'dos']);
      tamper(
        `UPDATE entries SET body = '${bodyOf(forged as Entry)}', hash = '${forged?.hash}' WHERE seq = 1`,
      );
      expect(await audit()).toEqual({ seq: 1, fault: 'prev' });
    });

    it('is refused when it is no database', () => {
      openDataFolder(folder).close();
      writeFileSync(file, 'this is a shopping list, and a long one too, '.repeat(50));
      expect(() => openSqlite(file)).toThrow(StoreFailure);
      expect(() => openSqlite(file)).toThrow(/is damaged .*backup/);
    });

    it('is refused when its pages are damaged', async () => {
      const store = openDataFolder(folder);
      const texts = Array.from({ length: 400 }, (_, i) => `remark ${i} ${'x'.repeat(100)}`);
      await store.append(JOB, sealRemarks(emptyHead(JOB), texts));
      await store.close();
      const bytes = readFileSync(file);
      const fd = openSync(file, 'r+');
      for (let at = 4096; at < bytes.length; at += 4096) writeSync(fd, Buffer.alloc(64, 0x55), 0, 64, at);
      expect(() => openSqlite(file)).toThrow(/is damaged .*backup/);
    });

    /** So large that it is not read as a whole at the start, with the root page of this table written over. */
    async function largeWithout(table: string) {
      await filled();
      const db = driver.open(file);
      db.exec(`INSERT INTO enclosures VALUES ('other-job-01', 0, 'salt', zeroblob(${130 * 1024 ** 2}))`);
      const { page } = db
        .prepare<[string], { page: number }>('SELECT rootpage AS page FROM sqlite_schema WHERE name = ?')
        .get(table) as { page: number };
      db.close();
      writeSync(openSync(file, 'r+'), Buffer.alloc(4096, 0x55), 0, 4096, (page - 1) * 4096);
    }

    it.each(['heads', 'passes', 'codes', 'stamps'])(
      'is refused, however large, when the pages of %s are damaged: no log is held against them',
      async (table) => {
        await largeWithout(table);
        expect(() => openSqlite(file)).toThrow(/is damaged .*backup/);
      },
    );

    it('opens at once when it is large and the pages of entries are damaged; the check of the log finds it', async () => {
      await largeWithout('entries');
      const store = openDataFolder(folder);
      await expect(store.audit(JOB)).rejects.toThrow(StoreFailure);
      await store.close();
    });

    it('is brought up from the first version with all that is in it', async () => {
      await filled();
      tamperSchema(
        'DROP TABLE summaries',
        'DROP TABLE signed_heads',
        'DROP TABLE enclosures',
        'DROP TABLE stamps',
        'DROP TABLE names',
        'DROP TABLE reads',
        'PRAGMA user_version = 1',
      );
      const store = openDataFolder(folder);
      expect(await store.read(JOB, -1, 10)).toEqual(sealRemarks(emptyHead(JOB), ['one', 'two', 'three']));
      await store.keepSummary(JOB, { count: 3, hash: 'a'.repeat(64), body: '{}' });
      expect(pragma(store.db, 'user_version')).toBe(SCHEMA_VERSION);
      expect(() => store.db.exec('DELETE FROM heads')).toThrow(/append-only/);
      await store.close();
      await openDataFolder(folder).close();
    });

    it('is refused when another program made it, or a newer version', async () => {
      openDataFolder(folder).close();
      const foreign = join(folder, 'foreign.sqlite');
      const db = driver.open(foreign);
      db.exec('CREATE TABLE t (x)');
      db.close();
      expect(() => openSqlite(foreign)).toThrow(/another program/);

      const newer = driver.open(file);
      newer.exec('PRAGMA user_version = 99');
      newer.close();
      expect(() => openSqlite(file)).toThrow(/schema version 99/);
    });

    it('is refused while another server has it', async () => {
      const store = openDataFolder(folder);
      expect(() => openDataFolder(folder)).toThrow(/in use/);
      await store.close();
      await openDataFolder(folder).close();
    });

    describe('with a picture that is removed', () => {
      const salt = 'a5'.repeat(16);
      const content = Buffer.from('HIDDEN FACE '.repeat(20_000));
      const put = { seq: 0, salt, content: new Uint8Array(content) };
      /** The files of a folder that hold any of it. */
      const holding = (words: string, where = folder) =>
        readdirSync(where).filter((name) => readFileSync(join(where, name)).includes(words));

      it('holds no byte of it any more, in no file, while the server goes on', async () => {
        const store = openDataFolder(folder);
        await store.append(JOB, sealRemarks(emptyHead(JOB), ['one']), {}, { put });
        expect(holding('HIDDEN FACE')).not.toEqual([]);
        await store.append(JOB, sealRemarks(await store.head(JOB), ['gone']), {}, { remove: 0 });
        expect([holding('HIDDEN'), holding(salt)]).toEqual([[], []]);
        expect(await store.audit(JOB)).toBeUndefined();
        await store.close();
      });

      it('holds none of it after a power cut between removal and clean-up, once it is opened again', async () => {
        const store = openDataFolder(folder);
        await store.append(JOB, sealRemarks(emptyHead(JOB), ['one']), {}, { put });
        // As the removal does it, without what follows it.
        store.db.exec('DELETE FROM enclosures');
        const cut = newFolder();
        mkdirSync(cut);
        for (const name of readdirSync(folder)) copyFileSync(join(folder, name), join(cut, name));
        await store.close();
        expect(holding('HIDDEN', cut)).not.toEqual([]);
        const again = openDataFolder(cut);
        expect(holding('HIDDEN', cut)).toEqual([]);
        expect(await again.read(JOB, -1, 9)).toHaveLength(1);
        await again.close();
      });

      it('is not in a copy that is made afterwards, and is in one that was made before', async () => {
        const store = openDataFolder(folder);
        await store.append(JOB, sealRemarks(emptyHead(JOB), ['one']), {}, { put });
        const copies = newFolder();
        mkdirSync(copies);
        await store.copyTo(join(copies, 'before'));
        await store.append(JOB, sealRemarks(await store.head(JOB), ['gone']), {}, { remove: 0 });
        await store.copyTo(join(copies, 'after'));
        await store.close();
        expect(holding('HIDDEN', copies)).toEqual(['before']);
      });
    });

    it.each([
      "UPDATE enclosures SET content = x'00'",
      "INSERT OR REPLACE INTO enclosures (job, seq, salt, content) VALUES ('job-one-0001', 0, '', x'00')",
    ])('never exchanges a picture for another: %s', async (statement) => {
      const store = openDataFolder(folder);
      const put = { seq: 0, salt: '00'.repeat(16), content: Uint8Array.of(1, 2, 3) };
      await store.append(JOB, sealRemarks(emptyHead(JOB), ['one']), {}, { put });
      expect(() => store.db.exec(statement)).toThrow(/never changed/);
      expect((await store.enclosure(JOB, 0))?.content).toEqual(put.content);
      await store.close();
    });

    it('stores neither entry nor picture on a full disk', async () => {
      await filled();
      const store = openDataFolder(folder);
      store.db.exec(`PRAGMA max_page_count = ${Number(pragma(store.db, 'page_count')) + 2}`);
      const more = sealRemarks(await store.head(JOB), ['photo']);
      const put = { seq: 3, salt: '00'.repeat(16), content: new Uint8Array(100_000) };
      await expect(store.append(JOB, more, {}, { put })).rejects.toThrow(/disk is full/);
      expect((await store.head(JOB)).count).toBe(3);
      expect(await store.enclosure(JOB, 3)).toBeUndefined();
      await store.close();
    });

    it('leaves no token and no code in clear', async () => {
      const store = openDataFolder(folder);
      await store.append(JOB, [], {
        issue: [{ token: digest('SECRET-TOKEN'), role: 'panel' }],
        code: { code: digest('SECRETCODE'), seat: 'emitter', expiresAt: 1 },
      });
      await store.close();
      const bytes = readFileSync(file).toString('latin1');
      expect(bytes).toContain(digest('SECRET-TOKEN'));
      expect(bytes).not.toContain('SECRET');
    });
  });
});
