import type { Entry } from '../../src/model/entry.ts';
import { CANNOT_KEEP, OPEN_TWICE } from '../../src/phrases/kept-here.ts';

/**
 * The logs that this phone keeps alone, until a server has them. Apart from `kept-log.ts`, which holds copies: here is the only
 * record there is, so nothing is written over, nothing goes by itself, and what is kept is on the disk before it is told.
 */

const BASE = 'ladderline-here';
const STORE = 'logs';
/** Some browsers never answer when asked to open a store. */
const PATIENCE_MS = 3_000;
/** In the place of a number: the log is on its way to the server, and nothing more comes to it. */
const CLOSED = 'closed';

/** Why nothing could be kept. */
export class NotKept extends Error {
  override name = 'NotKept';

  /** `isOpenElsewhere`: another page of this phone has the job, or its log is on its way to the server. */
  constructor(readonly isOpenElsewhere: boolean) {
    super(isOpenElsewhere ? OPEN_TWICE : CANNOT_KEEP);
  }
}

let opening: Promise<IDBDatabase> | undefined;

function base(): Promise<IDBDatabase> {
  opening ??= new Promise<IDBDatabase>((resolve, reject) => {
    setTimeout(() => reject(new NotKept(false)), PATIENCE_MS);
    const request = indexedDB.open(BASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(new NotKept(false));
  }).catch((error: unknown) => {
    opening = undefined;
    throw error instanceof NotKept ? error : new NotKept(false);
  });
  return opening;
}

/** All entries of a log, by their number. */
const entriesOf = (job: string): IDBKeyRange => IDBKeyRange.bound([job, 0], [job, Number.POSITIVE_INFINITY]);

/** `work` in one transaction, which is on the disk when this resolves. @throws {NotKept} */
async function inOne<T>(
  work: (logs: IDBObjectStore, give: (value: T) => void) => void,
): Promise<T | undefined> {
  const opened = await base();
  return new Promise((resolve, reject) => {
    let given: T | undefined;
    const transaction = opened.transaction(STORE, 'readwrite', { durability: 'strict' });
    transaction.oncomplete = () => resolve(given);
    transaction.onabort = () => reject(new NotKept(transaction.error?.name === 'ConstraintError'));
    work(transaction.objectStore(STORE), (value) => {
      given = value;
    });
  });
}

/** Adds entries to a log that is not closed. @throws {NotKept} */
export async function addEntries(job: string, entries: readonly Entry[]): Promise<void> {
  const isOpen = await inOne<boolean>((logs, give) => {
    const closed = logs.getKey([job, CLOSED]);
    closed.onsuccess = () => {
      if (closed.result !== undefined) return;
      // Not `put`: a second page must not write over what the first has kept.
      for (const entry of entries) logs.add(entry, [job, entry.seq]);
      give(true);
    };
  });
  if (!isOpen) throw new NotKept(true);
}

/** What was kept of a log, in order, as it was put there. @throws {NotKept} */
export const readEntries = async (job: string): Promise<unknown[]> =>
  (await inOne<unknown[]>((logs, give) => readInto(logs, job, give))) ?? [];

/** The same, of a log to which nothing is added from here on. @throws {NotKept} */
export const closeLog = async (job: string): Promise<unknown[]> =>
  (await inOne<unknown[]>((logs, give) => {
    logs.put(true, [job, CLOSED]);
    readInto(logs, job, give);
  })) ?? [];

/** The server did not take it. @throws {NotKept} */
export const reopenLog = async (job: string): Promise<void> =>
  void (await inOne((logs) => logs.delete([job, CLOSED])));

/** Only once the server has it. @throws {NotKept} */
export const removeLog = async (job: string): Promise<void> =>
  void (await inOne((logs) => {
    logs.delete(entriesOf(job));
    logs.delete([job, CLOSED]);
  }));

function readInto(logs: IDBObjectStore, job: string, give: (entries: unknown[]) => void): void {
  const request = logs.getAll(entriesOf(job));
  request.onsuccess = () => give(request.result);
}
