import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { DemoVisit } from '../../src/simulator/demo-site.ts';
import { digest, newToken } from '../guard/secrets.ts';
import type { Store } from '../store/store.ts';

/** A site's log with those of its visits, as `playDemoSite` gives them. */
export interface PlayedSite {
  readonly site: readonly Entry[];
  readonly visits: readonly Pick<DemoVisit, 'job' | 'entries'>[];
}

/**
 * Puts the logs of a played site into a store that may hold them already, and gives new tokens to it. Rejects
 * with `StoreFailure`, and where a log of the same name is another.
 */
export async function layDown(
  store: Store,
  { site, visits }: PlayedSite,
): Promise<{ desk: string; watch: string }> {
  const [first] = site;
  if (!first) throw new Error('a site begins with the entry that opens it');
  for (const { job, entries } of visits) await layLog(store, job, entries);
  await layLog(store, first.job, site);
  const desk = newToken();
  const watch = newToken();
  await store.append(first.job, [], {
    issue: [
      { token: digest(desk), role: 'desk' },
      { token: digest(watch), role: 'watcher' },
    ],
  });
  return { desk, watch };
}

/** Leaves a log alone that begins with these entries: somebody has gone on with it. */
async function layLog(store: Store, job: JobId, entries: readonly Entry[]): Promise<void> {
  const [known] = await store.read(job, entries.length - 2, 1);
  if (known && known.hash === entries.at(-1)?.hash) return;
  const appended = await store.append(job, entries);
  if (appended.kind !== 'stored') {
    throw new Error(`there is another log under the name ${job}: choose another data folder`);
  }
}
