import type { JobId } from '../../src/model/ids.ts';

/** Which of several processes takes a job's input. A server of one process has none, and takes all. */
export interface Leases {
  /** From now on other processes find this one at `url`. */
  begin(url: string): Promise<void>;
  /**
   * Resolves when this process has the job. Rejects with `HeldElsewhere` where another one has it, and with `StoreFailure` where
   * that cannot be found out.
   */
  take(job: JobId): Promise<void>;
  /** Nobody is in this job any more: any process may have it. Never rejects. */
  giveUp(job: JobId): Promise<void>;
  /** Told of each job that another process may have taken over while this one did not answer. */
  onLost: (job: JobId) => void;
  /** The addresses of the other processes that answer now. */
  others(): Promise<string[]>;
  /** Gives all up. Never rejects. */
  close(): Promise<void>;
}

/** Another process takes this job's input: who wants something of the job is carried there. */
export class HeldElsewhere extends Error {
  override name = 'HeldElsewhere';

  constructor(
    readonly job: JobId,
    readonly url: string,
  ) {
    super(`another process has the job ${job}: ${url}`);
  }
}

/** For work that the process which has the job does by itself. */
export function unlessElsewhere(error: unknown): undefined {
  if (error instanceof HeldElsewhere) return undefined;
  throw error;
}
