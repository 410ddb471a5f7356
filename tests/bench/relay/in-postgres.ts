import { mkdirSync } from 'node:fs';
import { openPostgres } from '../../../server/postgres/open.ts';
import type { PostgresStore } from '../../../server/postgres/postgres.ts';
import { newSummaryKey } from '../../../server/store/summary-key.ts';
import { Cluster } from '../../postgres/cluster.ts';
import type { Seen } from './crews.ts';
import { type CrewKeys, type LaidJob, laidJobs, passesOf } from './logs.ts';
import { BATCH, type Place } from './place.ts';

/** A PostgreSQL of our own, on the disk that is measured. */
export class InPostgres implements Place {
  readonly args: readonly string[];

  private constructor(
    private readonly cluster: Cluster,
    data: string,
  ) {
    mkdirSync(data);
    this.args = ['--data', data, '--store', cluster.url, '--store-password-file', cluster.passwordFile];
  }

  static async start(data: string, folder: string): Promise<InPostgres> {
    const settings = { max_connections: '100', shared_buffers: '256MB', max_wal_size: '4GB' };
    return new InPostgres(await Cluster.start(settings, folder), data);
  }

  async lay(jobs: number, length: number, pairs: number): Promise<CrewKeys[]> {
    const all: CrewKeys[] = [];
    await this.with(async (store) => {
      let batch: LaidJob[] = [];
      for (const laid of laidJobs(jobs, length, pairs)) {
        batch.push(laid);
        all.push(laid.keys);
        if (batch.length < BATCH && all.length < jobs) continue;
        await layTogether(store, batch);
        batch = [];
      }
      // As it will be after some time, and not in the middle of what is measured.
      await store.database.rows('VACUUM ANALYZE');
    });
    return all;
  }

  get database(): number {
    return this.cluster.pid;
  }

  misplaced(places: Seen['places']): Promise<number> {
    return this.with(async (store) => {
      const rows = await store.database.rows<{ wrong: number }>(
        `SELECT count(*) FILTER (WHERE e.seq IS NULL)::int AS wrong
          FROM unnest($1::text[], $2::text[], $3::int[]) p(job, ref, seq) LEFT JOIN entries e USING (job, ref, seq)`,
        [0, 1, 2].map((column) => places.map((place) => place[column] as string | number)),
      );
      return rows[0]?.wrong ?? Number.NaN;
    });
  }

  remove(): Promise<void> {
    return this.cluster.remove();
  }

  private async with<T>(work: (store: PostgresStore) => Promise<T>): Promise<T> {
    const { url, passwordFile } = this.cluster;
    const store = await openPostgres({ url, passwordFile }, newSummaryKey());
    try {
      return await work(store);
    } finally {
      await store.close();
    }
  }
}

/** In one transaction; what a crash would lose here is laid down again. */
async function layTogether({ database }: PostgresStore, batch: readonly LaidJob[]): Promise<void> {
  await database.transaction(async (rows) => {
    await rows('SET LOCAL synchronous_commit = off');
    for (const { keys, entries } of batch)
      await rows(
        `INSERT INTO entries (job, seq, hash, body)
          SELECT $1, (e.number - 1)::int, e.hash, e.body
          FROM unnest($2::text[], $3::text[]) WITH ORDINALITY e(hash, body, number)`,
        [keys.job, entries.map(({ hash }) => hash), entries.map(({ body }) => body)],
      );
    await rows(
      'INSERT INTO heads (job, count, hash) SELECT * FROM unnest($1::text[], $2::int[], $3::text[])',
      [
        batch.map(({ keys }) => keys.job),
        batch.map(({ entries }) => entries.length),
        batch.map(({ entries }) => entries.at(-1)?.hash ?? ''),
      ],
    );
    const passes = batch.flatMap(({ keys }) => passesOf(keys).map((pass) => ({ ...pass, job: keys.job })));
    await rows(
      'INSERT INTO passes (token, job, role) SELECT * FROM unnest($1::text[], $2::text[], $3::text[])',
      [passes.map(({ token }) => token), passes.map(({ job }) => job), passes.map(({ role }) => role)],
    );
  });
}
