import { nanoid } from 'nanoid';
import type { JobId } from '../../src/model/ids.ts';
import type { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';

/** A report that is being made, or is ready. */
interface ReportJob {
  /** The site's log. */
  readonly site: JobId;
  readonly total: number;
  done: number;
  file?: Buffer;
  failed: boolean;
  /** When someone last asked for it, ms. */
  asked: number;
}

/** Makes the file. Calls `tell` after each pair with the number of pairs done. */
export type MakeReport = (tell: (done: number) => void) => Promise<Buffer>;

/** A report is dropped when nobody has asked for it for so long, ms. */
const KEPT_MS = 10 * 60_000;
/** Each may take some megabytes. */
const MOST = 6;

/** The reports of sites, made one after the other, so that the phones of crews never wait for two. */
export class ReportJobs {
  readonly #jobs = new Map<string, ReportJob>();
  #queue: Promise<void> = Promise.resolve();

  constructor(
    private readonly now: () => number,
    private readonly onFailure: (error: unknown) => void,
  ) {}

  /** Undefined when there are too many already. */
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

  /** Of one report of this site. */
  progress(site: JobId, id: string): ReportProgress | 'unknown' | 'failed' {
    const job = this.#asked(site, id);
    if (!job) return 'unknown';
    if (job.failed) return 'failed';
    return { done: job.done, total: job.total, ready: job.file !== undefined };
  }

  /** The finished file. It can be fetched more than once, until it is dropped. */
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
