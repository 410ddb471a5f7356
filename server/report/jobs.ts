import { nanoid } from 'nanoid';
import type { JobId } from '../../src/model/ids.ts';
import type { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';
import type { TurnLimits } from '../guard/limits.ts';
import type { Turns } from '../guard/turns.ts';

/** A report that is being made, or is ready. */
interface ReportJob {
  /** The site's log. */
  readonly site: JobId;
  /** The block of addresses that it was asked from. */
  readonly place: string;
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

/** The reports of sites, made one after the other, in the turns of the sites. */
export class ReportJobs {
  readonly #jobs = new Map<string, ReportJob>();

  /** `limits`: those of the turns. They hold for the finished reports that are kept, too: each may take some megabytes. */
  constructor(
    private readonly turns: Turns,
    private readonly limits: TurnLimits,
    private readonly now: () => number,
    private readonly onFailure: (error: unknown) => void,
  ) {}

  /** Undefined when there are too many already. `place`: the block of addresses that it is asked from. */
  begin(site: JobId, place: string, total: number, make: MakeReport): ReportBegun | undefined {
    this.#prune();
    if (!this.#hasRoom(site, place)) return undefined;
    const job: ReportJob = { site, place, total, done: 0, failed: false, asked: this.now() };
    const made = this.turns.take({ key: site, place }, async () => {
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
    if (!made) return undefined;
    const id = nanoid();
    this.#jobs.set(id, job);
    return { report: id, total };
  }

  /** When all places are taken, the finished one gives way that nobody has asked for longest. */
  #hasRoom(site: JobId, place: string): boolean {
    const kept = [...this.#jobs.values()];
    const { perKey, perPlace, all } = this.limits;
    if (kept.filter((job) => job.site === site).length >= perKey) return false;
    if (kept.filter((job) => job.place === place).length >= perPlace) return false;
    if (kept.length < all) return true;
    const finished = [...this.#jobs].filter(([, { file, failed }]) => file || failed);
    const [longest] = finished.toSorted(([, one], [, other]) => one.asked - other.asked);
    return longest !== undefined && this.#jobs.delete(longest[0]);
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
