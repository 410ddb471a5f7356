import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { DemoVisit } from '../../src/simulator/demo-site.ts';
import { digest, newToken } from '../guard/secrets.ts';
import type { Store } from '../store/store.ts';

/** A site's log and the logs of its visits, as `playDemoSite` gives them. */
export interface PlayedSite {
  readonly site: readonly Entry[];
  readonly visits: readonly Pick<DemoVisit, 'job' | 'entries'>[];
}

/**
 * Puts the logs of a played site into a store, which may already hold them, and returns new tokens for it. Rejects
 * with `StoreFailure`, and when the store holds another log with the same name.
 */
export async function layDown(
  store: Store,
  { site, visits }: PlayedSite,
): Promise<{ desk: string; watch: string }> {
  const [first] = site;
  if (!first) throw new Error('a site starts with the entry that opens it');
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

/** A log that already starts with these entries stays as it is: someone may have gone on with it. */
async function layLog(store: Store, job: JobId, entries: readonly Entry[]): Promise<void> {
  const [known] = await store.read(job, entries.length - 2, 1);
  if (known && known.hash === entries.at(-1)?.hash) return;
  const appended = await store.append(job, entries);
  if (appended.kind !== 'stored') {
    throw new Error(`there is another log with the name ${job}: choose another data folder`);
  }
}
