import type { Store } from '../../server/store/store.ts';
import type { Entry } from '../../src/model/entry.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';

/** The log of the only job that a test opens; before it is opened, no entries. */
export async function logOf(store: Store): Promise<Entry[]> {
  const [job] = await store.jobs();
  return job ? store.read(job.job, -1, 10_000) : [];
}

export const stateOf = async (store: Store): Promise<JobState> => (await logOf(store)).reduce(fold, EMPTY);
