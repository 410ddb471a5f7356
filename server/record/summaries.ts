import { setImmediate } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Hash, Head, JobId } from '../../src/model/ids.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { summaryOf, VisitSummary } from '../../src/record/visit-summary.ts';
import type { Store } from '../store/store.ts';
import { wholeLog } from './files.ts';

/** The summary of a visit. When its log fails its check: only where it fails. */
export type VisitResult =
  | { readonly kind: 'summary'; readonly summary: VisitSummary }
  | { readonly kind: 'broken'; readonly head: Head; readonly fault: ChainFault };

/**
 * The summary of each log, worked out once for each head. It is kept in memory and beside the log in the store, and
 * used only if it belongs to the log's present head. A log that was changed outside the store, but kept its head, is
 * found by the audit: when its summary is worked out again, and when its room is opened.
 */
export class Summaries {
  private readonly results = new Map<JobId, { hash: Hash; result: Promise<VisitResult | undefined> }>();
  /** One at a time, so that phones get their answers in between. */
  private queue: Promise<unknown> = Promise.resolve();
  private closed = false;

  constructor(
    private readonly store: Store,
    private readonly log: Logger,
  ) {}

  /** Undefined for a log that does not open a job. Rejects with `StoreFailure`. */
  async of(job: JobId): Promise<VisitResult | undefined> {
    const { hash } = await this.store.head(job);
    const known = this.results.get(job);
    if (known?.hash === hash) return known.result;
    const result = this.find(job, hash);
    this.results.set(job, { hash, result });
    // After a failure, the next caller tries again.
    result.catch(() => this.results.delete(job));
    return result;
  }

  /** Works it out before anyone asks. Never rejects. */
  async prepare(job: JobId): Promise<void> {
    await this.of(job).catch((error: unknown) =>
      this.log.warn({ job, err: error }, 'the summary of a job could not be prepared'),
    );
  }

  /**
   * The same for every job, while the server does other work: with new rules, old summaries are no longer valid.
   * Never rejects.
   */
  async prepareAll(): Promise<void> {
    const jobs = await this.store.jobs().catch((error: unknown) => {
      this.log.warn({ err: error }, 'no summaries are prepared');
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

/** Undefined when another version of the program wrote the summary. */
function parsed(body: string): VisitSummary | undefined {
  try {
    return VisitSummary.safeParse(JSON.parse(body)).data;
  } catch {
    return undefined;
  }
}
