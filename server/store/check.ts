import { setImmediate } from 'node:timers/promises';
import { isEnclosed } from '../../src/log/enclosure.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Hash, JobId, Seq } from '../../src/model/ids.ts';
import type { Store } from './store.ts';

/** The first fault of a log that something names, so that it must be there. Rejects with `StoreFailure`. */
export async function checkNamed(store: Store, job: JobId): Promise<ChainFault | undefined> {
  const fault = await store.audit(job);
  if (fault) return fault;
  return (await store.head(job)).count === 0 ? { seq: 0, fault: 'missing' } : undefined;
}

/**
 * The entries whose enclosure is lost, or is another than they name. `enclosed`: what must lie beside the log, as
 * `enclosedIn` gives it. Other work is done in between. Rejects with `StoreFailure`.
 */
export async function lostEnclosures(
  store: Store,
  job: JobId,
  enclosed: Iterable<readonly [Seq, Hash]>,
): Promise<Seq[]> {
  const lost: Seq[] = [];
  for (const [seq, hash] of enclosed) {
    const enclosure = await store.enclosure(job, seq);
    if (!enclosure || !isEnclosed(enclosure, hash)) lost.push(seq);
    await setImmediate();
  }
  return lost;
}
