import { setTimeout } from 'node:timers/promises';
import type { JobId } from '../../src/model/ids.ts';
import { HeldElsewhere, type Leases } from '../store/leases.ts';
import { StoreFailure } from '../store/store.ts';
import type { Database } from './database.ts';

/** A process that says nothing for so long has lost its jobs to whoever asks for them. */
export const LEASE_MS = 5_000;
const RENEW_EACH_MS = 1_500;

/** With a higher one than all before, a job's input is stored; with a lower one, nothing is any more. */
export type Fence = number;

type Taken = { fence: Fence } | { url: string };

/**
 * The leases of one process. All times are the database's, but for one: whether our own lease may have run out while we did not
 * look, as when the process was stopped for a while. That is counted from before it was renewed, so it is never too late.
 */
export class PostgresLeases implements Leases {
  onLost: (job: JobId) => void = () => {};
  private readonly fences = new Map<JobId, Fence>();
  /** Jobs that are being given up. */
  private readonly leaving = new Map<JobId, Promise<unknown>>();
  private process: Promise<number>;
  private begun: (process: Promise<number>) => void = () => {};
  private url = '';
  private sureUntil = 0;
  private readonly closing = new AbortController();
  private renewing: Promise<void> = Promise.resolve();

  constructor(private readonly database: Database) {
    this.process = new Promise((resolve) => {
      this.begun = resolve;
    });
  }

  /** With which this process may append now. */
  fenceOf(job: JobId): Fence | undefined {
    return this.fences.get(job);
  }

  async begin(url: string): Promise<void> {
    this.url = url;
    const asked = performance.now();
    const row = await this.database.row<{ number: number }>(
      "INSERT INTO processes (url, alive_until) VALUES ($1, now() + $2 * interval '1 ms') RETURNING number",
      [url, LEASE_MS],
    );
    this.sureUntil = asked + LEASE_MS;
    this.begun(Promise.resolve(row?.number ?? 0));
    this.renewing = this.renewAgainAndAgain();
  }

  async take(job: JobId): Promise<void> {
    const process = await this.process;
    if (performance.now() >= this.sureUntil) await this.renew(process);
    await this.leaving.get(job);
    if (this.fences.has(job)) return;
    const row = await this.database.row<{ taken: Taken }>('SELECT take_lease($1, $2) AS taken', [
      job,
      process,
    ]);
    const taken = row?.taken;
    if (taken && 'fence' in taken) {
      this.fences.set(job, taken.fence);
      return;
    }
    const url = taken?.url ?? '';
    if (url === this.url)
      throw new StoreFailure(
        `another process of this server is said to be at ${url} too: give each its own address with --peer`,
      );
    throw new HeldElsewhere(job, url);
  }

  async giveUp(job: JobId): Promise<void> {
    const fence = this.fences.get(job);
    this.fences.delete(job);
    if (fence === undefined) return;
    // Where it cannot be given up now, it runs out with this process.
    const leaving = this.database
      .rows('DELETE FROM leases WHERE job = $1 AND fence = $2', [job, fence])
      .catch(() => undefined);
    this.leaving.set(job, leaving);
    await leaving;
    this.leaving.delete(job);
  }

  /** The store refused an append: somebody else has the job. */
  lost(job: JobId): void {
    if (this.fences.delete(job)) this.onLost(job);
  }

  async others(): Promise<string[]> {
    return this.alive(await this.process);
  }

  /** The addresses of all processes that answer now, but for one. */
  async alive(but = 0): Promise<string[]> {
    const rows = await this.database.rows<{ url: string }>(
      'SELECT url FROM processes WHERE number <> $1 AND alive_until > now()',
      [but],
    );
    return rows.map(({ url }) => url);
  }

  async close(): Promise<void> {
    this.closing.abort();
    await this.renewing;
    if (this.url === '') return;
    const process = await this.process;
    await this.database.rows('SELECT end_process($1)', [process]).catch(() => undefined);
  }

  private async renewAgainAndAgain(): Promise<void> {
    const { signal } = this.closing;
    while (!signal.aborted) {
      await setTimeout(RENEW_EACH_MS, undefined, { signal, ref: false }).catch(() => undefined);
      // While the database is away, nobody else can take anything over either.
      if (!signal.aborted) await this.renew(await this.process).catch(() => undefined);
    }
  }

  /** Afterwards every job in `fences` is ours, also when the lease had run out meanwhile. */
  private async renew(process: number): Promise<void> {
    const asked = performance.now();
    const mayBeLost = asked >= this.sureUntil ? [...this.fences] : [];
    await this.database.rows('SELECT renew_process($1, $2, $3)', [process, this.url, LEASE_MS]);
    const held = mayBeLost.length > 0 ? await this.heldBy(process) : undefined;
    this.sureUntil = asked + LEASE_MS;
    for (const [job, fence] of mayBeLost) if (held?.get(job) !== fence) this.lost(job);
  }

  private async heldBy(process: number): Promise<Map<JobId, Fence>> {
    const rows = await this.database.rows<{ job: JobId; fence: Fence }>(
      'SELECT job, fence FROM leases WHERE process = $1',
      [process],
    );
    return new Map(rows.map(({ job, fence }) => [job, fence]));
  }
}
