import type { ChainFault } from '../../src/log/fault.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { Store } from './store.ts';

/** The first fault of a log that something names, so that it must be there. Rejects with `StoreFailure`. */
export async function checkNamed(store: Store, job: JobId): Promise<ChainFault | undefined> {
  const fault = await store.audit(job);
  if (fault) return fault;
  return (await store.head(job)).count === 0 ? { seq: 0, fault: 'missing' } : undefined;
}
