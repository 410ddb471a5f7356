import { setImmediate } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Hash, Head, JobId } from '../../src/model/ids.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { summaryOf, VisitSummary } from '../../src/record/visit-summary.ts';
import type { Store } from '../store/store.ts';
import { wholeLog } from './files.ts';

/** What a visit comes to; or where its log fails its check, and nothing is told of it. */
export type VisitResult =
  | { readonly kind: 'summary'; readonly summary: VisitSummary }
  | { readonly kind: 'broken'; readonly head: Head; readonly fault: ChainFault };

/**
 * The summary of each log, worked out once for each end of it. Kept in memory and beside the log in the store,
 * and believed only where it is of the log's head as it is now. A log that was changed behind the store's back
 * and kept its head is found out when it is audited: when it is worked out again, and when its room is opened.
 */
export class Summaries {
  private readonly told = new Map<JobId, { hash: Hash; told: Promise<VisitResult | undefined> }>();
  /** One at a time, so that the phones are answered in between. */
  private queue: Promise<unknown> = Promise.resolve();
  private closed = false;

  constructor(
    private readonly store: Store,
    private readonly log: Logger,
  ) {}

  /** Undefined for a log that opens no job. Rejects with `StoreFailure`. */
  async of(job: JobId): Promise<VisitResult | undefined> {
    const { hash } = await this.store.head(job);
    const known = this.told.get(job);
    if (known?.hash === hash) return known.told;
    const told = this.find(job, hash);
    this.told.set(job, { hash, told });
    // A failure is no answer to the next one who asks.
    told.catch(() => this.told.delete(job));
    return told;
  }

  /** Works it out ahead of being asked. Never rejects. */
  async prepare(job: JobId): Promise<void> {
    await this.of(job).catch((error: unknown) => this.log.warn({ job, err: error }, 'a job has no summary'));
  }

  /**
   * The same for every job, while the server does other things: rules that are new make old summaries void. Never
   * rejects.
   */
  async prepareAll(): Promise<void> {
    const jobs = await this.store.jobs().catch((error: unknown) => {
      this.log.warn({ err: error }, 'no summaries are worked out ahead of being asked for');
      return [];
    });
    for (const { job } of jobs) {
      await setImmediate();
      if (this.closed) return;
      await this.prepare(job);
    }
  }

  close(): void {
    this.closed = true;
  }

  private async find(job: JobId, hash: Hash): Promise<VisitResult | undefined> {
    const kept = await this.store.summary(job);
    if (kept?.hash === hash) {
      const summary = parsed(kept.body);
      if (summary?.head.hash === hash) return { kind: 'summary', summary };
    }
    const work = this.queue.then(() => this.workOut(job));
    this.queue = work.catch(() => {});
    return work;
  }

  private async workOut(job: JobId): Promise<VisitResult | undefined> {
    await setImmediate();
    const fault = await this.store.audit(job);
    const { head, entries } = await wholeLog(this.store, job);
    if (fault) return { kind: 'broken', head, fault };
    const summary = summaryOf(new VisitRecord({ entries }));
    if (!summary) return undefined;
    await this.store.keepSummary(job, { hash: summary.head.hash, body: JSON.stringify(summary) });
    return { kind: 'summary', summary };
  }
}

/** Undefined for the summary of another version of the program. */
function parsed(body: string): VisitSummary | undefined {
  try {
    return VisitSummary.safeParse(JSON.parse(body)).data;
  } catch {
    return undefined;
  }
}
