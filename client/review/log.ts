import { nanoid } from 'nanoid';
import { useCallback, useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { findFault, headAfter } from '../../src/log/chain.ts';
import type { Entry, Log } from '../../src/model/entry.ts';
import { LINK_IS_LOST } from '../../src/phrases/requests.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { readLog } from '../browser/logs.ts';
import { browserStorage, memoryStorage } from '../browser/storage.ts';
import { useConnection } from '../link/use-connection.ts';
import { ownPerson, personIn } from '../people/saved-person.ts';
import { breath, inPieces } from '../ui/breath.ts';
import type { Read } from '../ui/not-yet.tsx';

/** A log, and what is worked out from it. */
export interface Grown {
  log: Log;
  record: VisitRecord;
  /** Why it is not kept up to date, in words. */
  trouble: string | undefined;
}

/** A log that grows over a link, on which its watcher can talk to the crew. */
export interface Watched extends Grown {
  /** Remarks that are not confirmed yet. */
  waiting: number;
  /** Why the last one was refused, in words. */
  refused: string | undefined;
  remark(by: string, text: string): void;
}

/** A log with what is worked out from it. */
export interface Known {
  log: Log;
  record: VisitRecord;
}

/** The job's log, as the server has it. */
export function useLog(token: string): Read<Known> {
  const [value, setValue] = useState<Known>();
  const [trouble, setTrouble] = useState<string>();
  const look = useCallback(() => {
    readLog('/api/record', token)
      .then(({ log }) => workedOut(log))
      .then(setValue, (error: Error) => setTrouble(error.message));
  }, [token]);
  useEffect(look, [look]);
  return { value, trouble, look };
}

/** In pieces: a long log would keep a slow phone from drawing and answering. */
async function workedOut(log: Log): Promise<Known> {
  await breath();
  const fault = findFault(log.entries, log.head);
  await breath();
  const state = log.entries.reduce(fold, EMPTY);
  await breath();
  const record = new VisitRecord(log, { state, fault });
  // Worked out when they are first asked for, and then kept.
  await inPieces([() => record.findings, () => record.series, () => record.progress]);
  return { log, record };
}

/** The log, with what is added to it while the page is open. */
export function useGrowing(token: string, known: Known): Watched {
  const { log: fetched } = known;
  const [name] = useState(() => personIn(ownPerson(browserStorage))?.name);
  const connection = useConnection(token, {
    storage: NOTHING_KEPT,
    drawer: 'watcher',
    known: fetched.entries,
    name,
  });
  const { link } = connection;
  const log = useMemo(() => extended(fetched, link.entries), [fetched, link.entries]);
  const record = useVisitRecord(log, known);
  // Nothing is added to a broken log, and its room holds only the entries before the fault.
  const ended = record.fault ? undefined : link.ended?.text;
  const lost = link.failures > 0 && link.phase !== 'live' ? LINK_IS_LOST : undefined;
  return {
    log,
    record,
    trouble: ended ?? lost,
    waiting: link.outbox.length,
    refused: link.complaints.at(-1)?.text,
    remark(by, text) {
      for (const complaint of link.complaints) connection.feed({ on: 'dismiss', complaint });
      connection.feed({ on: 'post', letter: { t: 'remark', id: nanoid(), text, by } });
    },
  };
}

const NOTHING_KEPT = memoryStorage();

/** What is worked out from a log. If it only grew, only the new entries are folded and checked. */
export function useVisitRecord(log: Log, first?: Known): VisitRecord {
  const last = useRef(first);
  return useMemo(() => {
    if (log === last.current?.log) return last.current.record;
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
