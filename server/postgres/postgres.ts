import { setImmediate } from 'node:timers/promises';
import { emptyHead, GENESIS } from '../../src/log/chain.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { SignedHead } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head, JobId, MessageId, Seq } from '../../src/model/ids.ts';
import { Audit, type EntryRow, readable, rowOf, type StoredEntry } from '../store/audit.ts';
import { follows } from '../store/follows.ts';
import { revokedOf } from '../store/passes.ts';
import type { KeptRead, ReadChange } from '../store/reads.ts';
import type { Warn } from '../store/sqlite.ts';
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
} from '../store/store.ts';
import { isSealed, type SummaryKey, sealOf, UNSEALED } from '../store/summary-key.ts';
import { Batches, type Outcome } from './batches.ts';
import { type Database, isRolledBack } from './database.ts';
import { PostgresFigures } from './figures.ts';
import { type Fence, PostgresLeases } from './leases.ts';

/** Rows that an audit reads at a time. */
const AUDIT_BATCH = 500;
/** Appends that wait for the disk together. */
const MOST_TOGETHER = 200;

interface LogWrite {
  readonly job: JobId;
  readonly rows: readonly EntryRow[];
  readonly keys: KeyChange | undefined;
  readonly enclosing: Enclosing | undefined;
  readonly fence: Fence | undefined;
}

/** A write as it is sent. */
interface Ready {
  readonly job: JobId;
  readonly json: string;
}

const byJob = (one: Ready, other: Ready): number => Number(one.job > other.job) - Number(one.job < other.job);

/** As the database's `append` answers. */
type Became = Appended | { kind: 'fenced' };

/** The same store in PostgreSQL, for a server of several processes. */
export class PostgresStore implements Store {
  readonly name = 'postgres';
  readonly leases: PostgresLeases;
  readonly figures: PostgresFigures;
  private closing: Promise<void> | undefined;
  private saidUnsealed = false;
  private readonly appends = new Batches<Ready, Became>((batch) => this.appendAll(batch), MOST_TOGETHER);

  /** `database`: brought up by `openPostgres`. `firm`: whose login it is; '' where one firm has the database for itself. */
  constructor(
    readonly database: Database,
    readonly firm: string,
    private readonly key: SummaryKey,
    private readonly warn: Warn,
  ) {
    this.leases = new PostgresLeases(database);
    this.figures = new PostgresFigures(database);
  }

  async append(
    job: JobId,
    entries: readonly Entry[],
    keys?: KeyChange,
    enclosing?: Enclosing,
  ): Promise<Appended> {
    const rows = entries.map(rowOf);
    const [first] = rows;
    // Only the first is held to the head by the database.
    if (first && !follows(rows, { job, count: first.seq, hash: first.prev }))
      return { kind: 'conflict', head: await this.head(job) };
    const fence = this.leases.fenceOf(job);
    const became = await this.appends.add({ job, json: toJson({ job, rows, keys, enclosing, fence }) });
    if (became.kind !== 'fenced') return became;
    this.leases.lost(job);
    throw new StoreFailure('another process of this server has taken this job over');
  }

  /** Each is stored or not on its own, as if they came one after the other; but all wait for the disk once. */
  private async appendAll(writes: readonly Ready[]): Promise<Outcome<Became>[]> {
    try {
      return await this.appendTogether(writes);
    } catch (error) {
      if (!isRolledBack(error)) return writes.map(() => ({ error }));
    }
    // One of them failed all: which one it was shows when each has a transaction of its own.
    const outcomes: Outcome<Became>[] = [];
    for (const write of writes)
      outcomes.push(...(await this.appendTogether([write]).catch((error: unknown) => [{ error }])));
    return outcomes;
  }

  private async appendTogether(writes: readonly Ready[]): Promise<Outcome<Became>[]> {
    // Processes that lock the same logs lock them in the same order, so that none waits for another that waits for it.
    const order = [...writes.keys()].sort((a, b) => byJob(writes[a] as Ready, writes[b] as Ready) || a - b);
    const rows = await this.database.rows<{ value: Became }>(
      'SELECT append(w) AS value FROM jsonb_array_elements($1::jsonb) w',
      [`[${order.map((i) => writes[i]?.json).join()}]`],
    );
    const outcomes: Outcome<Became>[] = [];
    for (const [place, i] of order.entries()) outcomes[i] = { value: rows[place]?.value as Became };
    return outcomes;
  }

  async read(job: JobId, after: number, limit: number): Promise<Entry[]> {
    return readable(await this.database.rows<StoredEntry>(ROWS, [job, after, limit]));
  }

  async enclosure(job: JobId, seq: Seq): Promise<Enclosure | undefined> {
    const row = await this.database.row<{ salt: string; content: Buffer }>(
      'SELECT salt, content FROM enclosures WHERE job = $1 AND seq = $2',
      [job, seq],
    );
    return row && { salt: row.salt, content: new Uint8Array(row.content) };
  }

  enclosed(): Promise<{ job: JobId; seq: Seq }[]> {
    return this.database.rows('SELECT job, seq FROM enclosures ORDER BY job, seq');
  }

  async named(): Promise<NamedEntry[]> {
    const rows = await this.database.rows<{ job: JobId; seq: Seq; names: string }>(
      'SELECT job, seq, names FROM names ORDER BY job, seq',
    );
    return rows.map(({ job, seq, names }) => ({ job, seq, names: JSON.parse(names) }));
  }

  async head(job: JobId): Promise<Head> {
    const head = await this.database.row<Head>(HEAD, [job]);
    return head ?? emptyHead(job);
  }

  async seqOf(job: JobId, ref: MessageId): Promise<Seq | undefined> {
    const row = await this.database.row<{ seq: Seq }>('SELECT seq FROM entries WHERE job = $1 AND ref = $2', [
      job,
      ref,
    ]);
    return row?.seq;
  }

  async audit(job: JobId): Promise<ChainFault | undefined> {
    const kept = await this.summary(job);
    const audit = new Audit(job, [...(await this.signedHeadsOf(job)), ...(kept ? [kept] : [])]);
    // Another process may append meanwhile: a log that only grew would seem to end elsewhere than its head says.
    return this.database.snapshot(async (read) => {
      for (;;) {
        const rows = await read<StoredEntry>(ROWS, [job, audit.count - 1, AUDIT_BATCH]);
        if (rows.length === 0) return audit.end((await read<Head>(HEAD, [job]))[0] ?? emptyHead(job));
        for (const row of rows) {
          const fault = audit.add(row);
          if (fault) return fault;
        }
        await setImmediate();
      }
    });
  }

  jobs(): Promise<Head[]> {
    return this.database.rows<Head>('SELECT job, count, hash FROM heads ORDER BY number');
  }

  async logs(): Promise<JobId[]> {
    // Each log once, by jumps through the index: a plain DISTINCT would read every entry.
    const rows = await this.database.rows<{ job: JobId }>(`
      WITH RECURSIVE written(job) AS (
        SELECT min(job) FROM entries
        UNION ALL SELECT (SELECT min(job) FROM entries WHERE job > written.job) FROM written WHERE job IS NOT NULL
      )
      SELECT job FROM written WHERE job IS NOT NULL
      UNION SELECT job FROM heads UNION SELECT job FROM passes UNION SELECT job FROM summaries
      UNION SELECT job FROM signed_heads UNION SELECT job FROM enclosures UNION SELECT job FROM names`);
    return rows.map(({ job }) => job);
  }

  async pass(token: Digest): Promise<Pass | undefined> {
    const row = await this.database.row<{ job: JobId; role: Pass['role']; revoked: number }>(
      'SELECT job, role, revoked FROM passes WHERE token = $1',
      [token],
    );
    return row && { ...row, revoked: revokedOf(row.revoked) };
  }

  passes(job: JobId): Promise<HeldPass[]> {
    return this.database.rows<{ token: Digest; role: HeldPass['role'] }>(
      'SELECT token, role FROM passes WHERE job = $1 AND revoked = 0',
      [job],
    );
  }

  async everyPass(job: JobId): Promise<GivenPass[]> {
    const rows = await this.database.rows<{ token: Digest; role: Pass['role']; revoked: number }>(
      'SELECT token, role, revoked FROM passes WHERE job = $1',
      [job],
    );
    return rows.map((row) => ({ ...row, revoked: revokedOf(row.revoked) }));
  }

  grant(code: Digest, now: number): Promise<CodeGrant | undefined> {
    return this.database.row<{ job: JobId; seat: CodeGrant['seat'] }>(
      'SELECT job, seat FROM codes WHERE code = $1 AND expires_at > $2',
      [code, now],
    );
  }

  async summary(job: JobId): Promise<KeptSummary | undefined> {
    const row = await this.database.row<{ count: number; hash: string; body: string; seal: string }>(
      'SELECT count, hash, body, seal FROM summaries WHERE job = $1',
      [job],
    );
    if (!row) return undefined;
    const { seal, ...kept } = row;
    if (isSealed(this.key, job, kept, seal)) return kept;
    if (!this.saidUnsealed) this.warn(UNSEALED);
    this.saidUnsealed = true;
    return undefined;
  }

  async keepSummary(job: JobId, kept: KeptSummary): Promise<void> {
    await this.database.rows(
      `INSERT INTO summaries (job, count, hash, body, seal) VALUES ($1, $2, $3, $4, $5)
        ON CONFLICT (job, firm) DO UPDATE
        SET count = excluded.count, hash = excluded.hash, body = excluded.body, seal = excluded.seal`,
      [job, kept.count, kept.hash, kept.body, sealOf(this.key, job, kept)],
    );
  }

  async addSignedHeads(heads: readonly LoggedHead[]): Promise<void> {
    await this.database.rows('SELECT add_signed_heads($1::jsonb)', [JSON.stringify(heads)]);
  }

  signedHeads(after: number, limit: number): Promise<LoggedHead[]> {
    return this.database.rows<LoggedHead>(
      'SELECT job, count, hash, at, key, signature FROM signed_heads WHERE firm = current_firm() AND number >= $1 ORDER BY number LIMIT $2',
      [after, limit],
    );
  }

  signedHeadsOf(job: JobId): Promise<(SignedHead & { number: number })[]> {
    return this.database.rows<SignedHead & { number: number }>(
      'SELECT number, count, hash, at, key, signature FROM signed_heads WHERE job = $1 ORDER BY number',
      [job],
    );
  }

  async addStamp({ size, root, at, key, signature, nonce, token }: KeptStamp): Promise<void> {
    await this.database.rows(
      'INSERT INTO stamps (size, root, at, key, signature, nonce, token) VALUES ($1, $2, $3, $4, $5, $6, $7)',
      [size, root, at, key, signature, nonce, token],
    );
  }

  stampOver(number: number): Promise<KeptStamp | undefined> {
    return this.database.row<KeptStamp>(`${STAMPS} WHERE size > $1 ORDER BY size LIMIT 1`, [number]);
  }

  lastStamp(): Promise<KeptStamp | undefined> {
    return this.database.row<KeptStamp>(`${STAMPS} ORDER BY size DESC LIMIT 1`);
  }

  async changeReads(change: ReadChange): Promise<void> {
    if ('note' in change) await this.database.rows(NOTE_READS, [JSON.stringify(change.note)]);
    else if ('forget' in change) await this.database.rows('SELECT forget_reader($1)', [change.forget]);
    else await this.database.rows('SELECT end_reads($1)', [change.end]);
  }

  readsAfter(after: number, limit: number): Promise<KeptRead[]> {
    return this.database.rows(`${READ} WHERE number > $1 ORDER BY number LIMIT $2`, [after, limit]);
  }

  readsBefore(before: number, limit: number, log?: JobId): Promise<KeptRead[]> {
    const [and, given] = log === undefined ? ['', []] : [' AND log = $3', [log]];
    return this.database.rows(`${READ} WHERE number < $1${and} ORDER BY number DESC LIMIT $2`, [
      before,
      limit,
      ...given,
    ]);
  }

  async readers(): Promise<string[]> {
    const rows = await this.database.rows<{ name: string }>(
      "SELECT DISTINCT name FROM reads WHERE name <> '' ORDER BY name",
    );
    return rows.map(({ name }) => name);
  }

  async health(): Promise<void> {
    const is = await this.database.row<{ readonly: string }>(
      "SELECT current_setting('transaction_read_only') AS readonly",
    );
    if (is?.readonly !== 'off') throw new StoreFailure('the database takes nothing: it only reads now');
  }

  close(): Promise<void> {
    this.closing ??= this.appends.done().then(() => this.database.close());
    return this.closing;
  }
}

const HEAD = 'SELECT job, count, hash FROM heads WHERE job = $1';
const ROWS = `SELECT seq, ref, body, hash, salt, names FROM entries LEFT JOIN names USING (job, seq)
  WHERE job = $1 AND seq > $2 ORDER BY seq LIMIT $3`;
const READ = 'SELECT number, hour, log, what, role, key, reader, name FROM reads';
const NOTE_READS = `INSERT INTO reads (hour, log, what, role, key, reader, name)
  SELECT hour, log, what, role, key, reader, name FROM jsonb_to_recordset($1::jsonb)
    r(hour bigint, log text, what text, role text, key text, reader text, name text)
  ON CONFLICT DO NOTHING`;
const STAMPS = 'SELECT size, root, at, key, signature, nonce, token FROM stamps';

function toJson({ job, rows, keys, enclosing = {}, fence }: LogWrite): string {
  const { put, ...others } = enclosing;
  const kept = put && { ...put, content: Buffer.from(put.content).toString('base64') };
  return JSON.stringify({
    ...{ job, rows, keys, fence, genesis: GENESIS },
    enclosing: { ...others, ...(kept && { put: kept }) },
  });
}
