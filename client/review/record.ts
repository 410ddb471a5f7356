import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import type { z } from 'zod';
import { headAfter } from '../../src/log/chain.ts';
import type { Entry } from '../../src/log/entry.ts';
import { HttpRefusal, JobRecord } from '../../src/protocol.ts';
import { useWatch } from './use-watch.ts';

export type LogRecord = z.infer<typeof JobRecord>;

export interface Watched {
  record: LogRecord | undefined;
  /** What keeps the record from being read or kept up to date, in words. */
  trouble: string | undefined;
  retry: () => void;
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

/** The job's record as the server holds it, and whatever is added to it while the page is open. */
export function useRecord(token: string): Watched {
  const [fetched, setFetched] = useState<{ record?: LogRecord; trouble?: string }>({});
  const retry = useCallback(
    () =>
      fetchRecord(token).then(
        (record) => setFetched({ record }),
        (error: Error) => setFetched({ trouble: error.message }),
      ),
    [token],
  );
  useEffect(() => {
    setFetched({});
    retry();
  }, [retry]);

  const link = useWatch(token);
  const record = useMemo(
    () => fetched.record && extended(fetched.record, link.entries),
    [fetched.record, link.entries],
  );
  const lost = link.failures > 0 && link.phase !== 'live' ? 'The link to the server is lost.' : undefined;
  return { record, trouble: fetched.trouble ?? link.ended?.text ?? lost, retry };
}

/** The record with the entries that came after it. */
function extended(record: LogRecord, entries: readonly Entry[]): LogRecord {
  const added = entries.slice(record.entries.length);
  const last = added.at(-1);
  return last ? { entries: [...record.entries, ...added], head: headAfter(last) } : record;
}
