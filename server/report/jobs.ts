import { nanoid } from 'nanoid';
import type { JobId } from '../../src/model/ids.ts';
import type { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';

/** A report in the making, or made. */
interface ReportJob {
  /** The site's log. */
  readonly site: JobId;
  readonly total: number;
  done: number;
  file?: Buffer;
  failed: boolean;
  /** When somebody last asked for it, ms. */
  asked: number;
}

/** Makes the file, and says after each pair how many are done. */
export type MakeReport = (tell: (done: number) => void) => Promise<Buffer>;

/** Reports nobody asks for any more are dropped after this long, ms. */
const KEPT_MS = 10 * 60_000;
/** Each may be some megabytes. */
const MOST = 6;

/** The reports being made, one after the other so that the crews' phones never wait for two. */
export class ReportJobs {
  readonly #jobs = new Map<string, ReportJob>();
  #queue: Promise<void> = Promise.resolve();

  constructor(
    private readonly now: () => number,
    private readonly onFailure: (error: unknown) => void,
  ) {}

  /** Undefined when too many are wanted already. */
  begin(site: JobId, total: number, make: MakeReport): ReportBegun | undefined {
    this.#prune();
    if (this.#jobs.size >= MOST) return undefined;
    const job: ReportJob = { site, total, done: 0, failed: false, asked: this.now() };
    const id = nanoid();
    this.#jobs.set(id, job);
    this.#queue = this.#queue.then(async () => {
      try {
        job.file = await make((done) => {
          job.done = done;
        });
        job.done = total;
      } catch (error) {
        job.failed = true;
        this.onFailure(error);
      }
    });
    return { report: id, total };
  }

  /** Of a report of this site. */
  progress(site: JobId, id: string): ReportProgress | 'unknown' | 'failed' {
    const job = this.#asked(site, id);
    if (!job) return 'unknown';
    if (job.failed) return 'failed';
    return { done: job.done, total: job.total, ready: job.file !== undefined };
  }

  /** The finished file; it can be fetched again until it is dropped. */
  file(site: JobId, id: string): Buffer | undefined {
    return this.#asked(site, id)?.file;
  }

  #asked(site: JobId, id: string): ReportJob | undefined {
    this.#prune();
    const job = this.#jobs.get(id);
    if (job?.site !== site) return undefined;
    job.asked = this.now();
    return job;
  }

  #prune(): void {
    for (const [id, { asked, file, failed }] of this.#jobs) {
      if ((file || failed) && this.now() - asked > KEPT_MS) this.#jobs.delete(id);
    }
  }
}
