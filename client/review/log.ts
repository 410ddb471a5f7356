import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { findFault, headAfter } from '../../src/log/chain.ts';
import type { Entry, Log } from '../../src/model/entry.ts';
import { HttpRefusal, JobRecord } from '../../src/protocol/jobs.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { memoryStorage } from '../browser/storage.ts';
import { useConnection } from '../link/use-connection.ts';

export interface Fetched {
  log: Log | undefined;
  /** Why it could not be read, in words. */
  trouble: string | undefined;
  retry: () => void;
}

/** A log with what it comes to. */
export interface Grown {
  log: Log;
  record: VisitRecord;
  /** What keeps it from being kept up to date, in words. */
  trouble: string | undefined;
}

const UNREACHABLE =
  'The server does not answer. Check that this device is on the site network, then try again.';

/** One authorised request. @throws {Error} whose message says what to do */
export async function ask(token: string, path: string): Promise<Response> {
  const response = await fetch(path, { headers: { authorization: `Bearer ${token}` } }).catch(() => {
    throw new Error(UNREACHABLE);
  });
  if (response.ok) return response;
  const refusal = HttpRefusal.safeParse(await response.json().catch(() => undefined));
  throw new Error(
    refusal.success ? refusal.data.text : `The server could not answer (${response.status}). Try again.`,
  );
}

async function fetchLog(token: string): Promise<Log> {
  const raw: unknown = await (await ask(token, '/api/record')).json().catch(() => undefined);
  if (!JobRecord.safeParse(raw).success) {
    throw new Error('This page cannot read what the server sends. Load the page again.');
  }
  // As it was sent: a field this page does not know is covered by the hash, and must not be dropped.
  return raw as Log;
}

/** The job's log as the server holds it. */
export function useLog(token: string): Fetched {
  const [fetched, setFetched] = useState<Omit<Fetched, 'retry'>>({ log: undefined, trouble: undefined });
  const retry = useCallback(
    () =>
      fetchLog(token).then(
        (log) => setFetched({ log, trouble: undefined }),
        (error: Error) => setFetched({ log: undefined, trouble: error.message }),
      ),
    [token],
  );
  useEffect(() => {
    retry();
  }, [retry]);
  return { ...fetched, retry };
}

/** The log with whatever is added to it while the page is open. */
export function useGrowing(token: string, fetched: Log): Grown {
  // A watcher writes nothing.
  const { link } = useConnection(token, { storage: NOTHING_KEPT, drawer: 'watcher', known: fetched.entries });
  const log = useMemo(() => extended(fetched, link.entries), [fetched, link.entries]);
  const record = useVisitRecord(log);
  // Nothing is added to a broken log, and the room of one holds only what is before the fault.
  const ended = record.fault ? undefined : link.ended?.text;
  const lost = link.failures > 0 && link.phase !== 'live' ? 'The link to the server is lost.' : undefined;
  return { log, record, trouble: ended ?? lost };
}

const NOTHING_KEPT = memoryStorage();

/** What a log comes to. Of one that only grew, what is new is folded and checked. */
export function useVisitRecord(log: Log): VisitRecord {
  const last = useRef<{ log: Log; record: VisitRecord }>(undefined);
  return useMemo(() => {
    const { entries, head } = log;
    const known = last.current;
    const before = known?.log.entries.every((entry, seq) => entry === entries[seq]) ? known : undefined;
    const fault = findFault(entries, head, before && !before.record.fault ? before.log.head : undefined);
    const state = entries.slice(before?.log.entries.length).reduce(fold, before?.record.state ?? EMPTY);
    const record = new VisitRecord(log, { state, fault });
    last.current = { log, record };
    return record;
  }, [log]);
}

/** The log with the entries that came after it. */
function extended(log: Log, entries: readonly Entry[]): Log {
  const last = entries.at(-1);
  return last && entries.length > log.entries.length ? { entries: [...entries], head: headAfter(last) } : log;
}
