import type { Storage } from '../browser/storage.ts';

/** A job whose log this phone keeps alone. */
export interface JobHere {
  job: string;
  /** That of the seat, once the server has the log. */
  token: string;
  /** Site and beam pair. */
  title: string;
}

const KEY = 'here';

/** Checked by hand: the first page shows these, and a schema library is larger than that page. */
export function jobsHere(storage: Storage): JobHere[] {
  const kept = storage.read(KEY);
  return Array.isArray(kept) ? kept.flatMap(jobHere) : [];
}

function jobHere(kept: Partial<JobHere> | null): JobHere[] {
  const { job, token, title } = kept ?? {};
  return typeof job === 'string' && typeof token === 'string' && typeof title === 'string'
    ? [{ job, token, title }]
    : [];
}

/** False: the browser does not keep it. */
export const addJobHere = (storage: Storage, added: JobHere): boolean =>
  storage.write(KEY, [...jobsHere(storage).filter(({ job }) => job !== added.job), added]);

export const removeJobHere = (storage: Storage, gone: string): boolean =>
  storage.write(
    KEY,
    jobsHere(storage).filter(({ job }) => job !== gone),
  );
