import { setImmediate } from 'node:timers/promises';
import { emptyHead } from '../../src/log/chain.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { SignedHead } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head, JobId, Seq } from '../../src/model/ids.ts';
import { Audit, type EntryRow, readable, rowOf, type StoredEntry } from './audit.ts';
import { type Connection, type Driver, pragma } from './driver.ts';
import { chooseDriver } from './drivers.ts';
import { follows } from './follows.ts';
import { revokedOf } from './passes.ts';
import { type KeptRead, LEAST_KEPT_DAYS, type ReadChange } from './reads.ts';
import { APPLICATION_ID, SCHEMA_VERSION, STEPS } from './schema.ts';
import {
  type Appended,
  type CodeGrant,
  type Digest,
  type Enclosing,
  type GivenPass,
  type HeldPass,
  type KeptStamp,
  type KeptSummary,
  type KeyChange,
  type LoggedHead,
  type NamedEntry,
  type Pass,
  type Store,
  StoreFailure,
} from './store.ts';
import { isSealed, type SummaryKey, sealOf, UNSEALED } from './summary-key.ts';

/**
 * Opens or makes the database file. Throws `StoreFailure` with one sentence that says what to do when the
 * file is damaged, is of another program or a newer version, is in use, or cannot be written. `key`: with which this
 * server seals the summaries that it keeps.
 */
export function openSqlite(
  file: string,
  key: SummaryKey,
  driver: Driver = chooseDriver(),
  warn: Warn = () => {},
): SqliteStore {
  let db: Connection | undefined;
  try {
    db = driver.open(file);
    prepare(db, file);
    return new SqliteStore(db, driver, key, warn);
  } catch (error) {
    db?.close();
    if (error instanceof StoreFailure) throw error;
    throw new StoreFailure(explain(error, file, driver), { cause: error });
  }
}

/** Tells who runs the server something that they should look into. */
export type Warn = (text: string) => void;

/** Rows that an audit reads between two moments for other work. */
const AUDIT_BATCH = 200;

/**
 * Pages in the file of changes before they are brought into the database (64 MB). Everyone waits meanwhile; the default of
 * 1,000 does it each second with a thousand crews, who write the same pages again and again.
 */
const CHECKPOINT_PAGES = 16_000;

/**
 * A database up to this size is read from end to end before anything else, well within a second. Crews would wait minutes for
 * a large one: there, damage of a log and of the index of its messages shows where it is read, and in the check of every log in
 * the background, which reads all their pages. What no log is held against is small, and read at the start in any case.
 */
const CHECKED_AT_START_BYTES = 128 * 1024 ** 2;
const NOT_IN_LOGS = ['heads', 'passes', 'codes', 'stamps'];

/** How long we wait for another program that is just using the file. */
const BUSY_MS = 500;

function prepare(db: Connection, file: string): void {
  db.exec(`PRAGMA busy_timeout = ${BUSY_MS}`);
  // One server a file: a second one could not know of the first one's entries. Held until the process ends.
  db.exec('PRAGMA locking_mode = EXCLUSIVE');
  db.exec('PRAGMA journal_mode = WAL');
  // NORMAL is the default of some builds in WAL mode and may lose acknowledged entries with the power.
  db.exec('PRAGMA synchronous = FULL');
  db.exec(`PRAGMA wal_autocheckpoint = ${CHECKPOINT_PAGES}`);
  db.exec('PRAGMA trusted_schema = OFF');
  // What is removed is written over, and not only given up.
  db.exec('PRAGMA secure_delete = ON');
  // Without it, INSERT OR REPLACE removes a row without asking the triggers.
  db.exec('PRAGMA recursive_triggers = ON');
  db.exec('BEGIN IMMEDIATE; COMMIT');

  const app = pragma(db, 'application_id');
  const version = pragma(db, 'user_version');
  const anything = db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table'").get();
  if (app === 0 && version === 0 && anything === undefined) {
    bringUp(db, 0);
    return;
  }
  if (app !== APPLICATION_ID) {
    throw new StoreFailure(`${file} is a database of another program: choose another data folder.`);
  }
  if (typeof version !== 'number' || version < 1 || version > SCHEMA_VERSION) {
    throw new StoreFailure(
      `${file} has schema version ${version}, and this program knows 1 to ${SCHEMA_VERSION}: use the version of the program that wrote it, or another data folder.`,
    );
  }
  const isSmall = bytesIn(db) <= CHECKED_AT_START_BYTES;
  for (const what of isSmall ? ['1'] : NOT_IN_LOGS) {
    const check = pragma(db, `quick_check(${what})`);
    if (check !== 'ok') throw new StoreFailure(damaged(file, String(check)));
  }
  if (version < SCHEMA_VERSION) bringUp(db, version);
  // The server may have ended between a removal and its clean-up.
  forgetRemoved(db);
}

const bytesIn = (db: Connection): number =>
  Number(pragma(db, 'page_count')) * Number(pragma(db, 'page_size'));

/** Empties the file of changes, which until then still holds what was removed. */
const forgetRemoved = (db: Connection): unknown => pragma(db, 'wal_checkpoint(TRUNCATE)');

/** All steps beyond `version`, or none of them. */
function bringUp(db: Connection, version: number): void {
  inOne(db, () => {
    for (const step of STEPS.slice(version)) db.exec(step);
    db.exec(`PRAGMA application_id = ${APPLICATION_ID}`);
    db.exec(`PRAGMA user_version = ${SCHEMA_VERSION}`);
  });
}

/** `work` in one transaction: all that it writes is stored, or where it throws, nothing. */
function inOne<T>(db: Connection, work: () => T): T {
  db.exec('BEGIN IMMEDIATE');
  try {
    const result = work();
    db.exec('COMMIT');
    return result;
  } catch (error) {
    try {
      db.exec('ROLLBACK');
    } catch {
      // When the disk is full or fails, SQLite has rolled back by itself. If it has not, the next BEGIN fails.
    }
    throw error;
  }
}

const damaged = (file: string, detail: string) =>
  `${file} is damaged (${detail.replace(/\s+/g, ' ')}): keep a copy of it, then put back a backup or choose another data folder.`;

function explain(error: unknown, file: string, driver: Driver): string {
  const { message } = error as Error;
  const fault = driver.faultOf(error);
  if (fault === 'damaged') return damaged(file, message);
  if (fault === 'in use') {
    return `${file} is in use by another program: stop the other server, or choose another data folder.`;
  }
  return `${file} cannot be opened (${message}): see to its permissions and disk, or choose another data folder.`;
}

interface PassRow {
  job: JobId;
  role: Pass['role'];
  revoked: number;
}

export interface LogWrite {
  readonly to: 'log';
  readonly job: JobId;
  readonly rows: readonly EntryRow[];
  readonly keys?: KeyChange | undefined;
  readonly enclosing?: Enclosing | undefined;
}

/** What can be stored together with others. */
export type Write =
  | LogWrite
  | { readonly to: 'summaries'; readonly job: JobId; readonly kept: KeptSummary }
  | { readonly to: 'signed heads'; readonly heads: readonly LoggedHead[] }
  | { readonly to: 'stamps'; readonly stamp: KeptStamp }
  | { readonly to: 'reads'; readonly change: ReadChange };

export type WriteResult<W extends Write> = W extends LogWrite ? Appended : undefined;

/** Whether something is gone after it that must not be found in the file either. */
function removes(write: Write): boolean {
  if (write.to === 'reads') return !('note' in write.change);
  return (
    write.to === 'log' && (write.enclosing?.remove !== undefined || write.enclosing?.forget !== undefined)
  );
}

/** What became of one write. */
export type Written = { readonly value: Appended | undefined } | { readonly error: unknown };

export class SqliteStore implements Store {
  readonly name = 'sqlite';
  private readonly sql: ReturnType<typeof statements>;
  private closed = false;
  private saidUnsealed = false;

  /** `db`: prepared by `openSqlite`; public for tests that look at the live connection. */
  constructor(
    readonly db: Connection,
    private readonly driver: Driver,
    private readonly key: SummaryKey,
    private readonly warn: Warn,
  ) {
    this.sql = statements(db);
  }

  async append(
    job: JobId,
    entries: readonly Entry[],
    keys?: KeyChange,
    enclosing?: Enclosing,
  ): Promise<Appended> {
    return this.write({ to: 'log', job, rows: entries.map(rowOf), keys, enclosing });
  }

  /** Each is stored or not on its own, as if they came one after the other; but all wait for the disk once. */
  writeAll(writes: readonly Write[]): Written[] {
    try {
      return this.inOneGo(writes).map((value) => ({ value }));
    } catch (error) {
      if (writes.length === 1) return [{ error }];
      // One of them failed all: which one it was shows when each has a transaction of its own.
      return writes.flatMap((write) => this.writeAll([write]));
    }
  }

  private write<W extends Write>(write: W): WriteResult<W> {
    return this.inOneGo([write])[0] as WriteResult<W>;
  }

  private inOneGo(writes: readonly Write[]): (Appended | undefined)[] {
    return guard(() => {
      const results = inOne(this.db, () => writes.map((write) => this.writeNow(write)));
      if (writes.some(removes)) forgetRemoved(this.db);
      return results;
    });
  }

  private writeNow(write: Write): Appended | undefined {
    switch (write.to) {
      case 'log':
        return this.appendNow(write);
      case 'summaries': {
        const { job, kept } = write;
        this.sql.keepSummary.run(job, kept.count, kept.hash, kept.body, sealOf(this.key, job, kept));
        return undefined;
      }
      case 'signed heads':
        for (const { job, count, hash, at, key, signature } of write.heads)
          this.sql.addSignedHead.run(job, count, hash, at, key, signature);
        return undefined;
      case 'stamps': {
        const { size, root, at, key, signature, nonce, token } = write.stamp;
        this.sql.addStamp.run(size, root, at, key, signature, nonce, token);
        return undefined;
      }
      case 'reads':
        this.changeReadsNow(write.change);
        return undefined;
    }
  }

  private changeReadsNow(change: ReadChange): void {
    if ('note' in change)
      for (const { hour, log, what, role, key, reader, name } of change.note)
        this.sql.noteRead.run(hour, log, what, role, key, reader, name);
    else if ('forget' in change) {
      this.sql.forgetReader.run(change.forget);
      // Where the same was read by somebody else who is forgotten, one line says it.
      this.sql.dropReader.run(change.forget);
    } else this.sql.endReads.run(change.end);
  }

  private appendNow({ job, rows, keys = {}, enclosing = {} }: LogWrite): Appended {
    for (const { ref } of rows) {
      const seq = ref === null ? undefined : this.seqNow(job, ref);
      if (seq !== undefined) return { kind: 'duplicate', seq };
    }
    const head = this.headNow(job);
    if (!follows(rows, head)) return { kind: 'conflict', head };
    if (keys.spend && !this.grantNow(keys.spend.code, keys.spend.now)) return { kind: 'spent' };

    for (const { seq, ref, hash, body, salt, names } of rows) {
      this.sql.addEntry.run(job, seq, ref, hash, body);
      if (names !== null) this.sql.putNames.run(job, seq, salt, names);
    }
    const last = rows.at(-1);
    if (last) this.sql.setHead.run(job, last.seq + 1, last.hash);
    this.turnKeys(job, keys);
    const { put, remove, forget = [] } = enclosing;
    if (put) this.sql.putEnclosure.run(job, put.seq, put.salt, put.content);
    if (remove !== undefined) this.sql.removeEnclosure.run(job, remove);
    for (const seq of forget) this.sql.removeNames.run(job, seq);
    if (forget.length > 0) this.sql.dropSummary.run(job);
    return { kind: 'stored' };
  }

  async enclosure(job: JobId, seq: Seq): Promise<Enclosure | undefined> {
    const row = guard(() => this.sql.enclosure.get(job, seq));
    return row && { salt: row.salt, content: new Uint8Array(row.content) };
  }

  async enclosed(): Promise<{ job: JobId; seq: Seq }[]> {
    return guard(() => this.sql.enclosed.all()).map((row) => ({ ...row }));
  }

  async named(): Promise<NamedEntry[]> {
    const rows = guard(() => this.sql.named.all());
    return rows.map(({ job, seq, names }) => ({ job, seq, names: JSON.parse(names) }));
  }

  private turnKeys(job: JobId, keys: KeyChange): void {
    if (keys.spend) this.sql.dropCode.run(keys.spend.code);
    if (keys.voids) this.sql.voidCode.run(job, keys.voids);
    if (keys.revoke) this.sql.revoke.run(job, keys.revoke);
    if (keys.withdraw) this.sql.withdraw.run(keys.withdraw, job);
    for (const { token, role } of keys.issue ?? []) this.sql.addPass.run(token, job, role);
    if (keys.code) this.sql.setCode.run(keys.code.code, job, keys.code.seat, keys.code.expiresAt);
  }

  async read(job: JobId, after: number, limit: number): Promise<Entry[]> {
    return guard(() => readable(this.sql.read.all(job, after, limit)));
  }

  async head(job: JobId): Promise<Head> {
    return guard(() => this.headNow(job));
  }

  async seqOf(job: JobId, ref: string): Promise<number | undefined> {
    return guard(() => this.seqNow(job, ref));
  }

  async audit(job: JobId): Promise<ChainFault | undefined> {
    const kept = await this.summary(job);
    const audit = new Audit(job, [...(await this.signedHeadsOf(job)), ...(kept ? [kept] : [])]);
    for (;;) {
      const rows = guard(() => this.sql.read.all(job, audit.count - 1, AUDIT_BATCH));
      if (rows.length === 0) return guard(() => audit.end(this.headNow(job), this.sql.refs.all(job)));
      for (const row of rows) {
        const fault = audit.add(row);
        if (fault) return fault;
      }
      if (rows.length === AUDIT_BATCH) await setImmediate();
    }
  }

  async jobs(): Promise<Head[]> {
    return guard(() => this.sql.heads.all());
  }

  async logs(): Promise<JobId[]> {
    return guard(() => this.sql.logs.all().map(({ job }) => job));
  }

  async pass(token: Digest): Promise<Pass | undefined> {
    return guard(() => {
      const row = this.sql.pass.get(token);
      return row && { ...row, revoked: revokedOf(row.revoked) };
    });
  }

  async passes(job: JobId): Promise<HeldPass[]> {
    return guard(() => this.sql.passes.all(job)).map((row) => ({ ...row }));
  }

  async everyPass(job: JobId): Promise<GivenPass[]> {
    const rows = guard(() => this.sql.everyPass.all(job));
    return rows.map((row) => ({ ...row, revoked: revokedOf(row.revoked) }));
  }

  async grant(code: Digest, now: number): Promise<CodeGrant | undefined> {
    return guard(() => this.grantNow(code, now));
  }

  async summary(job: JobId): Promise<KeptSummary | undefined> {
    const row = guard(() => this.sql.summary.get(job));
    if (!row) return undefined;
    const { seal, ...kept } = row;
    if (isSealed(this.key, job, kept, seal)) return kept;
    if (!this.saidUnsealed) this.warn(UNSEALED);
    this.saidUnsealed = true;
    return undefined;
  }

  async keepSummary(job: JobId, kept: KeptSummary): Promise<void> {
    this.write({ to: 'summaries', job, kept });
  }

  async addSignedHeads(heads: readonly LoggedHead[]): Promise<void> {
    this.write({ to: 'signed heads', heads });
  }

  async signedHeads(after: number, limit: number): Promise<LoggedHead[]> {
    return guard(() => this.sql.signedHeads.all(after, limit)).map((row) => ({ ...row }));
  }

  async signedHeadsOf(job: JobId): Promise<(SignedHead & { number: number })[]> {
    return guard(() => this.sql.signedHeadsOf.all(job)).map((row) => ({ ...row }));
  }

  async addStamp(stamp: KeptStamp): Promise<void> {
    this.write({ to: 'stamps', stamp });
  }

  async stampOver(number: number): Promise<KeptStamp | undefined> {
    const row = guard(() => this.sql.stampOver.get(number));
    return row && { ...row };
  }

  async lastStamp(): Promise<KeptStamp | undefined> {
    const row = guard(() => this.sql.lastStamp.get());
    return row && { ...row };
  }

  async changeReads(change: ReadChange): Promise<void> {
    this.write({ to: 'reads', change });
  }

  async readsAfter(after: number, limit: number): Promise<KeptRead[]> {
    return guard(() => this.sql.readsAfter.all(after, limit)).map((row) => ({ ...row }));
  }

  async readsBefore(before: number, limit: number, log?: JobId): Promise<KeptRead[]> {
    const { readsBefore, readsOfBefore } = this.sql;
    const rows = guard(() =>
      log === undefined ? readsBefore.all(before, limit) : readsOfBefore.all(log, before, limit),
    );
    return rows.map((row) => ({ ...row }));
  }

  async readers(): Promise<string[]> {
    return guard(() => this.sql.readers.all().map(({ name }) => name));
  }

  async health(): Promise<void> {
    guard(() => this.db.exec('BEGIN IMMEDIATE; ROLLBACK'));
  }

  /** Copies everything to a new file. What was acknowledged before is in it. Rejects with `StoreFailure`. */
  async copyTo(file: string): Promise<void> {
    await this.driver.copy(this.db, file).catch((error: Error) => {
      throw new StoreFailure(`the copy ${file} could not be made: ${error.message}`, { cause: error });
    });
  }

  async close(): Promise<void> {
    if (this.closed) return;
    this.closed = true;
    this.db.close();
  }

  private headNow(job: JobId): Head {
    return this.sql.head.get(job) ?? emptyHead(job);
  }

  private seqNow(job: JobId, ref: string): number | undefined {
    return this.sql.seqOf.get(job, ref)?.seq;
  }

  private grantNow(code: Digest, now: number): CodeGrant | undefined {
    return this.sql.grant.get(code, now);
  }
}

const READ = 'number, hour, log, what, role, key, reader, name';

function statements(db: Connection) {
  return {
    addEntry: db.prepare('INSERT INTO entries (job, seq, ref, hash, body) VALUES (?, ?, ?, ?, ?)'),
    setHead: db.prepare(`INSERT INTO heads (job, count, hash) VALUES (?, ?, ?)
      ON CONFLICT (job) DO UPDATE SET count = excluded.count, hash = excluded.hash`),
    head: db.prepare<[JobId], Head>('SELECT job, count, hash FROM heads WHERE job = ?'),
    heads: db.prepare<[], Head>('SELECT job, count, hash FROM heads ORDER BY number'),
    // Each log once, by jumps through the index: a plain DISTINCT would read every entry.
    logs: db.prepare<[], { job: JobId }>(`
      WITH RECURSIVE written(job) AS (
        SELECT min(job) FROM entries
        UNION ALL SELECT (SELECT min(job) FROM entries WHERE job > written.job) FROM written WHERE job IS NOT NULL
      )
      SELECT job FROM written WHERE job IS NOT NULL
      UNION SELECT job FROM heads UNION SELECT job FROM passes UNION SELECT job FROM summaries
      UNION SELECT job FROM signed_heads UNION SELECT job FROM enclosures UNION SELECT job FROM names`),
    read: db.prepare<[JobId, number, number], StoredEntry>(
      `SELECT seq, ref, body, hash, salt, names FROM entries LEFT JOIN names USING (job, seq)
        WHERE job = ? AND seq > ? ORDER BY seq LIMIT ?`,
    ),
    // From the index alone: the audit holds it against the rows.
    refs: db.prepare<[JobId], { seq: number; ref: string }>(
      'SELECT seq, ref FROM entries INDEXED BY entries_by_ref WHERE job = ? AND ref IS NOT NULL',
    ),
    seqOf: db.prepare<[JobId, string], { seq: number }>('SELECT seq FROM entries WHERE job = ? AND ref = ?'),
    putEnclosure: db.prepare('INSERT INTO enclosures (job, seq, salt, content) VALUES (?, ?, ?, ?)'),
    removeEnclosure: db.prepare('DELETE FROM enclosures WHERE job = ? AND seq = ?'),
    enclosure: db.prepare<[JobId, Seq], Enclosure>(
      'SELECT salt, content FROM enclosures WHERE job = ? AND seq = ?',
    ),
    enclosed: db.prepare<[], { job: JobId; seq: Seq }>('SELECT job, seq FROM enclosures ORDER BY job, seq'),
    putNames: db.prepare('INSERT INTO names (job, seq, salt, names) VALUES (?, ?, ?, ?)'),
    removeNames: db.prepare('DELETE FROM names WHERE job = ? AND seq = ?'),
    named: db.prepare<[], { job: JobId; seq: Seq; names: string }>(
      'SELECT job, seq, names FROM names ORDER BY job, seq',
    ),
    dropSummary: db.prepare('DELETE FROM summaries WHERE job = ?'),
    addPass: db.prepare('INSERT INTO passes (token, job, role) VALUES (?, ?, ?)'),
    revoke: db.prepare('UPDATE passes SET revoked = 1 WHERE job = ? AND role = ? AND revoked = 0'),
    withdraw: db.prepare('UPDATE passes SET revoked = 2 WHERE token = ? AND job = ?'),
    passes: db.prepare<[JobId], HeldPass>('SELECT token, role FROM passes WHERE job = ? AND revoked = 0'),
    everyPass: db.prepare<[JobId], HeldPass & { revoked: number }>(
      'SELECT token, role, revoked FROM passes WHERE job = ?',
    ),
    pass: db.prepare<[Digest], PassRow>('SELECT job, role, revoked FROM passes WHERE token = ?'),
    setCode: db.prepare(`INSERT INTO codes (code, job, seat, expires_at) VALUES (?, ?, ?, ?)
      ON CONFLICT (job, seat) DO UPDATE SET code = excluded.code, expires_at = excluded.expires_at`),
    voidCode: db.prepare('DELETE FROM codes WHERE job = ? AND seat = ?'),
    dropCode: db.prepare('DELETE FROM codes WHERE code = ?'),
    summary: db.prepare<[JobId], KeptSummary & { seal: string }>(
      'SELECT count, hash, body, seal FROM summaries WHERE job = ?',
    ),
    keepSummary: db.prepare(
      'INSERT OR REPLACE INTO summaries (job, count, hash, body, seal) VALUES (?, ?, ?, ?, ?)',
    ),
    addSignedHead: db.prepare(`INSERT INTO signed_heads (number, job, count, hash, at, key, signature)
      VALUES ((SELECT coalesce(max(number) + 1, 0) FROM signed_heads), ?, ?, ?, ?, ?, ?)`),
    signedHeads: db.prepare<[number, number], LoggedHead>(
      'SELECT job, count, hash, at, key, signature FROM signed_heads WHERE number >= ? ORDER BY number LIMIT ?',
    ),
    signedHeadsOf: db.prepare<[JobId], SignedHead & { number: number }>(
      'SELECT number, count, hash, at, key, signature FROM signed_heads WHERE job = ? ORDER BY number',
    ),
    addStamp: db.prepare(
      'INSERT INTO stamps (size, root, at, key, signature, nonce, token) VALUES (?, ?, ?, ?, ?, ?, ?)',
    ),
    stampOver: db.prepare<[number], KeptStamp>(
      'SELECT size, root, at, key, signature, nonce, token FROM stamps WHERE size > ? ORDER BY size LIMIT 1',
    ),
    lastStamp: db.prepare<[], KeptStamp>(
      'SELECT size, root, at, key, signature, nonce, token FROM stamps ORDER BY size DESC LIMIT 1',
    ),
    noteRead: db.prepare(`INSERT OR IGNORE INTO reads (hour, log, what, role, key, reader, name)
      VALUES (?, ?, ?, ?, ?, ?, ?)`),
    forgetReader: db.prepare("UPDATE OR IGNORE reads SET reader = 'forgotten', name = '' WHERE name = ?"),
    dropReader: db.prepare('DELETE FROM reads WHERE name = ?'),
    endReads: db.prepare(
      `DELETE FROM reads WHERE hour < min(?, (unixepoch() - ${LEAST_KEPT_DAYS} * 86400) * 1000)`,
    ),
    readsAfter: db.prepare<[number, number], KeptRead>(
      `SELECT ${READ} FROM reads WHERE number > ? ORDER BY number LIMIT ?`,
    ),
    readsBefore: db.prepare<[number, number], KeptRead>(
      `SELECT ${READ} FROM reads WHERE number < ? ORDER BY number DESC LIMIT ?`,
    ),
    readsOfBefore: db.prepare<[JobId, number, number], KeptRead>(
      `SELECT ${READ} FROM reads WHERE log = ? AND number < ? ORDER BY number DESC LIMIT ?`,
    ),
    readers: db.prepare<[], { name: string }>(
      "SELECT DISTINCT name FROM reads WHERE name <> '' ORDER BY name",
    ),
    grant: db.prepare<[Digest, number], CodeGrant>(
      'SELECT job, seat FROM codes WHERE code = ? AND expires_at > ?',
    ),
  };
}

function guard<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw new StoreFailure(`the database failed: ${(error as Error).message}`, { cause: error });
  }
}
