import { useCallback, useMemo } from 'preact/hooks';
import type { Log } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { SiteView } from '../../src/protocol/site.ts';
import { visitLog } from '../site/requests.ts';
import { usePolled } from '../site/use-polled.ts';
import { useSite } from '../site/use-site.ts';
import type { Read } from '../ui/not-yet.tsx';

/** A record is some hundred kilobytes: it is read less often than the board. */
const LOOK_EVERY_MS = 5_000;

/** One visit: its log, and the site with the row of its pair. */
export function useVisit(token: string, job: JobId): Read<{ view: SiteView; log: Log }> {
  const site = useSite(token, job);
  const readLog = useMemo(() => logReader(token, job), [token, job]);
  const log = usePolled(readLog, LOOK_EVERY_MS);
  const look = useCallback(() => {
    site.look();
    log.look();
  }, [site.look, log.look]);
  const value = site.value && log.value && { view: site.value, log: log.value };
  return { value, trouble: log.trouble ?? site.trouble, look };
}

/** Gives the same log again until it has grown. */
function logReader(token: string, job: JobId): () => Promise<Log> {
  let last: Awaited<ReturnType<typeof visitLog>> | undefined;
  return async () => {
    const came = await visitLog(token, job);
    if (came.text !== last?.text) last = came;
    return last.log;
  };
}
