import type { Storage } from '../browser/storage.ts';

export const JOB_STANDS = ['open', 'accepted', 'signed'] as const;
export type JobStand = (typeof JOB_STANDS)[number];

/** A job that this phone had a seat in. It outlives the seat, so that its record can be found again. */
export interface KnownJob {
  job: string;
  /** Site and beam pair. */
  title: string;
  /** As this phone last saw it, and when that was, ms. */
  stand: JobStand;
  seenAt: number;
  /** The supervisor's read-only key. Only the phone that opened the job has it. */
  watch?: string;
}

const KEY = 'jobs';
const MOST = 20;

/** Newest first. Checked by hand, as what else the first page shows: a schema library is larger than that page. */
export function knownJobs(storage: Storage): KnownJob[] {
  const kept = storage.read(KEY);
  return Array.isArray(kept) ? kept.flatMap(knownJob) : [];
}

function knownJob(kept: Partial<KnownJob> | null): KnownJob[] {
  const { job, title, seenAt, watch } = kept ?? {};
  const stand = JOB_STANDS.find((each) => each === kept?.stand);
  if (typeof job !== 'string' || typeof title !== 'string' || typeof seenAt !== 'number' || !stand) return [];
  return [{ job, title, stand, seenAt, ...(typeof watch === 'string' && { watch }) }];
}

/** Puts a job first. The key of its record stays, if this phone ever had it. */
export function rememberJob(storage: Storage, seen: KnownJob): boolean {
  const before = knownJobs(storage);
  const known = before.find(({ job }) => job === seen.job);
  const others = before.filter(({ job }) => job !== seen.job);
  return storage.write(KEY, [{ ...known, ...seen }, ...others].slice(0, MOST));
}

export const forgetJob = (storage: Storage, job: string): void =>
  void storage.write(
    KEY,
    knownJobs(storage).filter((known) => known.job !== job),
  );
