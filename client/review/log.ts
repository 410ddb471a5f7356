import { nanoid } from 'nanoid';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { Entry, Log } from '../../src/model/entry.ts';
import { LINK_IS_LOST, requestFailedText } from '../../src/phrases/requests.ts';
import { browserStorage, memoryStorage } from '../browser/storage.ts';
import { useConnection } from '../link/use-connection.ts';
import { ownPerson, personIn } from '../people/saved-person.ts';
import type { Read } from '../ui/not-yet.tsx';
import type { Moment } from './moment.ts';
import { type Opened, openRecordWorker, type RecordWorker, type Worked } from './record-worker.ts';
import type { Shown } from './replay.tsx';

/** A log that grows over a link, on which its watcher can talk to the crew. */
export interface Watched {
  log: Log;
  /** What is worked out from it. */
  worked: Worked;
  /** Why it is not kept up to date, in words. */
  trouble: string | undefined;
  /** Remarks that are not confirmed yet. */
  waiting: number;
  /** Why the last one was refused, in words. */
  refused: string | undefined;
  remark(by: string, text: string): void;
}

/** A log with the worker that knows it. */
export interface InWorker {
  worker: RecordWorker;
  opened: Opened;
}

/** The job's log, as the server has it. */
export function useLog(token: string): Read<InWorker> {
  const [value, setValue] = useState<InWorker>();
  const [trouble, setTrouble] = useState<string>();
  const working = useRef<RecordWorker>(undefined);
  const look = useCallback(() => {
    working.current?.close();
    const worker = openRecordWorker();
    working.current = worker;
    worker.open(token).then(
      (opened) => setValue({ worker, opened }),
      (error: Error) => setTrouble(error.message),
    );
  }, [token]);
  useEffect(() => {
    look();
    return () => working.current?.close();
  }, [look]);
  return { value, trouble, look };
}

const NOTHING_KEPT = memoryStorage();

/** The log, with what is added to it while the page is open. */
export function useGrowing(token: string, { worker, opened }: InWorker): Watched {
  const [name] = useState(() => personIn(ownPerson(browserStorage))?.name);
  const connection = useConnection(token, {
    storage: NOTHING_KEPT,
    drawer: 'watcher',
    known: opened.entries,
    name,
  });
  const { link } = connection;
  const { entries, worked, failed } = useWorkedOut(worker, opened, link.entries);
  // Nothing is added to a broken log, and its room holds only the entries before the fault.
  const ended = worked.record.fault ? undefined : link.ended?.text;
  const lost = link.failures > 0 && link.phase !== 'live' ? LINK_IS_LOST : undefined;
  return {
    log: { entries, head: worked.head },
    worked,
    trouble: failed ?? ended ?? lost,
    waiting: link.outbox.length,
    refused: link.complaints.at(-1)?.text,
    remark(by, text) {
      for (const complaint of link.complaints) connection.feed({ on: 'dismiss', complaint });
      connection.feed({ on: 'post', letter: { t: 'remark', id: nanoid(), text, by } });
    },
  };
}

interface WorkedOut {
  entries: readonly Entry[];
  worked: Worked;
}

/** The newest entries that are worked out; those that come meanwhile follow in one go. */
function useWorkedOut(worker: RecordWorker, opened: Opened, come: readonly Entry[]) {
  const [now, setNow] = useState<WorkedOut>({ entries: opened.entries, worked: opened });
  /** Why what came since is not in it, in words. It is tried again with what comes next. */
  const [failed, setFailed] = useState<string>();
  const waits = useRef(false);
  useEffect(() => {
    const more = come.slice(now.entries.length);
    if (waits.current || more.length === 0) return;
    waits.current = true;
    const entries = [...now.entries, ...more];
    worker.grow(more).then(
      (worked) => {
        waits.current = false;
        setFailed(undefined);
        setNow({ entries, worked });
      },
      (error: Error) => {
        waits.current = false;
        setFailed(`${requestFailedText(error.message)}.`);
      },
    );
  }, [worker, come, now]);
  return { ...now, failed };
}

/** What is shown: the end of the log, or the newest wanted moment before it that is worked out. */
export function useMoment(worker: RecordWorker, end: Moment, shown: Shown): Moment {
  const [then, setThen] = useState<{ count: number; moment: Moment }>();
  const waits = useRef(false);
  const count = shown === 'all' ? undefined : shown.count;
  useEffect(() => {
    if (count === undefined || waits.current || count === then?.count) return;
    waits.current = true;
    worker.moment(count).then(
      (moment) => {
        waits.current = false;
        setThen({ count, moment });
      },
      () => {
        waits.current = false;
      },
    );
  }, [worker, count, then]);
  return (count !== undefined && then?.moment) || end;
}
