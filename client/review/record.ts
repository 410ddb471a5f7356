import { useCallback, useEffect, useState } from 'preact/hooks';
import type { z } from 'zod';
import { HttpRefusal, JobRecord } from '../../src/protocol.ts';

export type LogRecord = z.infer<typeof JobRecord>;

export type Fetched =
  | { kind: 'loading' }
  /** `record`: what was read before the link failed, if anything was. */
  | { kind: 'failed'; text: string; record?: LogRecord }
  | { kind: 'record'; record: LogRecord };

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

const POLL_MS = 4_000;

/** The job's record, kept up to date while the page is seen. */
export function useRecord(token: string): [Fetched, refresh: () => void] {
  const [fetched, setFetched] = useState<Fetched>({ kind: 'loading' });
  const refresh = useCallback(async () => {
    try {
      const record = await fetchRecord(token);
      setFetched((before) => (sameHead(before, record) ? before : { kind: 'record', record }));
    } catch (error) {
      setFetched((before) => ({
        kind: 'failed',
        text: (error as Error).message,
        ...('record' in before && { record: before.record }),
      }));
    }
  }, [token]);
  useEffect(() => {
    setFetched({ kind: 'loading' });
    refresh();
    const timer = setInterval(() => {
      if (document.visibilityState === 'visible') refresh();
    }, POLL_MS);
    return () => clearInterval(timer);
  }, [refresh]);
  return [fetched, refresh];
}

const sameHead = (before: Fetched, record: LogRecord): boolean =>
  before.kind === 'record' && before.record.head.hash === record.head.hash;
