import { setImmediate } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Head, JobId, Seq } from '../../src/model/ids.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { summaryOf, VisitSummary } from '../../src/record/visit-summary.ts';
import { checkNamed, lostEnclosures } from '../store/check.ts';
import type { Store } from '../store/store.ts';
import type { Telemetry } from '../telemetry/telemetry.ts';
import { wholeLog } from './files.ts';

/** What was worked out from a log. */
type Worked =
  | Omit<Extract<VisitResult, { kind: 'summary' }>, 'lost'>
  | Extract<VisitResult, { kind: 'broken' }>;

/** The summary of a visit. When its log fails its check: only where it fails. */
export type VisitResult =
  | {
      readonly kind: 'summary';
      readonly summary: VisitSummary;
      /** Entries whose enclosure was found to be lost, or another than they name. */
      readonly lost: readonly Seq[];
    }
  | { readonly kind: 'broken'; readonly head: Head; readonly fault: ChainFault };

/**
 * The summary of each log, worked out once for each head. It is kept in memory and beside the log in the store, and
 * used only if it belongs to the log's present head. It never stands for a log that nobody has looked at: each log is
 * checked from end to end before its kept summary is used for the first time, and again from time to time.
 */
export class Summaries {
  private readonly results = new Map<JobId, { head: Head; result: Promise<Worked | undefined> }>();
  private readonly lost = new Map<JobId, ReadonlySet<Seq>>();
  /** One at a time, so that phones get their answers in between. */
  private queue: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly store: Store,
    private readonly log: Logger,
    private readonly telemetry: Telemetry,
  ) {}

  /** Of a log that something names. Undefined for one that does not open a job. Rejects with `StoreFailure`. */
  async of(job: JobId): Promise<VisitResult | undefined> {
    const worked = await this.worked(job);
    if (worked?.kind !== 'summary') return worked;
    const lost = this.lost.get(job);
    // What was removed since, with a reason, is not lost.
    return { ...worked, lost: worked.summary.enclosed.map(([seq]) => seq).filter((seq) => lost?.has(seq)) };
  }

  private async worked(job: JobId): Promise<Worked | undefined> {
    const head = await this.store.head(job);
    const known = this.results.get(job);
    if (known && isSameHead(known.head, head) && (await this.endsAt(head))) return known.result;
    const work = this.queue.then(() => this.workOut(job, head));
    this.queue = work.catch(() => {});
    return this.remember(head, work);
  }

  /** Whether the log still has the last entry that its head names. */
  private async endsAt({ job, count, hash }: Head): Promise<boolean> {
    const [last] = await this.store.read(job, count - 2, 1);
    return last?.hash === hash;
  }

  private remember(head: Head, result: Promise<Worked | undefined>): Promise<Worked | undefined> {
    const { job } = head;
    this.results.set(job, { head, result });
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
   * The same, with the log checked again from end to end if that was done before, and with all that lies beside it. Rejects
   * with `StoreFailure`.
   */
  async check(job: JobId): Promise<VisitResult | undefined> {
    const known = await this.results.get(job)?.result;
    const broken = known && (known.kind === 'broken' ? known : await this.checkLog(job));
    if (!broken) await this.checkBeside(job);
    return this.of(job);
  }

  /**
   * Only whether the log is sound. For a job under way: its summary would be old before somebody asks for it, and crews would
   * wait while it is worked out.
   */
  async checkLog(job: JobId): Promise<Extract<Worked, { kind: 'broken' }> | undefined> {
    const fault = await checkNamed(this.store, job);
    if (!fault) return undefined;
    this.telemetry.damaged(job, fault);
    const broken = { kind: 'broken' as const, head: await this.store.head(job), fault };
    await this.remember(broken.head, Promise.resolve(broken));
    return broken;
  }

  private async checkBeside(job: JobId): Promise<void> {
    const before = await this.of(job);
    if (before?.kind !== 'summary') return;
    this.lost.set(job, new Set(await lostEnclosures(this.store, job, before.summary.enclosed)));
    const after = await this.of(job);
    if (after?.kind === 'summary' && after.lost.some((seq) => !before.lost.includes(seq)))
      this.telemetry.lost(job, after.lost);
  }

  private async workOut(job: JobId, known: Head): Promise<Worked | undefined> {
    await setImmediate();
    const fault = await checkNamed(this.store, job);
    if (fault) {
      this.telemetry.damaged(job, fault);
      return { kind: 'broken', head: await this.store.head(job), fault };
    }
    const kept = await this.store.summary(job);
    const ready = kept && isSameHead({ job, ...kept }, known) ? parsed(kept.body) : undefined;
    if (ready && isSameHead(ready.head, known)) return { kind: 'summary', summary: ready };
    const { entries } = await wholeLog(this.store, job);
    const summary = summaryOf(new VisitRecord({ entries }));
    if (!summary) return undefined;
    const { count, hash } = summary.head;
    await this.store.keepSummary(job, { count, hash, body: JSON.stringify(summary) });
    return { kind: 'summary', summary };
  }
}

const isSameHead = (one: Head, other: Head): boolean =>
  one.job === other.job && one.count === other.count && one.hash === other.hash;

/** Undefined when another version of the program wrote the summary. */
function parsed(body: string): VisitSummary | undefined {
  try {
    return VisitSummary.safeParse(JSON.parse(body)).data;
  } catch {
    return undefined;
  }
}
