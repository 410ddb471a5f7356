import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { z } from 'zod';
import { findFault, headAfter } from '../../src/log/chain.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Entry } from '../../src/model/entry.ts';
import { HttpRefusal, JobRecord } from '../../src/protocol/jobs.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { memoryStorage } from '../browser/storage.ts';
import { useConnection } from '../link/use-connection.ts';

export type LogRecord = z.infer<typeof JobRecord>;

export interface Fetched {
  record: LogRecord | undefined;
  /** Why it could not be read, in words. */
  trouble: string | undefined;
  retry: () => void;
}

/** A record with what it comes to. */
export interface Grown {
  record: LogRecord;
  fault: ChainFault | undefined;
  end: JobState;
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

async function fetchRecord(token: string): Promise<LogRecord> {
  const raw: unknown = await (await ask(token, '/api/record')).json().catch(() => undefined);
  if (!JobRecord.safeParse(raw).success) {
    throw new Error('This page cannot read what the server sends. Load the page again.');
  }
  // As it was sent: a field this page does not know is covered by the hash, and must not be dropped.
  return raw as LogRecord;
}

/** The job's record as the server holds it. */
export function useRecord(token: string): Fetched {
  const [fetched, setFetched] = useState<Omit<Fetched, 'retry'>>({ record: undefined, trouble: undefined });
  const retry = useCallback(
    () =>
      fetchRecord(token).then(
        (record) => setFetched({ record, trouble: undefined }),
        (error: Error) => setFetched({ record: undefined, trouble: error.message }),
      ),
    [token],
  );
  useEffect(() => {
    retry();
  }, [retry]);
  return { ...fetched, retry };
}

/** The record with whatever is added to it while the page is open. */
export function useGrowing(token: string, fetched: LogRecord): Grown {
  // A watcher writes nothing.
  const { link } = useConnection(token, { storage: NOTHING_KEPT, drawer: 'watcher', known: fetched.entries });
  const record = useMemo(() => extended(fetched, link.entries), [fetched, link.entries]);
  const { fault, end } = useReading(record);
  // Nothing is added to a broken log, and the room of one holds only what is before the fault.
  const ended = fault ? undefined : link.ended?.text;
  const lost = link.failures > 0 && link.phase !== 'live' ? 'The link to the server is lost.' : undefined;
  return { record, fault, end, trouble: ended ?? lost };
}

const NOTHING_KEPT = memoryStorage();

/** What a record comes to: its first fault, and the state at its end. Of one that only grew, what is new is read. */
export function useReading(record: LogRecord): { fault: ChainFault | undefined; end: JobState } {
  const last = useRef<{ record: LogRecord; sound: boolean; end: JobState }>(undefined);
  return useMemo(() => {
    const { entries, head } = record;
    const known = last.current;
    const before = known?.record.entries.every((entry, seq) => entry === entries[seq]) ? known : undefined;
    const fault = findFault(entries, head, before?.sound ? before.record.head : undefined);
    const end = entries.slice(before?.record.entries.length).reduce(fold, before?.end ?? EMPTY);
    last.current = { record, sound: fault === undefined, end };
    return { fault, end };
  }, [record]);
}

/** The record with the entries that came after it. */
function extended(record: LogRecord, entries: readonly Entry[]): LogRecord {
  const last = entries.at(-1);
  return last && entries.length > record.entries.length
    ? { entries: [...entries], head: headAfter(last) }
    : record;
}
